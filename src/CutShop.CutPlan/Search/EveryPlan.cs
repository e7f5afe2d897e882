namespace CutShop.CutPlan.Search;

/// <summary>
/// Tries every plan for few pieces: each piece, longest first, on each coil, coils alike told apart only by what is on
/// them. Branches that cannot beat the best are cut off. Complete unless it runs out of steps.
/// </summary>
internal sealed class EveryPlan
{
    private const int MostSteps = 400_000;

    private readonly CutTask _task;
    private readonly SearchClock _clock;
    private readonly long[] _room;
    private readonly int[][] _cuts;
    private readonly int[] _lots;
    private readonly int[] _jobPieces;
    private int _steps;

    /// <summary>A search that starts from the best plan known, if any.</summary>
    public EveryPlan(CutTask task, int[][]? best, SearchClock clock)
    {
        (_task, _clock, Best) = (task, clock, best);
        _room = [.. task.Coils.Select(coil => coil.Room)];
        _cuts = task.NoCuts();
        _lots = new int[task.Jobs];
        _jobPieces = new int[task.Jobs];
        BestAims = best is null ? null : task.AimsOf(best);
        IsComplete = Place(0, 0, 0);
    }

    /// <summary>The best plan, or null where there is none.</summary>
    public int[][]? Best { get; private set; }

    /// <summary>True where every plan was tried or ruled out.</summary>
    public bool IsComplete { get; }

    private PlanAims? BestAims { get; set; }

    private bool MayTake(int job, int lot) => _task.MayHave(job, lot) && (_jobPieces[job] == 0 || _lots[job] == lot);

    private bool Place(int kind, int piece, int firstCoil)
    {
        if (++_steps > MostSteps || ((_steps & 1023) == 0 && _clock.IsUp))
            return false;
        if (kind == _task.Kinds.Length)
        {
            Offer();
            return true;
        }
        if (CannotBeat(kind))
            return true;
        var (need, job, count) = _task.Kinds[kind];
        for (var c = firstCoil; c < _room.Length; c++)
        {
            if (_room[c] < need || HasTwinBefore(c, firstCoil) || (job >= 0 && !MayTake(job, _task.Coils[c].Lot)))
                continue;
            _room[c] -= need;
            _cuts[c][kind]++;
            if (job >= 0)
                (_lots[job], _jobPieces[job]) = (_task.Coils[c].Lot, _jobPieces[job] + 1);
            var complete = piece + 1 < count ? Place(kind, piece + 1, c) : Place(kind + 1, 0, 0);
            if (job >= 0)
                _jobPieces[job]--;
            _cuts[c][kind]--;
            _room[c] += need;
            if (!complete)
                return false;
        }
        return true;
    }

    /// <summary>True where an earlier coil that may be chosen is the same in every way, so that choosing this one repeats a plan.</summary>
    private bool HasTwinBefore(int coil, int firstCoil)
    {
        for (var c = firstCoil; c < coil; c++)
            if (_task.Coils[c] == _task.Coils[coil] && _room[c] == _room[coil] && _cuts[c].AsSpan().SequenceEqual(_cuts[coil]))
                return true;
        return false;
    }

    private bool CannotBeat(int kind)
    {
        if (BestAims is not { } best)
            return false;
        var shortest = _task.Kinds[^1].Need;
        if (kind == _task.Kinds.Length)
            return false;
        long bought = 0, scrap = 0;
        var full = 0;
        for (var c = 0; c < _room.Length; c++)
        {
            var coil = _task.Coils[c];
            if (_room[c] == coil.Room)
                continue;
            bought += coil.Sort == CoilKind.ToBuy ? coil.Left : 0;
            full += coil.IsFull ? 1 : 0;
            if (_room[c] < shortest && _task.IsScrap(_room[c]))
                scrap += _room[c];
        }
        return (bought, scrap, full).CompareTo((best.Bought.Nanometres, best.Scrap.Nanometres, best.FullCoils)) > 0;
    }

    private void Offer()
    {
        var aims = _task.AimsOf(_cuts);
        if (BestAims is { } best && aims >= best)
            return;
        BestAims = aims;
        Best = [.. _cuts.Select(counts => (int[])counts.Clone())];
    }
}
