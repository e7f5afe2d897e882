using CutShop.Paper.Words;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>Drawings of a post for whoever drills it: the drilled faces with heights, and beside them cross-sections through the bores.</summary>
public static class PostDrawing
{
    private const double FaceWidth = 28;
    private const double WidestFace = 44;
    private const double TitleSize = 3.2;
    private const double Head = 6;

    /// <summary>How tall a post may be drawn, in millimetres, from the largest.</summary>
    public static IReadOnlyList<double> Heights { get; } = [110, 92, 78, 66, 54, 45, 36];

    /// <summary>The drawings, one where all fit beside each other: faces in the order of the work, then sections. None where nothing is drilled.</summary>
    /// <param name="work">What is done to the post.</param>
    /// <param name="settings">Units and words.</param>
    /// <param name="tallest">How tall the post may be drawn, in millimetres.</param>
    public static IReadOnlyList<Drawing> Of(PostWork work, PaperSettings settings, double tallest = 92)
    {
        ArgumentNullException.ThrowIfNull(work);
        ArgumentNullException.ThrowIfNull(settings);
        return [.. Strips(PostFaces.Of(work), Sections(work)).Select(strip => Draw(work, strip, tallest, settings))];
    }

    private static IEnumerable<PostStrip> Strips(IEnumerable<PostFace> faces, IEnumerable<PostCell> sections)
    {
        var strip = new PostStrip([], []);
        var used = 0.0;
        foreach (var (face, section) in faces.Select(face => ((PostFace?)face, (PostCell?)null)).Concat(sections.Select(section => ((PostFace?)null, (PostCell?)section))))
        {
            var width = face is null ? PostSections.Width : FaceWidth;
            if (used + width > Elevation.PaperWidth)
            {
                yield return strip;
                (strip, used) = (new PostStrip([], []), 0);
            }
            if (face is not null)
                strip.Faces.Add(face);
            else
                strip.Sections.Add(section!);
            used += width;
        }
        if (used > 0)
            yield return strip;
    }

    private static IEnumerable<PostCell> Sections(PostWork work)
    {
        // Rows that are bored and screwed alike share one section.
        foreach (var alike in work.Bores.GroupBy(bore => bore.Row).GroupBy(row => new BoredAlike(work, [.. row])))
        {
            IReadOnlyList<Bore> bores = [.. alike.First()];
            var rows = string.Join(", ", alike.Select(row => row.Key));
            yield return new(rows, bores, FromSide: false);
        }
        // So do bores of one rake, seen from the side: the longest stands for them.
        foreach (var alike in work.Bores.Where(bore => bore.IsRaked).GroupBy(bore => (bore.RakeDegrees, bore.Bit, bore.IsExisting, PostWays.MouthsOf(work, bore).First().Face)))
            yield return new(string.Join(", ", alike.Select(bore => bore.Row).Distinct()), [.. alike.OrderByDescending(bore => bore.Operations.Count)], FromSide: true);
    }

    private static Drawing Draw(PostWork work, PostStrip strip, double tallest, PaperSettings settings)
    {
        var shapes = new List<Shape>();
        var (titles, says) = (new List<string>(), new List<string>());
        var (x, height) = (0.0, 0.0);
        if (strip.Faces.Count > 0)
        {
            var cell = Math.Min(WidestFace, (Elevation.PaperWidth - strip.Sections.Count * PostSections.Width) / strip.Faces.Count);
            var faces = new PostFaces(work, strip.Faces, cell, tallest, settings);
            Title(settings.Text["FacesTitle", work.Post.Mark, faces.Scale.OneTo], strip.Faces.Count * cell);
            says.Add(settings.Text["FacesDescription", string.Join("; ", strip.Faces.Select(face => settings.Text.FaceName(face.Face))), settings.Text.NameOf(work.Datum)]);
            height = faces.Draw(shapes, Head);
            x = strip.Faces.Count * cell;
        }
        if (strip.Sections.Count > 0)
        {
            Title(settings.Text["SectionsTitle", PostSections.ScaleOf(work.Post).OneTo], strip.Sections.Count * PostSections.Width);
            says.Add(settings.Text["SectionsDescription", string.Join(", ", strip.Sections.Select(cell => cell.Rows).Distinct())]);
            height = Math.Max(height, PostSections.Draw(shapes, work, strip.Sections, new(x, Head), settings));
        }
        return new(string.Join(". ", titles), string.Join(' ', says), Elevation.PaperWidth, Head + height, shapes);

        void Title(string words, double width)
        {
            titles.Add(words);
            shapes.Add(new DrawnText(new(x, 4), words, Math.Min(TitleSize, (width - 2) / Dimension.GuessBoldWidth(words, 1)), Bold: true));
        }
    }
}

/// <summary>What stands beside each other on a drawing.</summary>
internal sealed record PostStrip(List<PostFace> Faces, List<PostCell> Sections);

/// <summary>One section of a drawing: the bores of a row from above, or raked bores of one kind from the side, of which the first is drawn.</summary>
internal sealed record PostCell(string Rows, IReadOnlyList<Bore> Bores, bool FromSide);
