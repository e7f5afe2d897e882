using System.Text;

namespace CutShop.Testing.Fuzz;

/// <summary>Texts that nearly are lengths, and some that are.</summary>
internal static class LengthStrings
{
    private const int MostParts = 9;

    private static readonly string[] Parts =
    [
        " ", " ", " ", "in", "in.", "inch", "inches", "ft", "feet", "mm", "cm", "m", "'", "\"", "''", "′", "″", "’", "”", "/", "⁄", "1/2", "3/8", "63/64", "1/3", "8/8", ".", ",", "-", "−", "+",
        "½", "⅞", "⅓", "0", "5", "12", "72", "101", "1828.8", "0.5", "٣", "１", "e5", "x", "\0", "\u00A0", "\uD800", "\uDC00", "\u0301", "\r\n", "IN", "FT", "MM",
    ];

    private static readonly string[] Fractions = ["", "", "", " 1/2", " 3/8", " 63/64", " 4/3", " 1/5", ".5", ".0001", ".123456789", "½", " ⅞", "-1/2", " 6", "-6", " 10 1/4", ",70", ",700", "m70", "'-6-1/2"];

    private static readonly string[] Units = ["in", "\"", "ft", "'", "mm", "cm", "m", "IN", "feet", "yd", ""];

    /// <summary>The text of a seed: the same seed gives the same text.</summary>
    public static string Make(int seed)
    {
        var random = new Random(seed);
        var text = new StringBuilder(random.Next(2) == 0 ? Nearly(random) : "");
        if (text.Length > 0 && random.Next(2) == 0)
            return text.ToString();
        for (var i = random.Next(MostParts); i >= 0; i--)
            text.Append(Part(random));
        return text.ToString();
    }

    /// <summary>A number, perhaps with a fraction, and its unit.</summary>
    private static string Nearly(Random random) =>
        $"{(random.Next(8) == 0 ? "-" : "")}{random.Next(300)}{random.Of(Fractions)}{(random.Next(2) == 0 ? " " : "")}{random.Of(Units)}";

    private static string Part(Random random) => random.Next(12) switch
    {
        0 => random.Of(Hostile.Numbers),
        1 => ((char)random.Next(char.MaxValue + 1)).ToString(),
        2 => random.NextInt64().ToString(System.Globalization.CultureInfo.InvariantCulture),
        < 6 => random.Next(200).ToString(System.Globalization.CultureInfo.InvariantCulture),
        _ => random.Of(Parts),
    };
}
