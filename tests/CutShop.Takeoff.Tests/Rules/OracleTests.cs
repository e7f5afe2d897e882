using System.Text.Json.Nodes;

namespace CutShop.Takeoff.Tests.Rules;

public class OracleTests
{
    private static readonly HashSet<string> Newer =
        ["warnings", "trimIn", "setOut", "midHeightIn", "tautShare", "drySagIn", "level", "existing", "bored", "skewDegrees", "kinkDegrees", "bitWantedIn"];

    [Fact]
    public void Any_job_comes_out_as_a_second_reckoning_has_it()
    {
        foreach (var seed in Enumerable.Range(0, 400))
        {
            var job = RandomJob.Of(seed);
            Assert.Equal([], Differences.Of(Older(Oracle.Of(job)), Differences.Takeoff(job.ToJsonString()), $"seed {seed}").Take(20));
        }
    }

    private static JsonNode? Older(JsonNode? node) => node switch
    {
        JsonObject names => new JsonObject(names.Where(name => !Newer.Contains(name.Key)).Select(name => KeyValuePair.Create(name.Key, Older(name.Value)))),
        JsonArray list => new JsonArray([.. list.Select(Older)]),
        _ => node?.DeepClone(),
    };
}
