using System.Text.Json;
using System.Text.Json.Nodes;

namespace CutShop.Takeoff.Tests.Rules;

public class RandomSiteTests
{
    /// <summary>A rule that no random site meets would not be compared.</summary>
    [Fact]
    public void Random_sites_meet_every_rule()
    {
        var (said, impossible) = (new HashSet<string>(), 0);
        foreach (var seed in Enumerable.Range(0, 400))
        {
            try
            {
                Collect(Oracle.Of(RandomSite.Of(seed)), said);
            }
            catch (ImpossibleJobException)
            {
                impossible++;
            }
        }
        Assert.InRange(impossible, 4, 100);
        string[] words =
        [
            "stopped", "through", "corner", "knot", "wrap", "beside", "eye", "join", "shop", "site", "kink", "taut-when-wet", "longer-than-usual-coil",
            "steep-bore", "tight-hole", "loose-hole", "short-join", "does-not-close", "drop-needs-guard", "half-turn-inside", "short-between-eyes",
            "splice-on-site", "thin-wall",
        ];
        Assert.Equal([], words.Except(said));
    }

    private static void Collect(JsonNode? node, HashSet<string> said)
    {
        if (node is JsonObject or JsonArray)
        {
            foreach (var one in node is JsonObject names ? names.Select(name => name.Value) : node.AsArray())
                Collect(one, said);
        }
        else if (node?.GetValueKind() == JsonValueKind.String)
        {
            said.Add(node.GetValue<string>());
        }
    }
}
