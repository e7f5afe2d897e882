using System.Text;

namespace CutShop.Takeoff.Tests.JobFile;

public class UnreadableFileTests
{
    [Theory]
    [InlineData("", 1, 1)]
    [InlineData("{", 1, 2)]
    [InlineData("{\"number\":NaN}", 1, 11)]
    [InlineData("{\"number\":-Infinity}", 1, 12)]
    [InlineData("{\"number\":\"x\"} {}", 1, 16)]
    [InlineData("{\"number\":\"x\",}", 1, 15)]
    [InlineData("{\n\"number\": 'x'}", 2, 11)]
    [InlineData("// note\n{}", 1, 1)]
    [InlineData("[[[[[[[[[[[[[[[[[", 1, 17)]
    public void What_is_no_JSON_is_named_with_its_place(string text, int line, int column) =>
        Assert.Equal(
            $"$: not JSON at line {line}, byte {column}; accepted: a JSON object nested at most 16 deep",
            Assert.Single(Sample.Read(text).Problems).ToString());

    [Fact]
    public void A_million_brackets_are_only_nested_too_deep()
    {
        Assert.StartsWith("$: not JSON at line 1, byte 17", Assert.Single(Sample.Read(new string('[', 1_000_000)).Problems).ToString(), StringComparison.Ordinal);
        Assert.Single(Sample.Read(string.Concat(Enumerable.Repeat("{\"lines\":", 1_000_000))).Problems);
    }

    [Fact]
    public void Other_encodings_are_named()
    {
        var json = Sample.Example("pier").Replace("Pier", "Café", StringComparison.Ordinal);
        Assert.NotNull(JobFileReader.Read(Encoding.UTF8.GetBytes(json)).Job);
        Assert.NotNull(JobFileReader.Read((byte[])[0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(json)]).Job);
        Assert.Equal("$: not in UTF-8; accepted: JSON in UTF-8", Only(Encoding.Latin1.GetBytes(json)));
        Assert.Equal("$: not in UTF-8; accepted: JSON in UTF-8", Only([0xFF, 0xFE, .. Encoding.Unicode.GetBytes(json)]));
        Assert.StartsWith("$: not ", Only(Encoding.Unicode.GetBytes(json)), StringComparison.Ordinal);
        Assert.StartsWith("$: not ", Only(Encoding.UTF32.GetBytes(json)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_over_64_MiB_is_not_read() =>
        Assert.Equal("$: accepted: a file of at most 64 MiB", Only(new byte[(64 * 1024 * 1024) + 1]));

    [Fact]
    public void Half_a_surrogate_pair_is_reported_wherever_it_stands()
    {
        var json = Sample.Example("pier");
        foreach (var (replaced, by) in new[] { ("\"Pier\"", "\"\\udc00\""), ("\"customer\"", "\"\\ud800\""), ("\"A2\": \"wrap 2\"", "\"\\ud800x\": \"wrap 2\""), ("\"wrap 2\"", "\"wrap \\udfff\""), ("\"shape\": \"round\"", "\"\\ud83d\": \"round\""), ("\"across\"", "\"acro\\ud800\"") })
        {
            var broken = json.Replace(replaced, by, StringComparison.Ordinal);
            Assert.NotEqual(json, broken);
            Assert.NotEmpty(Sample.Read(broken).Problems);
        }
    }

    [Fact]
    public void Every_problem_is_one_line()
    {
        const string nasty = "x\\n\\u2028\\u0085\\u0000y";
        var json = Sample.Example("pier");
        foreach (var word in new[] { "number", "customer", "T-1", "Pier", "manila", "1 1/2 in", "12.5%", "mark", "A2", "square", "90 left", "72 in", "stopped", "wrap 2" })
        {
            foreach (var by in new[] { nasty, nasty.Replace("\\n", "", StringComparison.Ordinal).Replace("\\u2028", "\u2028", StringComparison.Ordinal).Replace("\\u0085", "\u0085", StringComparison.Ordinal), word + "\\n" })
            {
                var problems = Sample.Read(json.Replace($"\"{word}\"", $"\"{by}\"", StringComparison.Ordinal)).Problems;
                Assert.All(problems, problem => Assert.DoesNotContain(problem.ToString(), c => char.IsControl(c) || c is '\u2028' or '\u2029'));
            }
        }
    }

    [Fact]
    public void An_override_in_a_line_without_posts_is_a_problem_like_any_other()
    {
        const string json = """{ "number": "x", "rope": { "material": "nylon", "diameter": "1 in" }, "lines": [ { "mark": "A", "rows": [ { "mark": "r", "height": "30 in", "sag": "1 in", "start": "knot", "finish": "knot", "at": { "A1": "knot" } } ] } ] }""";
        Assert.Equal(
            ["$.lines[0].posts", "$.lines[0].sections", "$.lines[0].rows[0].at.A1"],
            Sample.Read(json).Problems.Select(problem => problem.Path));
    }

    [Fact]
    public void A_long_value_is_cut_short_and_never_inside_a_character()
    {
        var problem = Assert.Single(Sample.Read(Sample.Example("pier").Replace("Pier", string.Concat(Enumerable.Repeat("😀", 101)), StringComparison.Ordinal)).Problems);
        // A quotation mark and 29 characters of two halves; the 60th place is a first half.
        Assert.Equal("\"" + string.Concat(Enumerable.Repeat("😀", 29)) + "…", problem.Value);
    }

    private static string Only(byte[] bytes) => Assert.Single(JobFileReader.Read(bytes).Problems).ToString();
}
