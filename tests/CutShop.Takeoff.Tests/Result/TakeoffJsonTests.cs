using System.Globalization;
using System.Text.Json;
using CsCheck;
using CutShop.Takeoff.Tests.Rules;

namespace CutShop.Takeoff.Tests.Result;

public class TakeoffJsonTests
{
    [Fact]
    public void The_boardwalk_is_written_with_the_agreed_names()
    {
        using var written = Written(Sample.Example("boardwalk"));
        var root = written.RootElement;
        Assert.Equal(["job", "pieces", "bores", "fixings", "warnings"], Names(root));
        Assert.Equal("LQ-1042", root.GetProperty("job").GetString());

        var piece = root.GetProperty("pieces")[0];
        Assert.Equal(
            ["run", "line", "row", "from", "to", "material", "diameterIn", "netIn", "cutIn", "cut", "cutMm", "trimIn", "setOut", "weightLb", "sections", "atPosts"],
            Names(piece));
        Assert.Equal(("A-top-1", "A", "top", "A1", "A3", "polypropylene"), (Text(piece, "run"), Text(piece, "line"), Text(piece, "row"), Text(piece, "from"), Text(piece, "to"), Text(piece, "material")));
        Assert.Equal(("1.500000", "157.632978", "157.750000"), (Raw(piece, "diameterIn"), Raw(piece, "netIn"), Raw(piece, "cutIn")));
        Assert.Equal(("13' 1 3/4\"", "≈ 4006.9 mm"), (Text(piece, "cut"), Text(piece, "cutMm")));
        var section = piece.GetProperty("sections")[0];
        Assert.Equal(("A1", "A2", "72.000000", "6.000000", "73.316489"), (Text(section, "from"), Text(section, "to"), Raw(section, "chordIn"), Raw(section, "sagIn"), Raw(section, "arcIn")));
        var at = piece.GetProperty("atPosts")[0];
        Assert.Equal(("A1", "stopped", "2.750000"), (Text(at, "post"), Text(at, "kind"), Raw(at, "lengthIn")));

        var bore = root.GetProperty("bores")[0];
        Assert.Equal(("A1", "top", "stopped", "1.562500", "1.625000", "36.000000", "1.937500"), (Text(bore, "post"), Text(bore, "row"), Text(bore, "kind"), Raw(bore, "bitWantedIn"), Raw(bore, "bitIn"), Raw(bore, "heightIn"), Raw(bore, "wallIn")));
        var operation = bore.GetProperty("operations")[0];
        Assert.Equal(("toward A2", "2.750000"), (Text(operation, "face"), Raw(operation, "depthIn")));

        var fixing = root.GetProperty("fixings")[0];
        Assert.Equal(("A1", "top", "end", "#12 x 4 in stainless deck screw", "4.000000", "1"), (Text(fixing, "post"), Text(fixing, "row"), Text(fixing, "purpose"), Text(fixing, "screw"), Raw(fixing, "lengthIn"), Raw(fixing, "count")));
        // #12: 70 % of the 0.148 in root is 7/64; the head of 0.438 in takes 1/2.
        Assert.Equal(("0.109375", "0.500000"), (Raw(fixing, "pilotIn"), Raw(fixing, "counterboreIn")));
    }

    [Fact]
    public void A_warning_is_written_with_its_code_and_place()
    {
        using var written = Written(Sample.Line(Sample.PlainRow.Replace("4 in", "16 in", StringComparison.Ordinal), posts: 2));
        var warning = written.RootElement.GetProperty("warnings")[0];
        Assert.Equal(("deep-sag", "A1-A2/top", "$.lines[0].rows[0]"), (Text(warning, "code"), Text(warning, "where"), Text(warning, "path")));
        Assert.NotEmpty(Text(warning, "text")!);
    }

    [Fact]
    public void What_is_not_known_is_null()
    {
        using var written = Written(Sample.Line(Sample.PlainRow, """{ "material": "nylon", "diameter": "4 in" }""", across: "4 5/8 in"));
        Assert.Equal(JsonValueKind.Null, written.RootElement.GetProperty("pieces")[0].GetProperty("weightLb").ValueKind);
        Assert.Equal(JsonValueKind.Null, written.RootElement.GetProperty("fixings")[0].GetProperty("screw").ValueKind);
    }

    [Fact]
    public void Every_figure_of_any_job_has_six_decimals_and_is_a_number_again() =>
        Gen.Int[0, int.MaxValue - 1].Sample(seed =>
        {
            using var written = Written(RandomJob.Of(seed).ToJsonString());
            CheckFigures(written.RootElement);
        });

    [Theory]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void The_output_is_the_same_in_every_culture(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        using var expected = Written(Sample.Example("pilings"));
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            using var written = Written(Sample.Example("pilings"));
            Assert.Equal(expected.RootElement.GetRawText(), written.RootElement.GetRawText());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Marks_with_quotes_and_other_letters_come_back_as_they_were()
    {
        var json = Sample.Line(Sample.PlainRow).Replace("\"A1\"", "\"Ä\\\"<1>\\\\\"", StringComparison.Ordinal);
        using var written = Written(json);
        Assert.Equal("Ä\"<1>\\", Text(written.RootElement.GetProperty("pieces")[0], "from"));
    }

    private static JsonDocument Written(string json)
    {
        using var stream = new MemoryStream();
        TakeoffJson.Write(Sample.Takeoff(json), stream);
        return JsonDocument.Parse(stream.ToArray());
    }

    private static void CheckFigures(JsonElement element)
    {
        if (element.ValueKind == JsonValueKind.Array)
        {
            foreach (var one in element.EnumerateArray())
                CheckFigures(one);
        }
        if (element.ValueKind != JsonValueKind.Object)
            return;
        foreach (var property in element.EnumerateObject())
        {
            if (property.Name.EndsWith("In", StringComparison.Ordinal) && (property.Name, property.Value.ValueKind) != ("drySagIn", JsonValueKind.Null))
                Assert.Matches(@"^-?[0-9]+\.[0-9]{6}\z", property.Value.GetRawText());
            CheckFigures(property.Value);
        }
    }

    private static IEnumerable<string> Names(JsonElement element) => element.EnumerateObject().Select(property => property.Name);

    private static string? Text(JsonElement element, string name) => element.GetProperty(name).GetString();

    private static string Raw(JsonElement element, string name) => element.GetProperty(name).GetRawText();
}
