using CutShop.Takeoff.Lengths;
using Google.OrTools.Sat;

namespace CutShop.CutPlan.Search;

/// <summary>A task as the constraint solver sees it: how many of each kind on each coil, and what is left there.</summary>
internal sealed class SolverModel
{
    private readonly CutTask _task;
    private readonly long _unit;
    private readonly IntVar?[][] _cut;
    private readonly BoolVar[] _opened;
    private readonly BoolVar[] _kept;
    private readonly Dictionary<PlanAim, LinearExpr> _aims = [];

    /// <summary>Builds the model; lengths are in the largest unit in which all are whole.</summary>
    public SolverModel(CutTask task)
    {
        _task = task;
        _unit = WholeUnit.Of(task.Kinds.Select(kind => kind.Need).Concat(task.Coils.SelectMany(coil => (long[])[coil.Room, coil.Left])));
        _cut = [.. task.Coils.Select(CutVariables)];
        _opened = Each("opened");
        _kept = Each("kept");
        EveryPieceIsCut();
        LotsAreKept();
        var scrap = new List<LinearExpr>();
        var carried = new List<ILiteral>();
        var longest = Model.NewIntVar(0, Units(task.Coils.Max(coil => coil.Left)), "longest");
        for (var c = 0; c < task.Coils.Length; c++)
            Coil(c, scrap, carried, longest);
        Model.AddExactlyOne(carried.Append(None(longest)));
        var all = Enumerable.Range(0, task.Coils.Length).ToArray();
        var offcuts = all.Where(c => !task.Coils[c].IsFull).ToArray();
        _aims[PlanAim.Bought] = LinearExpr.WeightedSum(
            _opened, [.. task.Coils.Select(coil => coil.Sort == CoilKind.ToBuy ? Units(coil.Left) : 0)]);
        _aims[PlanAim.Scrap] = LinearExpr.Sum(scrap);
        _aims[PlanAim.FullCoils] = LinearExpr.Sum(all.Where(c => task.Coils[c].IsFull).Select(c => _opened[c]));
        _aims[PlanAim.Rack] = LinearExpr.Sum(_kept) + offcuts.Length - LinearExpr.Sum(offcuts.Select(c => _opened[c]));
        _aims[PlanAim.LongestOffcut] = -1 * longest;
    }

    /// <summary>The model.</summary>
    public CpModel Model { get; } = new();

    /// <summary>Seeks the best by one aim, from a plan as hint.</summary>
    public void Seek(PlanAim aim, int[][]? hint)
    {
        Model.Minimize(_aims[aim]);
        Model.ClearHints();
        if (hint is null)
            return;
        for (var c = 0; c < _cut.Length; c++)
        {
            var used = _task.Used(hint[c]);
            Model.AddHint(_opened[c], used > 0);
            Model.AddHint(_kept[c], used > 0 && _task.IsKept(_task.Coils[c].Room - used));
            for (var k = 0; k < _cut[c].Length; k++)
                if (_cut[c][k] is { } cut)
                    Model.AddHint(cut, hint[c][k]);
        }
    }

    /// <summary>From now on no worse than this by one aim.</summary>
    public void Hold(PlanAim aim, PlanAims plan) => Model.Add(_aims[aim] <= ValueOf(aim, plan));

    /// <summary>The plan's aims with one replaced by the bound that the solver proved on it.</summary>
    public PlanAims AtBound(PlanAim aim, PlanAims plan, double bound)
    {
        // A bound on whole figures is whole; the margin is for its way through floating point.
        var whole = (long)Math.Ceiling(bound - 1e-4);
        return aim switch
        {
            PlanAim.Bought => plan with { Bought = Length.FromNanometres(Math.Max(0, whole * _unit)) },
            PlanAim.Scrap => plan with { Scrap = Length.FromNanometres(Math.Max(0, whole * _unit)) },
            PlanAim.FullCoils => plan with { FullCoils = (int)Math.Max(0, whole) },
            PlanAim.Rack => plan with { Rack = (int)Math.Max(0, whole) },
            _ => plan with { LongestOffcut = Length.FromNanometres(-whole * _unit) },
        };
    }

    /// <summary>Counts by coil and kind in a solution.</summary>
    public int[][] Cuts(Func<IntVar, long> value) =>
        [.. _cut.Select(coil => coil.Select(cut => cut is null ? 0 : (int)value(cut)).ToArray())];

