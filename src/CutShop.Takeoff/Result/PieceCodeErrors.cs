using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Result;

/// <summary>The sentences about a text that is not a piece code, in English and Spanish.</summary>
public static class PieceCodeErrors
{
    /// <summary>The sentences.</summary>
    public static WordList List { get; } = new(typeof(PieceCodeErrors));

    /// <summary>The symbols are right one by one but do not belong together.</summary>
    internal static Sentence CheckDoesNotMatch { get; } = new(List, "CheckDoesNotMatch");

    /// <summary>A character that is in no code.</summary>
    internal static Sentence NoSuchSymbol(char typed) => new(List, "NoSuchSymbol", typed, PieceCode.Symbols[..8], PieceCode.Symbols[8..]);

    /// <summary>Too few or too many symbols.</summary>
    internal static Sentence WrongLength(int count) => new(List, "WrongLength", PieceCode.SymbolCount, count);
}
