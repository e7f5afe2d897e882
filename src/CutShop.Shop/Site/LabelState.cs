namespace CutShop.Shop.Site;

/// <summary>Whether a label counts.</summary>
public enum LabelState
{
    /// <summary>It does.</summary>
    Good,

    /// <summary>It does, but its piece is no longer wanted, its job was cancelled, or it was cut again.</summary>
    NoLongerWanted,

    /// <summary>It was revoked: its piece has another code now.</summary>
    Ended,
}
