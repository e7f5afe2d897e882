namespace CutShop.CutPlan.Search;

/// <summary>A request in nanometres, before anything is bought.</summary>
/// <param name="Kinds">Kinds of pieces, by falling need.</param>
/// <param name="OnHand">Coils on hand.</param>
/// <param name="Standard">Lengths that can be bought.</param>
/// <param name="Trim">The first trim.</param>
/// <param name="Keep">The keep length.</param>
/// <param name="BegunLots">For each job that wants one lot, the lot it was begun in, or -1.</param>
/// <param name="LotsOnHand">How many lots are on hand; coils to buy are one more.</param>
internal sealed record Stock(
    IReadOnlyList<Kind> Kinds,
    IReadOnlyList<TaskCoil> OnHand,
    IReadOnlyList<long> Standard,
    long Trim,
    long Keep,
    IReadOnlyList<int> BegunLots,
    int LotsOnHand)
{
    /// <summary>How many jobs want one lot.</summary>
    public int Jobs => BegunLots.Count;

    /// <summary>What all pieces use up.</summary>
    public long Demand => Kinds.Sum(kind => kind.Need * kind.Count);

    /// <summary>The needs of all pieces.</summary>
    public List<long> Needs() => [.. Kinds.SelectMany(kind => Enumerable.Repeat(kind.Need, kind.Count))];

    /// <summary>The task with a purchase.</summary>
    public CutTask With(IEnumerable<long> purchase) => new(
        Kinds,
        [.. OnHand, .. purchase.Select(length => new TaskCoil(length - Trim, length, LotsOnHand, CoilKind.ToBuy))],
        Keep, BegunLots, LotsOnHand + 1);

    /// <summary>The task with more of the longest standard coils than could be needed.</summary>
    public CutTask Plenty()
    {
        var longest = Standard.Max();
        // Two coils together always hold more than one coil's room where the rule opens a second.
        var coils = (2 * Demand / Math.Max(1, longest - Trim)) + 1 + Jobs;
        return With(Enumerable.Repeat(longest, (int)Math.Min(coils, Kinds.Sum(kind => kind.Count))));
    }
}
