using System.Xml.Linq;
using CutShop.Paper.Tests.Samples;

namespace CutShop.Paper.Tests.Drawings;

public sealed class SvgDrawingTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void A_picture_names_and_describes_itself_and_brings_neither_style_nor_script()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        foreach (var drawing in Elevation.Of(takeoff, takeoff.Job.Lines[0], PaperSettings.Default).Concat(PostWork.Of(takeoff).SelectMany(w => PostDrawing.Of(w, PaperSettings.Default))))
        {
            var root = XDocument.Parse(SvgDrawing.Write(drawing)).Root!;
            Assert.Equal("img", root.Attribute("role")!.Value);
            Assert.Equal(drawing.Title, root.Elements().First().Value);
            Assert.Equal([Svg + "title", Svg + "desc"], root.Elements().Take(2).Select(e => e.Name));
            Assert.NotEmpty(root.Element(Svg + "desc")!.Value);
            Assert.DoesNotContain(root.DescendantsAndSelf(), e => e.Name.LocalName is "script" or "style" || e.Attribute("style") is not null);
            var colours = root.Descendants().Attributes().Where(a => a.Name.LocalName is "fill" or "stroke").Select(a => a.Value).Distinct();
            Assert.Equal(["currentColor"], colours);
        }
    }

    [Fact]
    public void Words_from_a_job_stay_words()
    {
        const string Nasty = "</text><script>alert(\"1\")</script>&'\u0001\uD800";
        var svg = SvgDrawing.Write(new Drawing(Nasty, Nasty, 10, 10, [new DrawnText(new(1, 1), Nasty, 3)]));
        var root = XDocument.Parse(svg).Root!;
        Assert.Equal("</text><script>alert(\"1\")</script>&' \uFFFD", root.Element(Svg + "text")!.Value);
        Assert.DoesNotContain("<script", svg, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Numbers_are_written_the_same_in_every_culture()
    {
        var drawing = new Drawing("a", "b", 10.5, 10, [new Stroke(new(0.25, 1), new(2, 3), Pen.Outline)]);
        var before = System.Globalization.CultureInfo.CurrentCulture;
        var expected = SvgDrawing.Write(drawing);
        try
        {
            System.Globalization.CultureInfo.CurrentCulture = System.Globalization.CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(expected, SvgDrawing.Write(drawing));
            Assert.Contains("x1=\"0.25\"", expected, StringComparison.Ordinal);
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentCulture = before;
        }
    }
}
