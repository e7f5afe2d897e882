using CutShop.Shop.Site;
using CutShop.Shop.Store;
using CutShop.Takeoff.Result;

using static CutShop.Web.Site.SiteWords;

namespace CutShop.Web.Site;

/// <summary>The button that marks a piece as installed, or takes the mark off.</summary>
/// <param name="Code">The piece's code.</param>
/// <param name="State">Whether it is installed.</param>
/// <param name="OnLine">True on the line's page, to which the tap leads back.</param>
/// <param name="Question">What is asked before the piece is marked, in the reader's language; null where it can be marked at once.</param>
public sealed record Mark(PieceCode Code, InstalledState State, bool OnLine, string? Question)
{
    /// <summary>The button of a piece.</summary>
    public static Mark Of(SitePiece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return new(piece.Code, piece.State, OnLine: false, Doubt(piece.IsCut, piece.Reported));
    }

    /// <summary>The button of a piece on its line.</summary>
    public static Mark Of(LinePiece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return new(piece.Code, piece.State, OnLine: true, Doubt(piece.IsCut, piece.Reported));
    }

    private static string? Doubt(bool isCut, IReadOnlyList<SiteReportKind> reported) =>
        !isCut ? T["NotCutQuestion"] : reported.Contains(SiteReportKind.TooShort) ? T["ShortQuestion"] : null;
}