    private long ValueOf(PlanAim aim, PlanAims plan) => aim switch
    {
        PlanAim.Bought => Units(plan.Bought.Nanometres),
        PlanAim.Scrap => Units(plan.Scrap.Nanometres),
        PlanAim.FullCoils => plan.FullCoils,
        PlanAim.Rack => plan.Rack,
        _ => -Units(plan.LongestOffcut.Nanometres),
    };

    private long Units(long nanometres) => nanometres / _unit;

    private BoolVar[] Each(string name) => [.. _task.Coils.Select((_, c) => Model.NewBoolVar($"{name}{c}"))];

    private IntVar?[] CutVariables(TaskCoil coil, int c)
    {
        var cut = new IntVar?[_task.Kinds.Length];
        for (var k = 0; k < cut.Length; k++)
        {
            var most = Math.Min(_task.Kinds[k].Count, coil.Room / _task.Kinds[k].Need);
            if (most > 0)
                cut[k] = Model.NewIntVar(0, most, $"cut{c}_{k}");
        }
        return cut;
    }

    private void EveryPieceIsCut()
    {
        for (var k = 0; k < _task.Kinds.Length; k++)
            Model.Add(LinearExpr.Sum(_cut.Select(coil => coil[k]).OfType<IntVar>()) == _task.Kinds[k].Count);
    }

    private void LotsAreKept()
    {
        for (var job = 0; job < _task.Jobs; job++)
        {
            var lots = Enumerable.Range(0, _task.Lots).Select(lot => Model.NewBoolVar($"lot{job}_{lot}")).ToArray();
            Model.AddExactlyOne(lots);
            for (var lot = 0; lot < lots.Length; lot++)
                if (!_task.MayHave(job, lot))
                    Model.Add(lots[lot] == 0);
            for (var c = 0; c < _cut.Length; c++)
                for (var k = 0; k < _task.Kinds.Length; k++)
                    if (_task.Kinds[k].Job == job && _cut[c][k] is { } cut)
                        Model.Add(cut == 0).OnlyEnforceIf(lots[_task.Coils[c].Lot].Not());
        }
    }

    private void Coil(int c, List<LinearExpr> scrap, List<ILiteral> carried, IntVar longest)
    {
        var (coil, room, keep) = (_task.Coils[c], Units(_task.Coils[c].Room), (_task.Keep + _unit - 1) / _unit);
        var used = LinearExpr.NewBuilder();
        for (var k = 0; k < _task.Kinds.Length; k++)
            if (_cut[c][k] is { } cut)
                used.AddTerm(cut, Units(_task.Kinds[k].Need));
        var left = Model.NewIntVar(0, room, $"left{c}");
        Model.Add(left + used == room);
        var (exact, tooShort) = (Model.NewBoolVar($"exact{c}"), Model.NewBoolVar($"short{c}"));
        Model.AddExactlyOne(new ILiteral[] { exact, tooShort, _kept[c], _opened[c].Not() });
        Model.Add(left == room).OnlyEnforceIf(_opened[c].Not());
        Model.Add(left <= room - 1).OnlyEnforceIf(_opened[c]);
        Model.Add(left == 0).OnlyEnforceIf(exact);
        Model.Add(left >= Math.Max(1, keep)).OnlyEnforceIf(_kept[c]);
        var lost = Model.NewIntVar(0, Math.Max(0, Math.Min(keep - 1, room)), $"lost{c}");
        Model.Add(lost == left).OnlyEnforceIf(tooShort);
        scrap.Add(lost);
        var carries = Model.NewBoolVar($"carries{c}");
        Model.AddImplication(carries, _kept[c]);
        Model.Add(longest <= left).OnlyEnforceIf(carries);
        carried.Add(carries);
        if (coil.IsFull)
            return;
        var untouched = Model.NewBoolVar($"untouched{c}");
        Model.AddImplication(untouched, _opened[c].Not());
        Model.Add(longest <= Units(coil.Left)).OnlyEnforceIf(untouched);
        carried.Add(untouched);
    }

    private BoolVar None(IntVar longest)
    {
        var none = Model.NewBoolVar("none");
        Model.Add(longest == 0).OnlyEnforceIf(none);
        return none;
    }
}
