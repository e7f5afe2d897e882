using CutShop.Paper.Words;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>An upright cut along a raked bore and its screws, seen from the side, uphill or downhill as the line goes to the right.</summary>
internal static class SectionFromSide
{
    private const double Beyond = 3;
    private const double Tall = 17.5;

    /// <summary>Draws the cut.</summary>
    /// <returns>What to say under it.</returns>
    public static IReadOnlyList<string> Draw(List<Shape> shapes, PostWork work, PostCell cell, Point centre, DrawingScale scale, PaperSettings settings)
    {
        var bore = cell.Bores[0];
        // A skewed bore is cut along itself.
        var half = scale.Mm(work.Post.Across.Inches / 2 / Math.Cos(bore.SkewDegrees * Math.PI / 180));
        shapes.Add(new Box(centre.X - half, centre.Y - Tall, 2 * half, 2 * Tall, Pen.Outline, Fill.Wood));
        var rake = new Rake(bore.RakeDegrees * Math.PI / 180);
        foreach (var mouth in PostWays.MouthsOf(work, bore))
            DrawMouth(shapes, work, bore, mouth, rake, centre, half, scale);
        shapes.Add(new Stroke(centre.Toward(rake.Along, -half - Beyond), centre.Toward(rake.Along, half + Beyond), Pen.Axis));
        shapes.Add(new Stroke(centre.Moved(-half - Beyond, 0), centre.Moved(half + Beyond, 0), Pen.Thin));
        var screws = work.ScrewHoles.Where(fixing => ReferenceEquals(PostWays.BoreOf(work, fixing), bore)).ToList();
        foreach (var screw in screws)
            DrawScrew(shapes, work, bore, screw, rake, centre, half, scale);
        var text = settings.Text;
        return
        [
            RakeText.Of(bore, work, settings),
            text[bore.IsExisting ? "HoleThere" : "BitOf", settings.Figures.Lead(bore.Bit)],
            .. screws is [{ IsRaked: true } pilot, ..] ? EntersAt(work, cell, pilot, settings) : [],
        ];
    }

    /// <summary>How high the pilot enters its face, a line for each row while they are few; the drilled faces tell it of more.</summary>
    private static IEnumerable<string> EntersAt(PostWork work, PostCell cell, Fixing pilot, PaperSettings settings)
    {
        const int MostRows = 3;
        var rows = cell.Bores.Select(bore => bore.Row).ToHashSet(StringComparer.Ordinal);
        var pilots = work.ScrewHoles.Where(fixing => fixing.Face == pilot.Face && rows.Contains(fixing.Row)).ToList();
        return pilots.Count > MostRows ? [] :
        [
            settings.Text["PilotEntersAt", settings.Figures.Lead(pilot.Pilot), Figures.Degrees(Math.Abs(pilot.RakeDegrees))],
            .. pilots.Select(fixing => $"{fixing.Row} {settings.Figures.Lead(work.Post.HeightFrom(work.Datum, fixing.Mark))}"),
        ];
    }

    private static void DrawMouth(
        List<Shape> shapes, PostWork work, Bore bore, (Face Face, Length Depth) drilled, Rake rake, Point centre, double half, DrawingScale scale)
    {
        var side = SideOf(work, drilled.Face);
        var (depth, radius, mouth) = (scale.Mm(drilled.Depth.Inches), scale.Mm(bore.Bit.Inches) / 2, half / rake.Along.X);
        Point At(double distance, double off) => centre.Toward(rake.Along, side * distance).Toward(rake.Across, off);
        // The mouth is cut by the upright face, so its two corners lie at different distances along the bore.
        var skew = side * radius * rake.Slope;
        shapes.Add(new Polygon(
            [At(mouth + skew, -radius), At(mouth - skew, radius), At(mouth - depth, radius), At(mouth - depth, -radius)],
            bore.IsExisting ? Pen.Thin : Pen.Outline,
            bore.IsExisting ? Fill.None : Fill.Bore));
        if (drilled.Face.Sight == FaceSight.Toward)
            PostSections.Neighbour(shapes, drilled.Face.Neighbour, new(side, 0), centre, half);
    }

    /// <summary>A screw in line with the bore from its side, or the ends of those that cross it.</summary>
    private static void DrawScrew(List<Shape> shapes, PostWork work, Bore bore, Fixing fixing, Rake rake, Point centre, double half, DrawingScale scale)
    {
        if (fixing.Face.Sight == FaceSight.Side)
        {
            foreach (var (right, mark) in PostWays.HolesOf(work, fixing))
            {
                // Who looks at the side that is named by the next post has that post at the left; on paper it is at the right.
                var along = (fixing.Face.Neighbour == work.After ? -1 : 1) * scale.Mm(right.Inches);
                shapes.Add(new Disc(centre.Moved(along, -scale.Mm((mark - bore.Height).Inches)), Math.Max(scale.Mm(fixing.Pilot.Inches) / 2, 0.5), Pen.Outline, Fill.Ink));
            }
            return;
        }
        var side = SideOf(work, fixing.Face);
        var middle = centre.Moved(0, -scale.Mm((fixing.Height - bore.Height).Inches));
        Point At(double distance, double off) => middle.Toward(rake.Along, side * distance).Toward(rake.Across, off);
        ScrewInSection.Draw(shapes, fixing, At, half / rake.Along.X, -side * rake.Slope, scale.Mm, scale.Mm);
    }

    /// <summary>1 for a face at the right on paper, which looks along the line; -1 for one at the left.</summary>
    private static int SideOf(PostWork work, Face face) => (face.Neighbour == work.After) == (face.Sight == FaceSight.Toward) ? 1 : -1;

    private readonly record struct Rake(double Radians)
    {
        public Point Along => new(Math.Cos(Radians), -Math.Sin(Radians));

        public Point Across => new(Math.Sin(Radians), Math.Cos(Radians));

        public double Slope => Math.Tan(Radians);
    }
}
