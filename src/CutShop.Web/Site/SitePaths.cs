using CutShop.Takeoff.Result;

namespace CutShop.Web.Site;

/// <summary>The paths of the pages for installers.</summary>
public static class SitePaths
{
    /// <summary>Where a code is typed.</summary>
    public const string Find = "/p";

    /// <summary>A piece.</summary>
    public static string Piece(PieceCode code) => $"/p/{code.Plain}";

    /// <summary>The line of a piece.</summary>
    public static string Line(PieceCode code) => $"/p/{code.Plain}/line";

    /// <summary>The posts of a piece's line that are bored where they stand.</summary>
    public static string Bores(PieceCode code) => $"/p/{code.Plain}/bores";

    /// <summary>Where a bore is ticked.</summary>
    public static string Bored(PieceCode code) => $"/p/{code.Plain}/bored";

    /// <summary>How the posts of a piece's line are set out, on a curve or a ring.</summary>
    public static string SetOut(PieceCode code) => $"/p/{code.Plain}/set-out";

    /// <summary>The form to measure a piece's spans again.</summary>
    public static string Measure(PieceCode code) => $"/p/{code.Plain}/measure";

    /// <summary>What a label leads to that no longer counts.</summary>
    public static string Dropped(PieceCode code) => $"/p/{code.Plain}/dropped";

    /// <summary>The form to report a piece.</summary>
    public static string Report(PieceCode code) => $"/p/{code.Plain}/report";

    /// <summary>A job's site pack.</summary>
    public static string Pack(PieceCode code) => $"/s/{code.Plain}";
}
