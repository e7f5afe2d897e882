namespace CutShop.Shop.Store;

/// <summary>What an installer reports of a piece.</summary>
public enum SiteReportKind
{
    /// <summary>It does not reach.</summary>
    TooShort,

    /// <summary>Too much is left over.</summary>
    TooLong,

    /// <summary>It is spoiled.</summary>
    Damaged,

    /// <summary>It is not in the delivery.</summary>
    Missing,
}
