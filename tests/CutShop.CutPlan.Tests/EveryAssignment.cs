namespace CutShop.CutPlan.Tests;

/// <summary>
/// The answer to check against: every way of putting every piece on every coil, judged from the request alone by the
/// words of the aims. Nothing of the planner's is used but the aims' order.
/// </summary>
internal static class EveryAssignment
{
    /// <summary>The best aims, or null where no assignment cuts everything.</summary>
    public static PlanAims? Best(CutRequest request)
    {
        var coils = request.Coils.Select(coil => (coil.Lot, coil.Left, coil.IsOffcut, IsBought: false)).ToList();
        foreach (var length in request.StandardLengths.Distinct())
            coils.AddRange(request.Pieces.Select(_ => ("bought", length, false, true)));
        var on = new int[request.Pieces.Count];
        PlanAims? best = null;
        Place(0);
        return best;

        void Place(int piece)
        {
            if (piece == on.Length)
            {
                if (Judge() is { } aims && (best is null || aims < best))
                    best = aims;
                return;
            }
            for (on[piece] = 0; on[piece] < coils.Count; on[piece]++)
            {
                // Coils to buy are alike: the second of a length is opened after the first.
                var c = on[piece];
                if (coils[c].IsBought && c > 0 && coils[c - 1].IsBought && coils[c - 1].Left == coils[c].Left
                    && !on.AsSpan(0, piece).Contains(c) && !on.AsSpan(0, piece).Contains(c - 1))
                    continue;
                Place(piece + 1);
            }
        }

        PlanAims? Judge()
        {
            foreach (var job in request.Pieces.Zip(on).Where(pair => pair.First.OneLotJob is not null).GroupBy(pair => pair.First.OneLotJob))
                if (job.Select(pair => coils[pair.Second].Lot).Distinct().Count() > 1)
                    return null;
            Length bought = default, scrap = default, longest = default;
            int full = 0, rack = 0;
            for (var c = 0; c < coils.Count; c++)
            {
                var (_, left, isOffcut, isBought) = coils[c];
                var pieces = request.Pieces.Where((_, piece) => on[piece] == c).ToList();
                if (pieces.Count > 0)
                {
                    if (isBought)
                        bought += left;
                    if (!isOffcut)
                        full++;
                    left -= request.Allowances.FirstTrim;
                    foreach (var piece in pieces)
                        left = left - piece.Cut - request.Allowances.Kerf - request.Allowances.Squaring;
                    if (left.IsNegative)
                        return null;
                    if (left < request.Allowances.Keep)
                    {
                        scrap += left;
                        continue;
                    }
                }
                else if (!isOffcut)
                {
                    continue;
                }
                if (left.IsPositive)
                {
                    rack++;
                    longest = Length.Max(longest, left);
                }
            }
            return new(bought, scrap, full, rack, longest);
        }
    }
}
