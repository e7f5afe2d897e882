namespace CutShop.Shop.Store;

/// <summary>The steps of cutting a piece, in order. Each is one tap; the last is one tap or the scan of the piece's label.</summary>
public enum CutStep
{
    /// <summary>The rope is pulled along the bench and marked.</summary>
    Mark = 1,

    /// <summary>The ends are taped or bound, and it is cut.</summary>
    Cut,

    /// <summary>It is measured again.</summary>
    Measure,

    /// <summary>Its label is on, and it is coiled and tied.</summary>
    LabelAndTie,
}
