namespace CutShop.Testing.Fuzz;

/// <summary>Texts that break programs: too large, too small, of another alphabet, of another language, of no language.</summary>
internal static class Hostile
{
    /// <summary>Numbers no railing has.</summary>
    public static readonly string[] Numbers =
    [
        "0", "-0", "-1", "00", "1e999", "1e-999", "9223372036854775807", "-9223372036854775808", "79228162514264337593543950336", "0.0000000000000000001",
        "NaN", "Infinity", "0x10", "1_000", "1,000", "٣", "½", new('9', 400), "0." + new string('0', 400) + "1",
    ];

    /// <summary>Other texts.</summary>
    public static readonly string[] Texts =
    [
        "", " ", "\t", "\n", "\0", "\u200B", "\u202E", "\uFEFF", "\uFFFD", "\uD83E\uDE62", "e\u0301", "ß", "İ", "'", "\"", "''", "\\", "/", "//", "..", "../../x", "%00", "{0}",
        "null", "true", "[]", "{}", "<script>alert(1)</script>", "' OR 1=1 --", "=1+1", "@", "-", "wrap 2", "bored", "square", "manila", "72 in", "6' 2 3/8\"",
        "2027-02-30", "0001-01-01", "9999-12-31", "10000-01-01", new('x', 41), new('x', 501), new('[', 300), string.Concat(Enumerable.Repeat("\uD83E\uDE62", 300)),
    ];

    /// <summary>One of all of them.</summary>
    public static string Any(Random random) => random.Next(3) == 0 ? random.Of(Numbers) : random.Of(Texts);

    /// <summary>One of a list.</summary>
    public static T Of<T>(this Random random, IReadOnlyList<T> list) => list[random.Next(list.Count)];
}
