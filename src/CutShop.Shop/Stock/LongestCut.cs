using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Stock;

/// <summary>The longest piece that the shop can cut of a rope.</summary>
/// <param name="Length">The longest cut, in whole inches.</param>
/// <param name="Coil">The coil on hand that gives it, or null where only one that is bought does.</param>
public sealed record LongestPiece(Length Length, string? Coil);

/// <summary>What to offer as a job's longest cut, so that longer runs are broken inside posts.</summary>
public sealed class LongestCut(ShopDatabase database)
{
    /// <summary>
    /// The longest piece that the longest coil on hand gives, or one of the lengths in which the shop buys coils, whichever is longer: without the
    /// first trim of a full coil and what a cut takes. Null where the shop has neither.
    /// </summary>
    /// <param name="rope">The rope.</param>
    public LongestPiece? Of(RopeKind rope) => database.Read(session => Of(session, rope));

    internal static LongestPiece? Of(ShopSession session, RopeKind rope)
    {
        var settings = CuttingSettingsShelf.ReadCutting(session);
        var (trim, cut) = (settings.Allowances.FirstTrim, settings.Allowances.PerPiece);
        var onHand = CoilShelf.OfKind(session, rope)
            .Select(coil => new LongestPiece(Whole(coil.Left - (coil.IsUntouched ? trim : Length.Zero) - cut), coil.Mark));
        var bought = settings.StandardLengths.Select(length => new LongestPiece(Whole(length - trim - cut), Coil: null));
        return onHand.Concat(bought).Where(piece => piece.Length.IsPositive).OrderByDescending(piece => piece.Length).FirstOrDefault();
    }

    private static Length Whole(Length length) => length.IsPositive ? length.RoundDownTo(Length.Inch) : Length.Zero;
}
