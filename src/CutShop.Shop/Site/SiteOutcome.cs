namespace CutShop.Shop.Site;

/// <summary>How something that an installer sent went.</summary>
public enum SiteOutcome
{
    /// <summary>It is stored, or was so already.</summary>
    Done,

    /// <summary>No piece has this code.</summary>
    NoSuchPiece,

    /// <summary>The code is of a label that is no longer valid.</summary>
    LabelEnded,

    /// <summary>The piece is no longer wanted, or another was cut in its place.</summary>
    NoLongerWanted,

    /// <summary>Someone else has changed it since: nothing was overwritten.</summary>
    Conflict,

    /// <summary>The shop has not cut the piece, and nobody has said that it hangs all the same.</summary>
    NotCut,

    /// <summary>The piece is reported as too short, and nobody has said that it hangs all the same.</summary>
    ReportedShort,

    /// <summary>A span that no section of the piece can have, or of a section that it has not.</summary>
    UnlikelySpan,

    /// <summary>No post of the label's line has this bore to be made on site.</summary>
    NoSuchBore,

    /// <summary>The desk has more open reports of the piece than it will take.</summary>
    TooManyReports,
}
