namespace CutShop.Shop.Store;

/// <summary>What is counted while the shop works.</summary>
public enum ShopCount
{
    /// <summary>A job was stored.</summary>
    JobTakenIn,

    /// <summary>A piece was cut, measured, labelled and tied.</summary>
    PieceCut,

    /// <summary>A post was drilled and the rope fits.</summary>
    PostDrilled,

    /// <summary>A tap at a bench was refused.</summary>
    TapRefused,
}
