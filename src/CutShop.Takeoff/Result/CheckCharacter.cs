namespace CutShop.Takeoff.Result;

/// <summary>
/// The check character of ISO/IEC 7064 MOD 37,36: one character over 0-9 and A-Z, valued 0 to 35, that catches every
/// single wrong character and nearly every swap of two neighbours.
/// </summary>
public static class CheckCharacter
{
    /// <summary>The standard's alphabet, in the order of its values.</summary>
    public const string Alphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    private const int Modulus = 36;

    /// <summary>The check character to write behind <paramref name="text"/>.</summary>
    /// <exception cref="ArgumentException">A character is not a digit or a capital letter.</exception>
    public static char Of(ReadOnlySpan<char> text)
    {
        var product = Modulus;
        foreach (var c in text)
            product = After(product, Value(c));
        // The standard: the last product and the check character must add up to 1, modulo 36.
        return Alphabet[(Modulus + 1 - product) % Modulus];
    }

    /// <summary>True where the last character is the check character of all before it.</summary>
    /// <exception cref="ArgumentException">A character is not a digit or a capital letter, or there is none.</exception>
    public static bool Fits(ReadOnlySpan<char> text)
    {
        if (text.IsEmpty)
            throw new ArgumentException("There is no check character in an empty text.", nameof(text));
        return Of(text[..^1]) == text[^1];
    }

    /// <summary>One step of the standard: the sum modulo 36, with 36 for 0, doubled modulo 37.</summary>
    private static int After(int product, int value)
    {
        var sum = (product + value) % Modulus;
        return (sum == 0 ? Modulus : sum) * 2 % (Modulus + 1);
    }

    private static int Value(char c)
    {
        var value = Alphabet.IndexOf(c, StringComparison.Ordinal);
        return value >= 0 ? value : throw new ArgumentException($"'{c}' is not a digit or a capital letter.", nameof(c));
    }
}
