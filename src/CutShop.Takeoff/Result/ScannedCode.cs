using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Result;

/// <summary>A piece's code as a scanner or a person gives it: the code, or the address that a label holds, of whichever shop.</summary>
public static class ScannedCode
{
    private const string PiecePath = "p";

    /// <summary>Reads <c>XXXX-XXXX-XXXX</c>, or an address such as <c>HTTPS://SHOP.EXAMPLE/P/XXXXXXXXXXXX</c> with whatever stands behind the code in it.</summary>
    /// <returns>The code, or what is wrong with it.</returns>
    public static Parsed<PieceCode> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return PieceCode.Parse(CodeIn(text, out _));
    }

    /// <summary>What was mistyped in a text that is meant as a code: a piece's address, or as many symbols as a code has. Null for a good code and for any other text.</summary>
    public static Sentence? SlipIn(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var why = PieceCode.Parse(CodeIn(text, out var isAddress)).Reason;
        return isAddress || PieceCodeErrors.CheckDoesNotMatch.Equals(why) ? why : null;
    }

    /// <summary>In an address what stands behind <c>/p/</c>, or its last part; any other text as it is.</summary>
    private static string CodeIn(string text, out bool isAddress)
    {
        isAddress = false;
        if (!text.Contains('/', StringComparison.Ordinal))
            return text;
        var parts = text.Trim().Split('?', '#')[0].Split('/', StringSplitOptions.RemoveEmptyEntries);
        var code = 1 + Array.FindLastIndex(parts, part => part.Equals(PiecePath, StringComparison.OrdinalIgnoreCase));
        isAddress = code > 0 && code < parts.Length;
        return isAddress ? parts[code] : parts.LastOrDefault("");
    }
}
