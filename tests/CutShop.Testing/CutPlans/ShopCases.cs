namespace CutShop.Testing.CutPlans;

/// <summary>Cases as a shop has them, drawn from a seed: the same seed, the same case.</summary>
public static class ShopCases
{
    private const int Quarters = 4;

    /// <summary>Pieces of 40 to 400 in, full coils of 7,200 in and offcuts of 40 to 1,500 in, all to a quarter inch.</summary>
    public static CutRequest Drawn(int seed, int pieces, int fullCoils, int offcuts)
    {
        var chance = new Random(seed);
        return new(
            [.. Enumerable.Range(1, pieces).Select(n => new WaitingPiece($"P{n}", QuarterInches(chance, 40, 400)))],
            [
                .. Enumerable.Range(1, fullCoils).Select(n => new Coil($"C{n}", "lot 1", Length.FromInches(7200), IsOffcut: false)),
                .. Enumerable.Range(1, offcuts).Select(n => new Coil($"R{n}", "lot 1", QuarterInches(chance, 40, 1500), IsOffcut: true)),
            ],
            [],
            CutAllowances.Default);
    }

    /// <summary>Sixty pieces and a rack of lengths that hold 2 % more rope than they ask for.</summary>
    public static CutRequest Tight(int seed)
    {
        var roomy = Drawn(seed, pieces: 60, fullCoils: 0, offcuts: 0);
        var need = roomy.Pieces.Aggregate(Length.Zero, (sum, piece) => sum + piece.Cut + roomy.Allowances.PerPiece);
        var wanted = Length.FromNanometres(need.Nanometres / 100 * 102);
        var chance = new Random(seed + 1000);
        var coils = new List<Coil>();
        var held = Length.Zero;
        while (held < wanted)
        {
            // The last length makes the rack come out at what is wanted.
            var rest = (wanted - held + roomy.Allowances.FirstTrim).RoundUpTo(Length.FromSixtyFourths(64 / Quarters));
            var left = QuarterInches(chance, 40, 1500);
            if (rest < Length.FromInches(1600))
                left = rest;
            coils.Add(new($"R{coils.Count + 1}", "lot 1", left, IsOffcut: true));
            held += left - roomy.Allowances.FirstTrim;
        }
        return roomy with { Coils = coils };
    }

    /// <summary>Sixty pieces of six jobs, two of which want one lot, and coils of three lots.</summary>
    public static CutRequest OneLot(int seed)
    {
        var plain = Drawn(seed, pieces: 60, fullCoils: 3, offcuts: 12);
        return plain with
        {
            Pieces = [.. plain.Pieces.Select((piece, n) => piece with { OneLotJob = (n % 6) switch { 0 => "A", 1 => "B", _ => null } })],
            Coils = [.. plain.Coils.Select((coil, n) => coil with { Lot = $"lot {n % 3}" })],
        };
    }

    /// <summary>Sixty pieces, a rack of twelve offcuts and no full coil; 3,600 and 7,200 in can be bought.</summary>
    public static CutRequest Shortage(int seed) =>
        Drawn(seed, pieces: 60, fullCoils: 0, offcuts: 12) with { StandardLengths = [Length.FromInches(3600), Length.FromInches(7200)] };

    private static Length QuarterInches(Random chance, int from, int to) =>
        Length.FromSixtyFourths(chance.Next(from * Quarters, (to * Quarters) + 1) * (64 / Quarters));
}
