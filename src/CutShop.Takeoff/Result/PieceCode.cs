using System.Security.Cryptography;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Result;

/// <summary>
/// The code that a piece of rope carries through the shop: 11 random symbols and a check character, printed
/// <c>XXXX-XXXX-XXXX</c>.
/// </summary>
/// <remarks>
/// <para>Symbols are the 27 digits and capital letters that are not mistaken for one another in print or by voice:
/// 0 and O, 1, I and L are out, and so are U for V's sake, B for 8's, S for 5's and Z for 2's.</para>
/// <para>The check character is that of ISO/IEC 7064 MOD 37,36. It can be any of 36; codes where it is not one of the 27
/// are drawn again. There are 27^11 = 5,559,060,566,555,523 drawings, which is 52.30 bits; 4,169,295,424,905,594 of them
/// are kept, 27/36 but for a trace, which takes away log2(36/27) = 0.415 bits. So 51.88 random bits remain, over 51.</para>
/// <para>A single wrong symbol is always caught; of swaps of two neighbours 40 in 25,272 are not.</para>
/// <para>Equality is by the symbols. There is no ordering: codes are random. <c>default</c> is no code, and its text is empty.</para>
/// </remarks>
public readonly record struct PieceCode
{
    /// <summary>The 27 symbols of a code.</summary>
    public const string Symbols = "23456789ACDEFGHJKMNPQRTVWXY";

    /// <summary>Symbols in a code, the check character included.</summary>
    public const int SymbolCount = 12;

    private const int Group = 4;

    private readonly string? _symbols;

    private PieceCode(string symbols) => _symbols = symbols;

    /// <summary>The twelve symbols without dashes: what is stored and what an address carries.</summary>
    public string Plain => _symbols ?? "";

    /// <summary>A new code from the system's random numbers.</summary>
    public static PieceCode Draw() => Draw(RandomNumberGenerator.GetInt32);

    /// <summary>A new code; <paramref name="below"/> gives a random whole number from zero up to but not including its argument.</summary>
    internal static PieceCode Draw(Func<int, int> below)
    {
        Span<char> symbols = stackalloc char[SymbolCount];
        while (true)
        {
            for (var i = 0; i < SymbolCount - 1; i++)
                symbols[i] = Symbols[below(Symbols.Length)];
            symbols[^1] = CheckCharacter.Of(symbols[..^1]);
            if (Symbols.Contains(symbols[^1], StringComparison.Ordinal))
                return new(new string(symbols));
        }
    }

    /// <summary>Reads a code as printed or typed: capital or small letters, with or without dashes and spaces.</summary>
    /// <returns>The code, or what is wrong: a character that no code has, the wrong length, or a check character that does not match.</returns>
    public static Parsed<PieceCode> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        Span<char> symbols = stackalloc char[SymbolCount];
        return Read(text, symbols) is { } why
            ? Parsed.Bad<PieceCode>(why)
            : Parsed.Good(new PieceCode(new string(symbols)));
    }

    private static Sentence? Read(string text, Span<char> symbols)
    {
        var count = 0;
        foreach (var typed in text)
        {
            if (typed == '-' || char.IsWhiteSpace(typed))
                continue;
            var symbol = typed is >= 'a' and <= 'z' ? (char)(typed - 'a' + 'A') : typed;
            if (!Symbols.Contains(symbol, StringComparison.Ordinal))
                return PieceCodeErrors.NoSuchSymbol(typed);
            if (count < SymbolCount)
                symbols[count] = symbol;
            count++;
        }
        return count != SymbolCount ? PieceCodeErrors.WrongLength(count)
            : CheckCharacter.Fits(symbols) ? null
            : PieceCodeErrors.CheckDoesNotMatch;
    }

    /// <summary>The code as printed: three groups of four with dashes between.</summary>
    public override string ToString() =>
        _symbols is null ? "" : $"{_symbols[..Group]}-{_symbols[Group..(2 * Group)]}-{_symbols[(2 * Group)..]}";
}
