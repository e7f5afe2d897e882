using System.Diagnostics;
using System.Globalization;
using System.Text;
using CutShop.Testing.CutPlans;

namespace CutShop.Benchmarks.Cutting;

/// <summary>Cases as a shop has them: the planner, best-fit decreasing, and the solver's model alone with nothing of ours before it.</summary>
internal static class Shop
{
    private sealed record Row(string Name, PlanAims? BestFit, PlanAims? Direct, bool DirectProved, double DirectSeconds, RopePlan Plan);

    /// <summary>Measures roomy, tight, one-lot and short cases of 60 pieces, and some of 500.</summary>
    public static void Measure(StringBuilder report, bool withSolverAlone)
    {
        CutPlanner.Plan(ShopCases.Drawn(99, 20, 1, 3), new(TimeSpan.FromSeconds(1)));
        Table(report, "60 pieces, three full coils and twelve offcuts, 10 s at most",
            Enumerable.Range(1, 24).Select(seed => ($"roomy {seed}", ShopCases.Drawn(seed, 60, 3, 12))), TimeSpan.FromSeconds(10), withSolverAlone);
        Table(report, "60 pieces, offcuts alone, 2 % over demand, 10 s at most",
            Enumerable.Range(1, 8).Select(seed => ($"tight {seed}", ShopCases.Tight(seed))), TimeSpan.FromSeconds(10), withSolverAlone);
        Table(report, "60 pieces of six jobs, two of which want one lot, coils of three lots, 10 s at most",
            Enumerable.Range(1, 8).Select(seed => ($"lots {seed}", ShopCases.OneLot(seed))), TimeSpan.FromSeconds(10), withSolverAlone);
        Table(report, "60 pieces, twelve offcuts, the rest to be bought in 3,600 or 7,200 in, 10 s at most",
            Enumerable.Range(1, 8).Select(seed => ($"short {seed}", ShopCases.Shortage(seed))), TimeSpan.FromSeconds(10), withSolverAlone: false);
        Table(report, "500 pieces, 15 full coils and 25 offcuts, 4.5 s at most",
            Enumerable.Range(1, 4).Select(seed => ($"large {seed}", ShopCases.Drawn(seed, 500, 15, 25))), TimeSpan.FromSeconds(4.5), withSolverAlone);
    }

    // The solver alone is asked in the first eight cases of a table: it takes all its time in each.
    private const int SolverCases = 8;

    private static void Table(StringBuilder report, string title, IEnumerable<(string Name, CutRequest Request)> cases, TimeSpan limit, bool withSolverAlone)
    {
        report.AppendLine(CultureInfo.InvariantCulture, $"{title}:").AppendLine();
        report.AppendLine("| case | best-fit decreasing | solver alone | planner | planner s | planner's proof |");
        report.AppendLine("| --- | --- | --- | --- | --- | --- |");
        var rows = new List<Row>();
        foreach (var (name, request) in cases)
        {
            var result = CutPlanner.Plan(request, new(limit));
            if (result.Plan is not { } plan)
            {
                report.AppendLine(CultureInfo.InvariantCulture, $"| {name} | | | {result.Problems[0].Text} | | |");
                Console.WriteLine($"{name}: {result.Problems[0].Text}");
                continue;
            }
            var (direct, proved, seconds) = withSolverAlone && rows.Count < SolverCases ? SolverAlone(request, limit) : (null, false, 0);
            rows.Add(new(name, BestFitDecreasing.Aims(request), direct, proved, seconds, plan));
            var row = rows[^1];
            var line = FormattableString.Invariant(
                $"| {name} | {Say(row.BestFit)} | {(seconds > 0 ? $"{Say(direct)}{(proved ? ", proved" : "")} in {FormattableString.Invariant($"{seconds:f2}")} s" : "")} | {Say(plan.Aims)} | {plan.Time.TotalSeconds:f3} | {plan.Proof} |");
            Console.WriteLine(line);
            report.AppendLine(line);
        }
        if (rows.Count == 0)
            return;
        report.AppendLine();
        report.AppendLine(CultureInfo.InvariantCulture,
            $"Planner: {rows.Count(row => row.Plan.Proof.IsBest)} of {rows.Count} proved best, {rows.Count(row => row.Plan.Proof.IsBest && row.Plan.Time < TimeSpan.FromSeconds(0.1))} of them within 0.1 s; median {rows.Select(row => row.Plan.Time.TotalSeconds).Order().ElementAt(rows.Count / 2):f3} s, longest {rows.Max(row => row.Plan.Time.TotalSeconds):f2} s; worse than best-fit decreasing in {rows.Count(row => row.BestFit is { } rule && rule < row.Plan.Aims)}; of the {rows.Count(row => row.DirectSeconds > 0)} cases that the solver alone was asked, better in {rows.Count(row => row.DirectSeconds > 0 && (row.Direct is null || row.Plan.Aims < row.Direct))}, worse in {rows.Count(row => row.Direct is { } direct && direct < row.Plan.Aims)}; the solver alone proved {rows.Count(row => row.DirectProved)}.");
        report.AppendLine();
    }

    private static (PlanAims? Aims, bool IsProved, double Seconds) SolverAlone(CutRequest request, TimeSpan limit)
    {
        var task = new PlanSheet(request, [.. request.Pieces]).Stock.With([]);
        var bounds = new AimBounds(task, null);
        var clock = Stopwatch.StartNew();
        var (cuts, _) = SolverSearch.Run(task, null, bounds, new(limit, default), _ => { });
        if (cuts is null)
            return (null, false, clock.Elapsed.TotalSeconds);
        var aims = task.AimsOf(cuts);
        return (aims, PlanProof.Of(aims, bounds.Below(aims)).IsBest, clock.Elapsed.TotalSeconds);
    }

    private static string Say(PlanAims? aims) => aims is not { } some ? "none" : FormattableString.Invariant(
        $"{(some.Bought > Length.Zero ? $"{some.Bought.Inches:f0} in bought, " : "")}{some.Scrap.Inches:f1} in scrap, {some.FullCoils} full, {some.Rack} on rack, longest {some.LongestOffcut.Inches:f1} in");
}
