namespace CutShop.Shop.Site;

/// <summary>Whether a piece is up.</summary>
public enum InstalledState
{
    /// <summary>It is not, as far as anybody has said.</summary>
    NotInstalled,

    /// <summary>It is.</summary>
    Installed,
}
