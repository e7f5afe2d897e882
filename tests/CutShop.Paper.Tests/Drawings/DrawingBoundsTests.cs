using CutShop.Paper.Tests.Samples;

namespace CutShop.Paper.Tests.Drawings;

public sealed class DrawingBoundsTests
{
    public static TheoryData<string> Jobs => new(
        SampleJobs.LanternQuay,
        SampleJobs.TwoPosts(),
        SampleJobs.TwoPosts(start: "knot", finish: "knot", clear: "12 in", hang: "\"sag\": \"1 in\""),
        SampleJobs.TwoPosts(start: "wrap 40", finish: "wrap 2.5", clear: "30 ft", height: "12 ft"),
        SampleJobs.TwoPosts(line: "<script>alert(1)", number: "\"&'<b>"),
        SampleJobs.ManyRows(40),
        SampleJobs.Corner(3),
        SampleJobs.Corner(12),
        SampleJobs.RealSites,
        SampleJobs.LongSlope,
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

    [Theory]
    [MemberData(nameof(Jobs))]
    public void No_words_cover_other_words(string json)
    {
        foreach (var drawing in AllOf(SampleJobs.Takeoff(json), PaperSettings.Default))
        {
            var boxes = drawing.Shapes.OfType<DrawnText>().Select(w => (Words: w, Box: BoxOf(w))).ToList();
            for (var i = 0; i < boxes.Count; i++)
            {
                for (var k = i + 1; k < boxes.Count; k++)
                {
                    Assert.False(
                        Math.Min(boxes[i].Box.Right, boxes[k].Box.Right) - Math.Max(boxes[i].Box.Left, boxes[k].Box.Left) > 0.3
                        && Math.Min(boxes[i].Box.Bottom, boxes[k].Box.Bottom) - Math.Max(boxes[i].Box.Top, boxes[k].Box.Top) > 0.3,
                        $"{drawing.Title}: {boxes[i].Words} covers {boxes[k].Words}");
                }
            }
        }
    }

    /// <summary>The upright box of a text, of its capitals' height; a turned text is taken as upright or as lying.</summary>
    private static (double Left, double Top, double Right, double Bottom) BoxOf(DrawnText words)
    {
        var corners = CornersOfWords(words).ToList();
        var tall = words.Size * 0.7;
        return Math.Abs(words.TurnDegrees) > 45
            ? (words.At.X - tall, corners.Min(c => c.Y), words.At.X, corners.Max(c => c.Y))
            : (corners.Min(c => c.X), words.At.Y - tall, corners.Max(c => c.X), words.At.Y);
    }

    private static IEnumerable<Drawing> AllOf(JobTakeoff takeoff, PaperSettings settings) =>
    [
        .. takeoff.Job.Lines.SelectMany(line => Elevation.Of(takeoff, line, settings)),
        .. Plan.Of(takeoff, settings),
        .. Plan.Of(takeoff, settings, takeoff.Pieces[^1]),
        .. PostWork.Of(takeoff).SelectMany(work => new[] { PostDrawing.Heights[0], PostDrawing.Heights[^1] }.SelectMany(tallest => PostDrawing.Of(work, settings, tallest))),
    ];

    private static IEnumerable<Point> CornersOf(Shape shape) => shape switch
    {
        Stroke s => [s.From, s.To],
        Polyline p => p.Points,
        Polygon p => p.Points,
        Box b => [new(b.X, b.Y), new(b.X + b.Width, b.Y + b.Height)],
        Disc d => [d.Centre.Moved(-d.Radius, -d.Radius), d.Centre.Moved(d.Radius, d.Radius)],
        DrawnText w => CornersOfWords(w),
        _ => throw new NotSupportedException(shape.GetType().Name),
    };

    private static IEnumerable<Point> CornersOfWords(DrawnText words)
    {
        var width = Lettering.Width(CleanText.Of(words.Text), words.Size, words.Bold);
        var start = words.Anchor switch { TextAnchor.Middle => -width / 2, TextAnchor.End => -width, _ => 0 };
        var turn = words.TurnDegrees * Math.PI / 180;
        foreach (var along in new[] { start, start + width })
            yield return words.At.Moved(along * Math.Cos(turn), along * Math.Sin(turn));
        yield return words.At.Moved(0, -words.Size * 0.7);
    }
}
