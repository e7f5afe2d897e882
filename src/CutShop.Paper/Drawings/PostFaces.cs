using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>Draws a post seen from its drilled faces, to scale, each hole's centre measured from the datum and from the top.</summary>
internal sealed class PostFaces
{
    private const double Head = 11;
    private const double LabelRoom = 17;
    private const double Edge = 2;
    private const double ThreeLines = 10;
    private const double OneLine = 3.3;
    private const double BelowTheGround = 4;
    private const double FigureSize = 3.2;
    private const double SmallSize = 2.6;

    private readonly PostWork _work;
    private readonly IReadOnlyList<PostFace> _faces;
    private readonly double _cell;
    private readonly bool _isRoomy;
    private readonly double _tall;
    private readonly PaperSettings _settings;

    /// <summary>Faces of a post, each in a cell of so many millimetres, the post no taller than <paramref name="tallest"/>.</summary>
    public PostFaces(PostWork work, IReadOnlyList<PostFace> faces, double cell, double tallest, PaperSettings settings)
    {
        (_work, _faces, _cell, _settings) = (work, faces, cell, settings);
        var byHeight = DrawingScale.Fitting(work.Post.Height.Inches, tallest, 2);
        var byWidth = DrawingScale.Fitting(work.Post.Across.Inches, cell - LabelRoom - Edge, 2);
        Scale = byHeight.OneTo > byWidth.OneTo ? byHeight : byWidth;
        var (most, height) = (faces.Max(face => face.Labelled.Count), Scale.Mm(work.Post.Height.Inches));
        _isRoomy = most * ThreeLines <= height + BelowTheGround;
        _tall = Math.Clamp(most * (_isRoomy ? ThreeLines : OneLine), height, 190);
    }

    /// <summary>The scale.</summary>
    public DrawingScale Scale { get; }

    private double Half => Scale.Mm(_work.Post.Across.Inches) / 2;

    /// <summary>The faces of a post in the order of the work, screws last.</summary>
    public static IEnumerable<PostFace> Of(PostWork work)
    {
        var drillings = work.Drillings();
        return drillings.Select(d => d.Operation.Face).Concat(work.ScrewHoles.Select(f => f.Face)).Distinct()
            .Select(face => new PostFace(face, HolesOf(work, drillings, face)));
    }

    /// <summary>Draws the faces beside each other from the left edge.</summary>
    /// <returns>How tall they came out.</returns>
    public double Draw(List<Shape> shapes, double top)
    {
        foreach (var (i, face) in _faces.Index())
            DrawFace(shapes, face, new Point(i * _cell + Edge + Half, top + Head));
        return Head + _tall + 3;
    }

    private static List<PostHole> HolesOf(PostWork work, IReadOnlyList<Drilling> drillings, Face face) =>
    [
        .. drillings.Where(d => d.Operation.Face == face)
            .Select(d => new PostHole(d.Bore.Row, d.Mark, d.Bore.Bit, PostWays.BesideTheMiddle(work, face, d.Bore), d.Number))
            .Concat(work.ScrewHoles.Where(f => f.Face == face).SelectMany(f => PostWays.HolesOf(work, f)
                .Select(hole => new PostHole(f.Row, hole.Mark, Length.Max(f.Pilot, f.Counterbore), hole.Right, Number: null))))
            .Concat(work.Bores.Where(bore => bore.IsExisting && PostWays.MouthsOf(work, bore).Any(mouth => mouth.Face == face))
                .Select(bore => new PostHole(bore.Row, PostWays.MarkOn(work, face, bore, bore.Height), bore.Bit, PostWays.BesideTheMiddle(work, face, bore), Number: null, IsThere: true)))
            .OrderByDescending(hole => hole.Height),
    ];

    private void DrawFace(List<Shape> shapes, PostFace face, Point top)
    {
        var height = Scale.Mm(_work.Post.Height.Inches);
        NameFace(shapes, _settings.Text.FaceName(face.Face), top.Moved(-Half, 0));
        shapes.Add(new DrawnText(top.Moved(Half + 3, -2.4), _settings.Text.NameOf(_work.Datum), SmallSize));
        shapes.Add(new Box(top.X - Half, top.Y, 2 * Half, height, Pen.Outline, Fill.Wood));
        shapes.Add(new Stroke(top.Moved(0, -1.5), top.Moved(0, height + 2), Pen.Axis));
        shapes.Add(new Stroke(top.Moved(-Half - 2, height), top.Moved(Half + 8, height), Pen.Ground));
        foreach (var hole in face.Holes)
            DrawHole(shapes, hole, top.Moved(0, Depth(hole)));
        DrawHeights(shapes, face.Labelled, top);
    }

