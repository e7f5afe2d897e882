namespace CutShop.Shop.Store;

/// <summary>The steps of cutting a piece, in order.</summary>
public enum CutStep
{
    /// <summary>The rope is pulled along the bench and marked.</summary>
    PullAndMark = 1,

    /// <summary>The ends are taped or bound.</summary>
    PrepareEnds,

    /// <summary>It is cut.</summary>
    Cut,

    /// <summary>It is measured again.</summary>
    Measure,

    /// <summary>Its label is on.</summary>
    Label,

    /// <summary>It is coiled and tied.</summary>
    CoilAndTie,
}
