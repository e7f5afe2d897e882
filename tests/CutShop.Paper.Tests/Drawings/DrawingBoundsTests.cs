using CutShop.Paper.Tests.Samples;
using CutShop.Takeoff;

namespace CutShop.Paper.Tests.Drawings;

public sealed class DrawingBoundsTests
{
    public static TheoryData<string> Jobs => new(
        SampleJobs.LanternQuay,
        SampleJobs.TwoPosts(),
        SampleJobs.TwoPosts(start: "knot", finish: "knot", clear: "12 in", hang: "\"sag\": \"1 in\""),
        SampleJobs.TwoPosts(start: "wrap 40", finish: "wrap 2.5", clear: "30 ft", height: "12 ft"),
        SampleJobs.TwoPosts(line: "<script>alert(1)</sc", number: "\"&'<b>"),
        SampleJobs.ManyRows(40),
        SampleJobs.LongLine(60));

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Nothing_is_drawn_outside_its_drawing(string json)
    {
        var drawings = AllOf(SampleJobs.Takeoff(json), PaperSettings.Default).ToList();
        Assert.NotEmpty(drawings);
        foreach (var drawing in drawings)
        {
            foreach (var shape in drawing.Shapes)
            {
                foreach (var corner in CornersOf(shape))
                {
                    Assert.True(
                        corner.X >= -0.5 && corner.X <= drawing.Width + 0.5 && corner.Y >= -0.5 && corner.Y <= drawing.Height + 0.5,
                        $"{drawing.Title}: {shape} reaches {corner}, the drawing is {drawing.Width} x {drawing.Height}");
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Every_drawing_fits_a_page_without_being_made_smaller(string json)
    {
        foreach (var drawing in AllOf(SampleJobs.Takeoff(json), PaperSettings.Default))
        {
            Assert.InRange(drawing.Width, 1, PageSize.A4.Width - 2 * PdfSheets.Margin);
            // Letter is the lower page; head and foot of a continued page take 17 mm.
            Assert.InRange(drawing.Height, 1, PageSize.Letter.Height - 2 * PdfSheets.Margin - 17);
        }
    }

    private static IEnumerable<Drawing> AllOf(JobTakeoff takeoff, PaperSettings settings) =>
    [
        .. takeoff.Job.Lines.SelectMany(line => Elevation.Of(takeoff, line, settings)),
        .. Plan.Of(takeoff.Job, settings),
        .. Plan.Of(takeoff.Job, settings, takeoff.Pieces[^1]),
        .. PostWork.Of(takeoff).SelectMany(work => PostDrawing.Of(work, settings)),
    ];

    private static IEnumerable<Point> CornersOf(Shape shape) => shape switch
    {
        Stroke s => [s.From, s.To],
        Polyline p => p.Points,
        Polygon p => p.Points,
        Box b => [new(b.X, b.Y), new(b.X + b.Width, b.Y + b.Height)],
        Disc d => [d.Centre.Moved(-d.Radius, -d.Radius), d.Centre.Moved(d.Radius, d.Radius)],
        Words w => CornersOfWords(w),
        _ => throw new NotSupportedException(shape.GetType().Name),
    };

    private static IEnumerable<Point> CornersOfWords(Words words)
    {
        var width = Lettering.Width(CleanText.Of(words.Text), words.Size, words.Bold);
        var start = words.Anchor switch { TextAnchor.Middle => -width / 2, TextAnchor.End => -width, _ => 0 };
        var turn = words.TurnDegrees * Math.PI / 180;
        foreach (var along in new[] { start, start + width })
            yield return words.At.Moved(along * Math.Cos(turn), along * Math.Sin(turn));
        yield return words.At.Moved(0, -words.Size * 0.7);
    }
}
