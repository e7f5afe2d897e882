using System.Text.Json;

namespace CutShop.Cli.Tests;

public sealed class TakeoffCommandTests
{
    [Theory]
    [InlineData("lq-1042-north-walk.json", "LQ-1042", 9)]
    [InlineData("lq-1043-beach-ramp.json", "LQ-1043", 2)]
    [InlineData("lq-1044-lamp-pier.json", "LQ-1044", 3)]
    public async Task A_good_file_gives_one_json_object_and_nothing_else(string file, string number, int pieces)
    {
        var ran = await Ran.WithAsync(input: null, "takeoff", Path.Combine("demo", file));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        using var json = JsonDocument.Parse(ran.Output);
        Assert.Equal(number, json.RootElement.GetProperty("job").GetString());
        Assert.Equal(pieces, json.RootElement.GetProperty("pieces").GetArrayLength());
    }

    [Fact]
    public async Task A_bad_file_gives_every_problem_a_line_on_standard_error_and_nothing_on_standard_output()
    {
        var ran = await Ran.WithAsync("""{ "number": "", "rope": { "material": "wool", "diameter": 1.5 }, "lines": [] }""", "takeoff", "-");
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Equal(
            ["$.number: \"\":", "$.rope.material: \"wool\":", "$.rope.diameter: 1.5:", "$.lines: […]:"],
            ran.Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => string.Join(": ", line.Split(": ")[..2]) + ":"));
    }

    [Fact]
    public async Task A_file_that_is_not_there_is_named_and_is_no_bad_input()
    {
        var ran = await Ran.WithAsync(input: null, "takeoff", "nowhere.json");
        Assert.Equal((1, ""), (ran.ExitCode, ran.Output));
        Assert.StartsWith("nowhere.json: ", ran.Errors, StringComparison.Ordinal);
    }
}
