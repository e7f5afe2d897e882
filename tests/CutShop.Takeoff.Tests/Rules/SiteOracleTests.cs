using System.Text.Json.Nodes;

namespace CutShop.Takeoff.Tests.Rules;

/// <summary>The takeoff against the figures worked by hand.</summary>
public sealed class WorkedSitesTests : WorkedSites
{
    protected override JsonNode Takeoff(string job) => Differences.Takeoff(job);
}

public class SiteOracleTests
{
    /// <summary>Warnings that depend on figures; where is a post or section of a row, a run, a section of a line, or a line.</summary>
    private static readonly string[] Codes =
    [
        "taut-when-wet", "kink", "heavy", "longer-than-usual-coil", "steep-bore", "tight-hole", "loose-hole", "short-join", "does-not-close",
        "drop-needs-guard", "half-turn-inside", "short-between-eyes", "splice-on-site", "thin-wall",
    ];

    [Fact]
    public void Any_site_comes_out_as_a_second_reckoning_has_it()
    {
        var differences = new List<string>();
        foreach (var seed in Enumerable.Range(0, 400))
            differences.AddRange(DifferencesOf(seed).Take(3));
        Assert.Equal([], differences);
    }

    private static IEnumerable<string> DifferencesOf(int seed)
    {
        var site = RandomSite.Of(seed);
        var problems = Sample.Read(site.ToJsonString()).Problems.Select(problem => $"seed {seed}: {problem}").ToList();
        JsonObject reckoned;
        try
        {
            reckoned = Oracle.Of(site);
        }
        catch (ImpossibleJobException impossible)
        {
            return problems.Count > 0 ? [] : [$"seed {seed}: taken, though {impossible.Message}"];
        }
        if (problems.Count > 0)
            return problems;
        var taken = Differences.Takeoff(site.ToJsonString());
        var heavy = taken["pieces"]!.AsArray().Where(piece => piece!["weightLb"]?.GetValue<double>() > 51).Select(piece => $"heavy {piece!["run"]}");
        var (expected, actual) = (Warnings(reckoned).Concat(heavy).ToHashSet(), Warnings(taken).ToHashSet());
        reckoned.Remove("warnings");
        return Differences.Of(reckoned, taken, $"seed {seed}")
            .Concat(expected.Except(actual).Select(warning => $"seed {seed}: {warning} is missing"))
            .Concat(actual.Except(expected).Select(warning => $"seed {seed}: {warning} is not reckoned"));
    }

    private static IEnumerable<string> Warnings(JsonObject takeoff) =>
        takeoff["warnings"]!.AsArray().Where(warning => Codes.Contains(warning!["code"]!.GetValue<string>())).Select(warning => $"{warning!["code"]} {warning["where"]}");
}