    /// <summary>A face's name, on two lines where it is long.</summary>
    private void NameFace(List<Shape> shapes, string name, Point at)
    {
        const double Size = 3;
        var room = (_cell - Edge - 1) / Dimension.GuessBoldWidth("x", 1);
        var split = name.Length * Size <= room ? -1 : name.LastIndexOf(' ', Math.Min(name.Length - 1, name.Length * 3 / 5));
        IReadOnlyList<string> lines = split < 0 ? [name] : [name[..split], name[(split + 1)..]];
        var size = Math.Min(Size, room / lines.Max(line => line.Length));
        foreach (var (i, line) in lines.Index())
            shapes.Add(new DrawnText(at.Moved(0, -5.6 - (lines.Count - 1 - i) * 3.4), line, size, Bold: true));
    }

    private double Depth(PostHole hole) => Scale.Mm((_work.Post.Height - hole.Height).Inches);

    private void DrawHole(List<Shape> shapes, PostHole hole, Point centre)
    {
        var isScrew = hole is { Number: null, IsThere: false };
        var radius = Math.Max(Scale.Mm(hole.Across.Inches) / 2, isScrew ? 0.5 : 1);
        var at = centre.Moved(Scale.Mm(hole.Right.Inches), 0);
        if (hole.IsThere)
        {
            shapes.Add(new Disc(at, radius, Pen.Thin, Fill.None));
            return;
        }
        shapes.Add(new Disc(at, radius, Pen.Outline, isScrew ? Fill.None : Fill.Bore));
        shapes.Add(new Stroke(centre.Moved(-Half, 0), centre.Moved(Half, 0), Pen.Thin));
        shapes.Add(new Stroke(at.Moved(0, -radius - 1), at.Moved(0, radius + 1), Pen.Thin));
    }

    private void DrawHeights(List<Shape> shapes, IReadOnlyList<PostHole> holes, Point top)
    {
        var centres = holes.Select(hole => top.Y + Depth(hole)).ToList();
        var places = Spread.Apart(centres, _isRoomy ? ThreeLines : OneLine, top.Y + 2, top.Y + _tall - 2);
        var crowded = holes.Count < 2 ? SmallSize : Math.Min(SmallSize, (places[^1] - places[0]) / (holes.Count - 1) * 0.8);
        for (var i = 0; i < holes.Count; i++)
        {
            var edge = top.X + Half;
            shapes.Add(new Polyline([new(edge, centres[i]), new(edge + 0.8, centres[i]), new(edge + 2.4, places[i])], Pen.Thin));
            Label(shapes, holes[i], new Point(edge + 3, places[i]), _isRoomy ? null : crowded);
        }
    }

    /// <summary>A hole's name over its height from the datum and from the top, or name and height in small letters on one line where holes are many.</summary>
    private void Label(List<Shape> shapes, PostHole hole, Point at, double? crowded)
    {
        var (figures, width) = (_settings.Figures, _cell - Edge - 2 * Half - 3.5);
        var told = _work.Post.HeightFrom(_work.Datum, hole.Height);
        var mark = hole.Row.Length <= 9 ? hole.Row : hole.Row[..8] + "…";
        var name = hole.Number is { } number ? $"{Figures.Count(number)}  {mark}" : _settings.Text[hole.IsThere ? "ThereAt" : "ScrewAt", mark];
        if (crowded is { } small)
        {
            var line = $"{name} {figures.Lead(told)}";
            shapes.Add(new DrawnText(at.Moved(0, small * 0.4), line, Fitting(line, small, width)));
            return;
        }
        var lead = figures.Lead(told);
        var other = _work.Datum == Datum.Top
            ? figures.Other(told)
            : _settings.Text["TopAt", figures.Lead(_work.Post.HeightFrom(Datum.Top, hole.Height))];
        shapes.Add(new DrawnText(at.Moved(0, -1.9), name, Math.Min(SmallSize, width / Dimension.GuessBoldWidth(name, 1)), Bold: true));
        shapes.Add(new DrawnText(at.Moved(0, 1.7), lead, Fitting(lead, FigureSize, width)));
        shapes.Add(new DrawnText(at.Moved(0, 4.8), other, Fitting(other, SmallSize, width)));
    }

    /// <summary>The letters' size wanted, or the largest at which the text keeps within its width.</summary>
    private static double Fitting(string text, double size, double width) => Math.Min(size, width / Dimension.GuessWidth(text, 1));
}
