using CsCheck;

namespace CutShop.CutPlan.Tests;

/// <summary>Requests drawn for the property tests: short whole lengths, so that coils often come out even.</summary>
internal static class Requests
{
    private static readonly Gen<Length> Eighths = Gen.Int[0, 4].Select(eighths => Length.FromSixtyFourths(8 * eighths));

    private static readonly Gen<CutAllowances> Allowances =
        from kerf in Gen.OneOf(Gen.Const(Length.Zero), Eighths)
        from squaring in Gen.OneOf(Gen.Const(Length.Zero), Eighths)
        from trim in Gen.OneOf(Gen.Const(Length.Zero), Eighths)
        from keep in Gen.Int[0, 12]
        select new CutAllowances(kerf, squaring, trim, Length.FromInches(keep));

    private static readonly Gen<WaitingPiece> Piece =
        from inches in Gen.Int[2, 14]
        from job in Gen.Int[0, 5]
        select new WaitingPiece("", Length.FromInches(inches), job switch { 0 => "J", 1 => "K", _ => null });

    private static readonly Gen<Coil> Coil =
        from inches in Gen.Int[3, 30]
        from eighths in Gen.Int[0, 3]
        from lot in Gen.Int[0, 1]
        from isOffcut in Gen.Bool
        select new Coil("", $"lot {lot}", Length.FromInches(inches) + Length.FromSixtyFourths(8 * eighths), isOffcut);

    /// <summary>Up to five pieces and four coils, with nothing, one or two lengths that can be bought.</summary>
    public static Gen<CutRequest> Small { get; } = Of(Gen.Int[1, 5], Gen.Int[0, 4]);

    /// <summary>Up to thirty pieces and ten coils.</summary>
    public static Gen<CutRequest> Medium { get; } = Of(Gen.Int[6, 30], Gen.Int[2, 10]);

    private static Gen<CutRequest> Of(Gen<int> pieces, Gen<int> coils) =>
        from allowances in Allowances
        from some in pieces.SelectMany(count => Piece.Array[count])
        from onHand in coils.SelectMany(count => Coil.Array[count])
        from standard in Gen.Int[20, 40].Array[0, 2]
        select new CutRequest(
            [.. some.Select((piece, n) => piece with { Code = $"P{n + 1}" })],
            [.. onHand.Select((coil, n) => coil with { Id = $"C{n + 1}" })],
            [.. standard.Select(inches => Length.FromInches(inches))],
            allowances);
}
