using System.Globalization;
using System.Text.Json.Nodes;

namespace CutShop.Testing.Jobs;

/// <summary>Reads the values of a job file for tests, in the ways of writing that <see cref="RandomValues"/> uses.</summary>
internal static class JobText
{
    public static string? Text(JsonNode? node) => node?.GetValue<string>();

    public static bool IsTrue(JsonNode? node) => node?.GetValue<bool>() ?? false;

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    public static double? Share(JsonNode? node) => Text(node) is { } text ? Number(text.TrimEnd('%')) / 100 : null;

    /// <summary>Degrees, a left turn positive; 0 if there is none.</summary>
    public static double Turn(JsonNode? node) =>
        Text(node)?.Split(' ') is [var degrees, var way] ? Number(degrees) * (way == "left" ? 1 : -1) : 0;

    public static double? Inches(JsonNode? node)
    {
        if (Text(node) is not { } text)
            return null;
        var sign = text.StartsWith('-') ? -1 : 1;
        text = text.TrimStart('-');
        if (text.EndsWith("mm", StringComparison.Ordinal))
            return sign * Number(text[..^2]) / 25.4;
        var total = 0.0;
        foreach (var word in text.Replace(" in", "", StringComparison.Ordinal).Split(' '))
            total = word == "ft" ? total * 12 : total + (word.Split('/') is [var over, var under] ? Number(over) / Number(under) : Number(word));
        return sign * total;
    }
}
