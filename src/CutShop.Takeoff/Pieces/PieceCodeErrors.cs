namespace CutShop.Takeoff;

/// <summary>What is said of a text that is no piece code, with its figures apart so that it can be said in another language.</summary>
internal static class PieceCodeErrors
{
    /// <summary>The symbols are right one by one but do not belong together.</summary>
    public static FormattableString CheckDoesNotMatch { get; } =
        $"the last character does not match the others: a character is wrong or two have changed places; look at the label again";

    /// <summary>A character that is in no code.</summary>
    public static FormattableString NoSuchSymbol(char typed) =>
        $"no piece code has '{typed}' in it: accepted are {PieceCode.Symbols[..8]} and the letters {PieceCode.Symbols[8..]}";

    /// <summary>Too few or too many symbols.</summary>
    public static FormattableString WrongLength(int count) =>
        $"a piece code has {PieceCode.SymbolCount} characters, this has {count}; accepted: XXXX-XXXX-XXXX";
}
