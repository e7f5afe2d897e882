using CutShop.Takeoff.Lengths;

namespace CutShop.CutPlan.Search;

/// <summary>Pieces that are alike to the search: as long, and bound to the same job's lot.</summary>
/// <param name="Need">Rope that each uses up, its cut with it, in nanometres.</param>
/// <param name="Job">Index of the job that wants one lot, or -1.</param>
/// <param name="Count">How many.</param>
internal readonly record struct Kind(long Need, int Job, int Count);

/// <summary>A coil as the search sees it.</summary>
/// <param name="Room">What its pieces may use up: its rope without the first trim, in nanometres.</param>
/// <param name="Left">All its rope, in nanometres.</param>
/// <param name="Lot">Index of its lot; coils to buy share one lot of their own.</param>
/// <param name="Sort">Offcut, full or to buy.</param>
internal readonly record struct TaskCoil(long Room, long Left, int Lot, CoilKind Sort)
{
    /// <summary>True where opening it opens a full coil.</summary>
    public bool IsFull => Sort != CoilKind.Offcut;
}

/// <summary>A request in whole nanometres: kinds of pieces, longest first, and the coils with the purchase to be tried.</summary>
internal sealed class CutTask
{
    private readonly IReadOnlyList<int> _begunLots;

    /// <summary>A task.</summary>
    public CutTask(IReadOnlyList<Kind> kinds, IReadOnlyList<TaskCoil> coils, long keep, IReadOnlyList<int> begunLots, int lots)
    {
        _begunLots = begunLots;
        Kinds = [.. kinds];
        Coils = [.. coils];
        Keep = keep;
        Lots = lots;
        Demand = kinds.Sum(kind => kind.Need * kind.Count);
        Grid = WholeUnit.Of(kinds.Select(kind => kind.Need));
        Offcuts = coils.Count(coil => !coil.IsFull);
    }

    /// <summary>Kinds of pieces, by falling need.</summary>
    public Kind[] Kinds { get; }

    /// <summary>Coils on hand, then coils to buy.</summary>
    public TaskCoil[] Coils { get; }

    /// <summary>The keep length.</summary>
    public long Keep { get; }

    /// <summary>How many jobs want one lot.</summary>
    public int Jobs => _begunLots.Count;

    /// <summary>True where a job that wants one lot may have this one: any before it is begun, then the one it was begun in.</summary>
    public bool MayHave(int job, int lot) => _begunLots[job] < 0 || _begunLots[job] == lot;

    /// <summary>How many lots there are, the lot of the coils to buy with them.</summary>
    public int Lots { get; }

    /// <summary>What all pieces use up.</summary>
    public long Demand { get; }

    /// <summary>The largest unit in which every need is whole.</summary>
    public long Grid { get; }

    /// <summary>Lengths on the rack now.</summary>
    public int Offcuts { get; }

    /// <summary>True where what is left of a coil's room is scrap.</summary>
    public bool IsScrap(long left) => left > 0 && left < Keep;

    /// <summary>True where what is left of a coil's room goes to the rack.</summary>
    public bool IsKept(long left) => left > 0 && left >= Keep;

    /// <summary>The aims met by cutting <paramref name="cuts"/>, counts by coil and kind.</summary>
    public PlanAims AimsOf(int[][] cuts)
    {
        long bought = 0, scrap = 0, longest = 0;
        int full = 0, rack = 0;
        for (var c = 0; c < Coils.Length; c++)
        {
            var (coil, used) = (Coils[c], Used(cuts[c]));
            if (used == 0)
            {
                if (!coil.IsFull)
                    (rack, longest) = (rack + 1, Math.Max(longest, coil.Left));
                continue;
            }
            var left = coil.Room - used;
            bought += coil.Sort == CoilKind.ToBuy ? coil.Left : 0;
            full += coil.IsFull ? 1 : 0;
            scrap += IsScrap(left) ? left : 0;
            if (IsKept(left))
                (rack, longest) = (rack + 1, Math.Max(longest, left));
        }
        return new(Length.FromNanometres(bought), Length.FromNanometres(scrap), full, rack, Length.FromNanometres(longest));
    }

    /// <summary>What pieces use up.</summary>
    public long Used(int[] counts)
    {
        var used = 0L;
        for (var k = 0; k < counts.Length; k++)
            if (counts[k] > 0)
                used += counts[k] * Kinds[k].Need;
        return used;
    }

    /// <summary>An empty plan.</summary>
    public int[][] NoCuts() => [.. Coils.Select(_ => new int[Kinds.Length])];

    /// <summary>How many of each kind there are.</summary>
    public int[] AllPieces() => [.. Kinds.Select(kind => kind.Count)];
}
