using CutShop.Takeoff.Lengths;

namespace CutShop.CutPlan;

/// <summary>Looks a request over before it is planned and names everything that is wrong with it.</summary>
internal static class RequestCheck
{
    /// <summary>All problems, or none.</summary>
    public static List<PlanProblem> Of(CutRequest request, PlanBudget budget)
    {
        var problems = new List<PlanProblem>();
        Allowances(request.Allowances, problems);
        Names("pieces", request.Pieces.Select(piece => piece.Code), problems);
        Names("coils", request.Coils.Select(coil => coil.Id), problems);
        problems.AddRange(request.Pieces.Where(piece => !piece.Cut.IsPositive)
            .Select(piece => PlanProblems.NotPositive($"pieces/{piece.Code}", piece.Cut)));
        problems.AddRange(request.Coils.Where(coil => !coil.Left.IsPositive)
            .Select(coil => PlanProblems.NotPositive($"coils/{coil.Id}", coil.Left)));
        problems.AddRange(request.StandardLengths.Where(length => !length.IsPositive)
            .Select(length => PlanProblems.NotPositive("standard lengths", length)));
        if (budget.Time <= TimeSpan.Zero)
            problems.Add(PlanProblems.NoTime(budget.Time));
        if (problems.Count == 0)
            Sizes(request, problems);
        return problems;
    }

    private static void Allowances(CutAllowances allowances, List<PlanProblem> problems)
    {
        foreach (var (path, value) in new[]
        {
            ("allowances/kerf", allowances.Kerf),
            ("allowances/squaring", allowances.Squaring),
            ("allowances/first trim", allowances.FirstTrim),
            ("allowances/keep", allowances.Keep),
        })
        {
            if (value.IsNegative)
                problems.Add(PlanProblems.Negative(path, value));
            else if (value >= PlanProblems.Most)
                problems.Add(PlanProblems.TooMuch(path));
        }
    }

    private static void Names(string path, IEnumerable<string> names, List<PlanProblem> problems)
    {
        var seen = new HashSet<string>();
        foreach (var name in names)
        {
            if (string.IsNullOrWhiteSpace(name))
                problems.Add(PlanProblems.Blank(path));
            else if (!seen.Add(name))
                problems.Add(PlanProblems.Twice(path, name));
        }
    }

    private static void Sizes(CutRequest request, List<PlanProblem> problems)
    {
        if (IsTooMuch(request.Pieces.Select(piece => piece.Cut)))
            problems.Add(PlanProblems.TooMuch("pieces"));
        if (IsTooMuch(request.Coils.Select(coil => coil.Left)))
            problems.Add(PlanProblems.TooMuch("coils"));
        if (IsTooMuch(request.StandardLengths))
            problems.Add(PlanProblems.TooMuch("standard lengths"));
    }

    private static bool IsTooMuch(IEnumerable<Length> lengths) =>
        lengths.Aggregate((Int128)0, (sum, length) => sum + length.Nanometres) >= PlanProblems.Most.Nanometres;

    /// <summary>Pieces that no coil on hand and no standard coil can hold, and a shortage that cannot be bought.</summary>
    public static List<PlanProblem> OfRoom(CutRequest request, IReadOnlyList<WaitingPiece> due)
    {
        var allowances = request.Allowances;
        var longest = request.Coils.Select(coil => coil.Left).Concat(request.StandardLengths).DefaultIfEmpty(Length.Zero).Max();
        var problems = due
            .Where(piece => allowances.FirstTrim + piece.Cut + allowances.PerPiece > longest)
            .Select(piece => PlanProblems.FitsNothing(piece, allowances.FirstTrim + piece.Cut + allowances.PerPiece, longest))
            .ToList();
        problems.AddRange(OfBegunLots(request, due));
        if (problems.Count > 0 || request.StandardLengths.Count > 0)
            return problems;
        var need = due.Aggregate(Length.Zero, (sum, piece) => sum + piece.Cut + allowances.PerPiece);
        var room = request.Coils.Aggregate(Length.Zero, (sum, coil) => sum + Length.Max(Length.Zero, coil.Left - allowances.FirstTrim));
        if (need > room)
            problems.Add(PlanProblems.NotEnough(need - room));
        return problems;
    }

    /// <summary>Jobs whose lot, once begun, is no longer on hand in the length they need.</summary>
    private static IEnumerable<PlanProblem> OfBegunLots(CutRequest request, IReadOnlyList<WaitingPiece> due)
    {
        foreach (var job in due.Where(piece => piece is { OneLotJob: not null, BegunLot: not null }).GroupBy(piece => (Name: piece.OneLotJob!, Lot: piece.BegunLot!)))
        {
            var need = job.Aggregate(Length.Zero, (sum, piece) => sum + piece.Cut + request.Allowances.PerPiece);
            var room = request.Coils.Where(coil => coil.Lot == job.Key.Lot)
                .Aggregate(Length.Zero, (sum, coil) => sum + Length.Max(Length.Zero, coil.Left - request.Allowances.FirstTrim));
            if (need > room)
                yield return PlanProblems.LotIsShort(job.Key.Name, job.Key.Lot, need - room);
        }
    }
}
