using CutShop.Takeoff;

namespace CutShop.Paper;

/// <summary>Drawings of a post for whoever drills it: the drilled faces with heights, and cross-sections through the bores.</summary>
public static class PostDrawing
{
    private const int FacesOnADrawing = 4;
    private const int SectionsOnADrawing = 2;

    /// <summary>The drawings in the order of the work: faces, then sections. None where nothing is drilled.</summary>
    public static IReadOnlyList<Drawing> Of(PostWork work, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(work);
        ArgumentNullException.ThrowIfNull(settings);
        return [.. Faces(work, settings), .. Sections(work, settings)];
    }

    private static IEnumerable<Drawing> Faces(PostWork work, PaperSettings settings)
    {
        var drillings = work.Drillings();
        var faces = drillings.Select(d => d.Operation.Face)
            .Concat(work.Fixings.Select(f => f.Face))
            .Where(face => face.Sight != FaceSight.Around)
            .Distinct();
        return faces.Chunk(FacesOnADrawing).Select(some => PostFaces.Draw(work, drillings, some, settings));
    }

    private static IEnumerable<Drawing> Sections(PostWork work, PaperSettings settings)
    {
        var cells = new List<PostCell>();
        // Rows that are bored and screwed alike share one section.
        foreach (var alike in work.Bores.GroupBy(bore => bore.Row.Mark).GroupBy(row => new BoredAlike(work, [.. row])))
        {
            IReadOnlyList<Bore> bores = [.. alike.First()];
            var rows = string.Join(", ", alike.Select(row => row.Key));
            cells.Add(new(rows, bores, FromSide: false));
            cells.AddRange(bores.Where(bore => Math.Abs(bore.RakeDegrees) > 0.05).Select(bore => new PostCell(rows, [bore], FromSide: true)));
        }
        return cells.Chunk(SectionsOnADrawing).Select(some => PostSections.Draw(work, some, settings));
    }
}

/// <summary>One section of a drawing: the bores of a row from above, or one raked bore from the side.</summary>
internal sealed record PostCell(string Rows, IReadOnlyList<Bore> Bores, bool FromSide);
