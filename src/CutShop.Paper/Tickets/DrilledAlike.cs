using CutShop.Paper.Drawings;
using CutShop.Paper.Words;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Tickets;

/// <summary>Drillings of a post that are set up alike: one bit, one depth, one rake, one skew.</summary>
/// <param name="Drillings">The drillings, at least one.</param>
internal sealed record DrilledAlike(IReadOnlyList<Drilling> Drillings)
{
    /// <summary>The first of them.</summary>
    public Drilling First => Drillings[0];

    /// <summary>Their numbers, such as <c>1–3, 6</c>.</summary>
    public string Numbers => string.Join(", ", Stretches().Select(stretch => stretch.From == stretch.To
        ? Figures.Count(stretch.From)
        : $"{Figures.Count(stretch.From)}–{Figures.Count(stretch.To)}"));

    /// <summary>The drillings of a post as they are set up, in their order.</summary>
    public static IEnumerable<DrilledAlike> Of(PostWork work) => work.Drillings()
        .GroupBy(d => (d.Bore.Bit, d.Bore.BitChoice, d.Bore.Wall, d.Bore.Kind, d.Bore.Rope, d.Operation.Depth, d.Bore.RakeDegrees, Way: RakeText.WayOf(d.Bore, work), Skew: PostWays.SkewOf(work, d.Operation.Face, d.Bore)))
        .Select(alike => new DrilledAlike([.. alike]));

    private IEnumerable<(int From, int To)> Stretches()
    {
        var from = First.Number;
        for (var i = 0; i < Drillings.Count; i++)
        {
            if (i + 1 < Drillings.Count && Drillings[i + 1].Number == Drillings[i].Number + 1)
                continue;
            yield return (from, Drillings[i].Number);
            if (i + 1 < Drillings.Count)
                from = Drillings[i + 1].Number;
        }
    }
}
