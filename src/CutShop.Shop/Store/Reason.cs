namespace CutShop.Shop.Store;

/// <summary>Why something was done: what a person typed, a cause that the program knows, or nothing.</summary>
public readonly record struct Reason
{
    private readonly string? _typed;
    private readonly HistoryCause? _cause;

    private Reason(string? typed, HistoryCause? cause) => (_typed, _cause) = (typed, cause);

    /// <summary>What a person typed, or empty.</summary>
    public string Typed => _typed ?? "";

    /// <summary>The code of the program's cause, or empty.</summary>
    public string Cause => _cause?.Code ?? "";

    /// <summary>What a person typed.</summary>
    public static implicit operator Reason(string typed) => FromString(typed);

    /// <summary>What a person typed.</summary>
    public static Reason FromString(string typed) => new(typed, cause: null);

    /// <summary>A cause that the program knows.</summary>
    internal static Reason Because(HistoryCause cause) => new(typed: null, cause);
}
