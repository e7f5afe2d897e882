using System.Text.Json;
using CsCheck;
using CutShop.Takeoff.Tests.Rules;
using Json.Schema;

namespace CutShop.Takeoff.Tests.JobFile;

/// <summary>docs/job-file.schema.json says of a file what the reader says, as far as a schema can.</summary>
public class SchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "job-file.schema.json")));

    [Theory]
    [InlineData("boardwalk")]
    [InlineData("up-and-down")]
    [InlineData("pilings")]
    [InlineData("two-lines")]
    [InlineData("pier")]
    public void The_examples_are_good(string name) => Assert.True(Accepts(Sample.Example(name)));

    [Fact]
    public void Any_good_job_is_good() =>
        Gen.Int[0, int.MaxValue - 1].Sample(seed => Assert.True(Accepts(RandomJob.Of(seed).ToJsonString())));

    [Theory]
    [InlineData("72in")]
    [InlineData("72 IN.")]
    [InlineData("72 inches")]
    [InlineData("72''")]
    [InlineData("6'")]
    [InlineData("6 ft 0 in")]
    [InlineData("6 1/2 ft")]
    [InlineData("6'2\\\"")]
    [InlineData("6'-2\\\"")]
    [InlineData("6' 2 3/8")]
    [InlineData("6′ 2⅜″")]
    [InlineData("5½\\\"")]
    [InlineData("1.5 in")]
    [InlineData(".5 in")]
    [InlineData("1828.8 mm")]
    [InlineData("1.83 m")]
    [InlineData("183 cm")]
    public void Every_way_to_write_a_length_is_good(string length)
    {
        var json = Sample.Example("pier").Replace("72 in", length, StringComparison.Ordinal);
        Assert.Empty(Sample.Read(json).Problems);
        Assert.True(Accepts(json));
    }

    [Theory]
    [InlineData("\"T-1\"", "\"\"")]
    [InlineData("\"T-1\"", "\" T-1\"")]
    [InlineData("\"T-1\"", "1042")]
    [InlineData("\"T-1\"", "\"T-1\", \"datum\": \"sky\"")]
    [InlineData("\"T-1\"", "\"T-1\", \"datum\": \"foot\"")]
    [InlineData("\"90 left\"", "\"90 left\", \"buried\": \"-1 in\"")]
    [InlineData("\"number\"", "\"nmber\"")]
    [InlineData("\"2027-03-12\"", "\"12.3.2027\"")]
    [InlineData("\"manila\"", "\"wool\"")]
    [InlineData("\"material\": \"manila\", ", "")]
    [InlineData("\"1 1/2 in\" }", "1.5 }")]
    [InlineData("\"1 1/2 in\" }", "\"1 1/2\" }")]
    [InlineData("\"1 1/2 in\" }", "\"0 in\" }")]
    [InlineData("\"1 1/2 in\" }", "\"1 1/3 in\" }")]
    [InlineData("\"1 1/2 in\" }", "\"-1 in\" }")]
    [InlineData("\"1 1/2 in\" }", "\"1 1/2 mm\" }")]
    [InlineData("\"12.5%\"", "\"12.5\"")]
    [InlineData("\"12.5%\"", "\"101%\"")]
    [InlineData("\"12.5%\"", "\"%\"")]
    [InlineData("\"1/4 in\"", "\"0 in\"")]
    [InlineData("\"round\"", "\"hexagon\"")]
    [InlineData("\"90 left\"", "\"180 left\"")]
    [InlineData("\"90 left\"", "\"0 left\"")]
    [InlineData("\"90 left\"", "\"90\"")]
    [InlineData("\"clear\": \"72 in\"", "\"clear\": \"72 in\", \"centres\": \"80 in\"")]
    [InlineData("{ \"clear\": \"72 in\" }", "{ }")]
    [InlineData("\"-2 in\"", "\"- in\"")]
    [InlineData("\"sag\": \"6 in\"", "\"sag\": \"6 in\", \"slack\": \"3 in\"")]
    [InlineData("\"sag\": \"6 in\"", "\"sag\": \"-6 in\"")]
    [InlineData("\"start\": \"stopped\", ", "")]
    [InlineData("\"start\": \"stopped\"", "\"start\": \"bored\"")]
    [InlineData("\"finish\": \"knot\"", "\"finish\": \"knot\", \"between\": \"knot\"")]
    [InlineData("\"wrap 2\"", "\"wrap 0\"")]
    [InlineData("\"wrap 2\"", "\"wrap 2.25\"")]
    [InlineData("\"wrap 2\"", "\"glued\"")]
    [InlineData("{ \"A2\": \"wrap 2\" }", "\"wrap 2\"")]
    public void What_is_wrong_in_itself_is_refused_by_both(string replaced, string by)
    {
        var json = Sample.Example("pier").Replace(replaced, by, StringComparison.Ordinal);
        Assert.NotEqual(Sample.Example("pier"), json);
        Assert.NotEmpty(Sample.Read(json).Problems);
        Assert.False(Accepts(json));
    }

    /// <summary>Marks that must differ, counts that must match and rules that need arithmetic are beyond a schema.</summary>
    [Theory]
    [InlineData("\"low\"", "\"top\"")]
    [InlineData("{ \"clear\": \"72 in\" }, ", "")]
    [InlineData("\"A2\": \"wrap 2\"", "\"A9\": \"wrap 2\"")]
    [InlineData("\"36 in\"", "\"42 in\"")]
    public void What_only_does_not_go_together_is_for_the_reader(string replaced, string by)
    {
        var json = Sample.Example("pier").Replace(replaced, by, StringComparison.Ordinal);
        Assert.NotEmpty(Sample.Read(json).Problems);
        Assert.True(Accepts(json));
    }

    private static bool Accepts(string json)
    {
        using var document = JsonDocument.Parse(json);
        return Schema.Evaluate(document.RootElement).IsValid;
    }
}
