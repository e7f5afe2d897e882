using CsCheck;

namespace CutShop.CutPlan.Tests;

public sealed class FewestCoilsTests
{
    [Fact]
    public void Few_pieces_take_the_fewest_coils_of_all_assignments()
    {
        Gen.Select(Gen.Long[1, 20].Array[1, 9], Gen.Long[20, 40]).Sample(
            (pieces, room) =>
            {
                var plan = FewestCoils.Of(pieces, room, withSolver: true, new(TimeSpan.FromSeconds(20), default));
                Assert.Equal(Fewest(pieces, room), plan.Coils.Count);
                Assert.True(plan.IsProved);
            },
            iter: 400, seed: "0000KOIGhvTm", threads: 1);
    }

    [Fact]
    public void The_linear_programmes_bound_is_never_over_the_fewest_coils()
    {
        Gen.Select(Gen.Long[3, 20].Array[4, 9], Gen.Long[20, 30]).Sample(
            (pieces, room) =>
            {
                var mix = PieceMix.Of(pieces, room);
                using var prices = new PatternPrices(mix, QuickFits.FirstFit(mix));
                Assert.True(prices.Solve(new(TimeSpan.FromSeconds(20), default)));
                Assert.InRange(prices.Bound, 1, Fewest(pieces, room));
            },
            iter: 200, seed: "0000KOIGhvTm", threads: 1);
    }

    [Fact]
    public void The_list_of_patterns_holds_every_pattern_where_no_coil_is_saved()
    {
        // Sizes 5, 3, 2 in room 7: 5; 5 2; 3; 3 2; 2. Prices of nothing rule nothing out, the empty pattern with the rest.
        var mix = PieceMix.Of([5, 3, 2], 7);
        var list = PatternList.For(mix, [0, 0, 0], richest: 1, coils: 3, limit: 100, new(TimeSpan.FromSeconds(20), default));
        Assert.Equal(6, list?.Count);
    }

    [Fact]
    public void The_richest_pattern_is_the_same_with_a_table_of_bounds_and_without()
    {
        Gen.Select(Gen.Long[3, 60].Array[3, 12], Gen.Long[60, 120], Gen.Long[1, 50].Array[12]).Sample(
            (pieces, room, worths) =>
            {
                var mix = PieceMix.Of(pieces, room);
                var search = new PatternSearch(mix);
                search.Richest(worths[..mix.Kinds], mix.Counts, mix.Room, nodes: 1_000_000);
                var plain = search.Worth;
                search.Richest(worths[..mix.Kinds], mix.Counts, mix.Room, nodes: 1_000_000, withTable: true);
                Assert.Equal(plain, search.Worth);
                Assert.True(search.IsProved);
            },
            iter: 300, seed: "0000KOIGhvTm", threads: 1);
    }

    private static int Fewest(long[] pieces, long room)
    {
        var best = pieces.Length;
        var left = new List<long>();
        Place(0);
        return best;

        void Place(int piece)
        {
            if (left.Count >= best)
                return;
            if (piece == pieces.Length)
            {
                best = left.Count;
                return;
            }
            for (var c = 0; c < left.Count; c++)
            {
                if (left[c] < pieces[piece])
                    continue;
                left[c] -= pieces[piece];
                Place(piece + 1);
                left[c] += pieces[piece];
            }
            left.Add(room - pieces[piece]);
            Place(piece + 1);
            left.RemoveAt(left.Count - 1);
        }
    }
}
