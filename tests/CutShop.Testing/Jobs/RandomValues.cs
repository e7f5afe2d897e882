using System.Globalization;
using System.Text.Json.Nodes;

namespace CutShop.Testing.Jobs;

/// <summary>Values that random job files are made of, the same for the same seed.</summary>
internal abstract class RandomValues(int seed)
{
    protected static readonly string[] NaturalRopes = ["manila", "sisal", "hemp", "jute", "cotton"];
    protected static readonly string[] TrueRopes = ["polypropylene", "polyester", "nylon", "polyethylene"];

    private readonly Random _random = new(seed);

    protected JsonObject AddHang(JsonObject to)
    {
        if (Chance(0.5))
            to["sag"] = Chance(0.2) ? "0 in" : Inches(1, 20 * 64);
        else
            to["slack"] = Chance(0.2) ? "0 mm" : Inches(1, 12 * 64);
        return to;
    }

    /// <summary>A length of whole 64ths.</summary>
    protected string Inches(int least, int most) => Text(Next(least, most));

    protected string Text(int sixtyFourths) => Next(0, 4) switch
    {
        0 => string.Create(CultureInfo.InvariantCulture, $"{sixtyFourths * 0.396875m} mm"),
        1 when sixtyFourths >= 768 => string.Create(CultureInfo.InvariantCulture, $"{sixtyFourths / 768} ft {sixtyFourths % 768 / 64} {sixtyFourths % 64}/64 in"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{sixtyFourths / 64} {sixtyFourths % 64}/64 in"),
    };

    protected int Next(int least, int most) => _random.Next(least, most);

    protected string OneOf(params ReadOnlySpan<string> words) => words[Next(0, words.Length)];

    protected bool Chance(double share) => _random.NextDouble() < share;
}
