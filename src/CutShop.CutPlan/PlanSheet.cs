using CutShop.CutPlan.Search;
using CutShop.Takeoff.Lengths;

namespace CutShop.CutPlan;

/// <summary>Turns a request into kinds and coils for the search, and what the search found back into codes and tape marks.</summary>
internal sealed class PlanSheet
{
    private readonly CutRequest _request;
    private readonly List<WaitingPiece> _due;
    private readonly List<Queue<WaitingPiece>> _byKind = [];
    private readonly List<Coil> _coils;

    /// <summary>A sheet for the pieces of a request that are due.</summary>
    public PlanSheet(CutRequest request, List<WaitingPiece> due)
    {
        (_request, _due) = (request, due);
        var allowances = request.Allowances;
        _coils = [.. request.Coils.Where(coil => coil.Left > allowances.FirstTrim)
            .OrderBy(coil => coil.IsOffcut ? 0 : 1).ThenBy(coil => coil.Left).ThenBy(coil => coil.Id, StringComparer.Ordinal)];
        var jobs = due.Select(piece => piece.OneLotJob).OfType<string>().Distinct().Order(StringComparer.Ordinal).ToList();
        var lots = _coils.Select(coil => coil.Lot).Distinct().Order(StringComparer.Ordinal).ToList();
        var kinds = new List<Kind>();
        foreach (var alike in due
            .GroupBy(piece => (Need: (piece.Cut + allowances.PerPiece).Nanometres, Job: piece.OneLotJob is null ? -1 : jobs.IndexOf(piece.OneLotJob)))
            .OrderByDescending(alike => alike.Key.Need).ThenBy(alike => alike.Key.Job))
        {
            kinds.Add(new(alike.Key.Need, alike.Key.Job, alike.Count()));
            _byKind.Add(new(alike.OrderBy(piece => piece.Due).ThenBy(piece => piece.Code, StringComparer.Ordinal)));
        }
        Stock = new(
            kinds,
            [.. _coils.Select(coil => new TaskCoil(
                (coil.Left - allowances.FirstTrim).Nanometres, coil.Left.Nanometres, lots.IndexOf(coil.Lot),
                coil.IsOffcut ? CoilKind.Offcut : CoilKind.Full))],
            [.. request.StandardLengths.Where(length => length > allowances.FirstTrim).Select(length => length.Nanometres).Distinct()],
            allowances.FirstTrim.Nanometres,
            allowances.Keep.Nanometres,
            [.. jobs.Select(job => due.First(piece => piece.OneLotJob == job).BegunLot is { } begun ? lots.IndexOf(begun) : -1)],
            lots.Count);
    }

    /// <summary>The request as the search sees it. Coils too short for a first trim are not in it.</summary>
    public Stock Stock { get; }

    private IReadOnlyList<WaitingPiece> NotDue => [.. _request.Pieces.Except(_due)];

    /// <summary>The plan where nothing is due.</summary>
    public RopePlan Nothing(bool solverAbsent, TimeSpan time)
    {
        var aims = WithStubs(Stock.With([]).AimsOf(Stock.With([]).NoCuts()));
        return new([], NotDue, aims, 0, PlanProof.Of(aims, aims), PlanMethod.OwnSearch, solverAbsent, time);
    }

    /// <summary>The plan with its codes and tape marks.</summary>
    public RopePlan Write(FoundPlan found, bool solverAbsent, TimeSpan time)
    {
        var coils = new List<CoilCuts>();
        var bought = 0;
        for (var c = 0; c < found.Cuts.Length; c++)
        {
            if (found.Task.Used(found.Cuts[c]) == 0)
                continue;
            var coil = c < _coils.Count ? _coils[c] : new($"buy {++bought}", "", Length.FromNanometres(found.Task.Coils[c].Left), false);
            coils.Add(Write(coil, found.Task.Coils[c].Sort, found.Cuts[c]));
        }
        var (aims, bound) = (WithStubs(found.Aims), WithStubs(found.Bound));
        return new(
            coils, NotDue, aims, coils.Count(coil => coil is { Kind: CoilKind.Offcut, IsKept: false }),
            PlanProof.Of(aims, bound), found.Method, solverAbsent, time);
    }

    private CoilCuts Write(Coil coil, CoilKind kind, int[] counts)
    {
        var pieces = new List<CutPiece>();
        var mark = _request.Allowances.FirstTrim;
        for (var k = 0; k < counts.Length; k++)
        {
            for (var piece = 0; piece < counts[k]; piece++)
            {
                var cut = _byKind[k].Dequeue();
                pieces.Add(new(cut.Code, cut.Cut, mark, mark + cut.Cut));
                mark += cut.Cut + _request.Allowances.PerPiece;
            }
        }
        var left = coil.Left - mark;
        return new(coil.Id, coil.Lot, kind, coil.Left, pieces, left, left.IsPositive && left >= _request.Allowances.Keep);
    }

    /// <summary>Offcuts too short for a first trim lie on the rack whatever is planned.</summary>
    private PlanAims WithStubs(PlanAims aims)
    {
        var stubs = _request.Coils.Where(coil => coil.IsOffcut && coil.Left <= _request.Allowances.FirstTrim).ToList();
        return stubs.Count == 0 ? aims : aims with
        {
            Rack = aims.Rack + stubs.Count,
            LongestOffcut = Length.Max(aims.LongestOffcut, stubs.Max(coil => coil.Left)),
        };
    }
}
