using System.Globalization;
using System.Text.Json.Nodes;

namespace CutShop.Takeoff.Tests.Rules;

/// <summary>Where a takeoff's JSON differs from a reckoning of it.</summary>
internal static class Differences
{
    /// <summary>Inches, degrees and shares.</summary>
    private const double Tolerance = 1e-5;

    /// <summary>The takeoff of a job file as the program writes it.</summary>
    public static JsonObject Takeoff(string job)
    {
        using var stream = new MemoryStream();
        TakeoffJson.Write(Sample.Takeoff(job), stream);
        return JsonNode.Parse(stream.ToArray())!.AsObject();
    }

    /// <summary>Everything that the reckoning says must be in the takeoff; what it has beyond that is not looked at.</summary>
    public static IEnumerable<string> Of(JsonNode? reckoned, JsonNode? taken, string path = "") => reckoned switch
    {
        JsonObject names => names.SelectMany(name => Of(name.Value, (taken as JsonObject)?[name.Key], $"{path}.{name.Key}")),
        JsonArray list when taken is JsonArray other && other.Count == list.Count => list.SelectMany((one, i) => Of(one, other[i], $"{path}[{i}]")),
        JsonArray list => [$"{path}: {list.Count} reckoned, {(taken as JsonArray)?.Count} taken: {list.ToJsonString()}, {taken?.ToJsonString()}"],
        _ when IsSame(reckoned, taken) => [],
        _ => [string.Create(CultureInfo.InvariantCulture, $"{path}: {reckoned?.ToJsonString() ?? "null"} reckoned, {taken?.ToJsonString() ?? "null"} taken")],
    };

    private static bool IsSame(JsonNode? reckoned, JsonNode? taken) =>
        reckoned is JsonValue one && one.TryGetValue<double>(out var figure)
            ? taken is JsonValue other && other.TryGetValue<double>(out var shown) && Math.Abs(figure - shown) <= Tolerance
            : JsonNode.DeepEquals(reckoned, taken);
}
