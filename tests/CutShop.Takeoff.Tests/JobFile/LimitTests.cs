using System.Text;

namespace CutShop.Takeoff.Tests.JobFile;

/// <summary>Sizes at which a file is still read and one beyond; each pair is the last good and the first bad.</summary>
public class LimitTests
{
    [Fact]
    public void A_job_has_at_most_100_000_posts()
    {
        Assert.Empty(Sample.Read(Sample.Line(Sample.PlainRow, posts: 100_000)).Problems);
        Assert.Equal(
            ["$.lines: 100001 posts in all; accepted: at most 100000"],
            Sample.Read(Sample.Line(Sample.PlainRow, posts: 100_001)).Problems.Select(problem => problem.ToString()));
    }

    [Fact]
    public void A_line_has_at_most_100_rows()
    {
        Assert.Empty(Sample.Read(Sample.Line(Rows(100))).Problems);
        Assert.Equal(["$.lines[0].rows: […]: 101 rows; accepted: at most 100 in a line"], Problems(Sample.Line(Rows(101))));
    }

    [Fact]
    public void Rows_meet_posts_at_a_million_places_at_most()
    {
        Assert.Empty(Sample.Read(Sample.Line(Rows(100), posts: 10_000)).Problems);
        Assert.Equal(
            ["$.lines[0].rows: […]: with this line rows meet posts at 1000100 places; accepted: at most 1000000 in a job"],
            Problems(Sample.Line(Rows(100), posts: 10_001)));
    }

    [Fact]
    public void After_100_000_problems_the_rest_is_not_read()
    {
        var json = new StringBuilder("{\"number\": \"x\", \"rope\": { \"material\": \"nylon\", \"diameter\": \"1 in\" }, \"lines\": [");
        json.AppendJoin(',', Enumerable.Repeat("7", 1_000_000)).Append("]}");
        var problems = Sample.Read(json.ToString()).Problems;
        Assert.Equal(100_001, problems.Count);
        Assert.Equal("$: 100000 problems up to here, the rest of the file was not read; accepted: a job file", problems[^1].ToString());
    }

    /// <summary>Every unknown name is reported; only the first hundred get a hint, which costs a comparison with each known name.</summary>
    [Fact]
    public void Thousands_of_unknown_names_are_all_reported()
    {
        var names = string.Join(", ", Enumerable.Repeat("\"numbr\": 1", 20_000));
        var problems = Sample.Read("{ " + names + ", " + Sample.Example("pier").TrimStart('{')).Problems;
        Assert.Equal(20_000, problems.Count);
        Assert.Equal(100, problems.Count(problem => problem.Text.EndsWith("did you mean 'number'?", StringComparison.Ordinal)));
    }

    [Fact]
    public void Thousands_of_unknown_posts_under_at_are_all_reported()
    {
        var at = string.Join(", ", Enumerable.Range(0, 20_000).Select(i => $"\"no such post anywhere {i}\": \"wrap 2\""));
        var row = $$"""{ "mark": "top", "height": "30 in", "sag": "4 in", "start": "stopped", "finish": "stopped", "at": { {{at}} } }""";
        Assert.Equal(20_000, Sample.Read(Sample.Line(row, posts: 5_000)).Problems.Count);
    }

    [Theory]
    [InlineData("5 m", true)]
    [InlineData("5000.000001 mm", false)]
    public void A_post_is_at_most_5_m_across(string across, bool good) =>
        Assert.Equal(good, Sample.Read(Sample.Line(Sample.PlainRow, across: across)).Problems.Count == 0);

    [Theory]
    [InlineData("1000 m", true)]
    [InlineData("1000000.000001 mm", false)]
    public void A_sag_is_at_most_a_kilometre(string sag, bool good) =>
        Assert.Equal(good, Sample.Read(Sample.Line(Sample.PlainRow.Replace("4 in", sag, StringComparison.Ordinal))).Problems.Count == 0);

    [Theory]
    [InlineData(40, true)]
    [InlineData(41, false)]
    public void A_mark_has_at_most_40_characters(int length, bool good) =>
        Assert.Equal(good, Sample.Read(Sample.Line(Sample.PlainRow.Replace("\"top\"", $"\"{new string('m', length)}\"", StringComparison.Ordinal))).Problems.Count == 0);

    [Theory]
    [InlineData("wrap 0.5", true)]
    [InlineData("wrap 1000", true)]
    [InlineData("wrap 1000.5", false)]
    [InlineData("wrap 0", false)]
    [InlineData("wrap 0.25", false)]
    public void A_wrap_has_half_a_turn_to_a_thousand(string wrap, bool good) =>
        Assert.Equal(good, Sample.Read(Sample.Line(Sample.PlainRow.Replace("\"stopped\" }", $"\"{wrap}\" }}", StringComparison.Ordinal))).Problems.Count == 0);

    private static string Rows(int count) => string.Join(", ", Enumerable.Range(1, count).Select(i =>
        $$"""{ "mark": "r{{i}}", "height": "{{i}} mm", "sag": "0 in", "start": "wrap 1", "finish": "wrap 1", "between": "wrap 1" }"""));

    private static IEnumerable<string> Problems(string json) => Sample.Read(json).Problems.Select(problem => problem.ToString());
}
