using System.Diagnostics;
using System.Globalization;
using System.Text;
using CutShop.Testing.CutPlans;

namespace CutShop.Benchmarks.Cutting;

/// <summary>The published instances: the planner's search for equal coils, best-fit decreasing, and a direct solver model.</summary>
internal static class Published
{
    private sealed record Row(PublishedInstance Instance, int Coils, int Bound, EqualCoilMethod Method, TimeSpan Time, int BestFit, int? Direct, TimeSpan DirectTime)
    {
        public bool IsSolved => Coils == Instance.BestKnown;
    }

    /// <summary>Measures every instance whose name contains <paramref name="only"/>, and the direct model on a spread of them.</summary>
    public static void Measure(StringBuilder report, TimeSpan limit, int direct, string only)
    {
        // The package loads its library at first use; that is no instance's time.
        FewestCoils.Of([5, 5, 5, 4, 4, 4, 3, 3, 3], 11, withSolver: true, new(TimeSpan.FromSeconds(1), default));
        var instances = PublishedInstance.All().Where(instance => instance.Name.Contains(only, StringComparison.Ordinal)).ToList();
        var step = direct > 0 ? Math.Max(1, instances.Count / direct) : int.MaxValue;
        var rows = new List<Row>();
        for (var i = 0; i < instances.Count; i++)
        {
            rows.Add(Measure(instances[i], limit, i % step == step / 2));
            var row = rows[^1];
            Console.WriteLine(FormattableString.Invariant(
                $"{row.Instance.Name,-22} {row.Coils,4} of {row.Instance.BestKnown,4}, bound {row.Bound,4}, {row.Time.TotalSeconds,6:f2} s, {row.Method}{(row.IsSolved ? "" : "  MISSED")}"));
        }
        Write(report, rows, limit);
    }

    private static Row Measure(PublishedInstance instance, TimeSpan limit, bool withDirect)
    {
        var clock = Stopwatch.StartNew();
        var plan = FewestCoils.Of(instance.Items, instance.Capacity, withSolver: true, new(limit, default));
        var time = clock.Elapsed;
        if (!plan.Coils.SelectMany(coil => coil).Order().SequenceEqual(instance.Items.Order()) || plan.Coils.Any(coil => coil.Sum() > instance.Capacity))
            throw new InvalidOperationException($"The plan for {instance.Name} is wrong.");
        var bestFit = FewestCoils.BestFit(instance.Items, instance.Capacity);
        clock.Restart();
        int? direct = withDirect ? DirectModel.Coils(instance, bestFit, new(limit, default)) : null;
        return new(instance, plan.Coils.Count, plan.Bound, plan.Method, time, bestFit, direct, clock.Elapsed);
    }

    private static void Write(StringBuilder report, List<Row> rows, TimeSpan limit)
    {
        report.AppendLine(CultureInfo.InvariantCulture, $"Published instances, one core, {limit.TotalSeconds} s an instance:").AppendLine();
        report.AppendLine("| set | instances | best-fit decreasing at best known | planner at best known | proved | median s | longest s |");
        report.AppendLine("| --- | --- | --- | --- | --- | --- | --- |");
        foreach (var set in rows.GroupBy(row => row.Instance.Set))
            Line(set.Key, [.. set]);
        Line("all", rows);
        report.AppendLine();
        foreach (var row in rows.Where(row => !row.IsSolved))
            report.AppendLine(CultureInfo.InvariantCulture, $"- {row.Instance.Name}: {row.Coils} coils, best known {row.Instance.BestKnown}, bound {row.Bound}.");
        if (rows.TrueForAll(row => row.IsSolved))
            report.AppendLine("None was missed.");
        report.AppendLine();
        Compare(report, rows, limit);

        void Line(string name, List<Row> some) => report.AppendLine(CultureInfo.InvariantCulture,
            $"| {name} | {some.Count} | {some.Count(row => row.BestFit == row.Instance.BestKnown)} | {some.Count(row => row.IsSolved)} ({100.0 * some.Count(row => row.IsSolved) / some.Count:f1} %) | {some.Count(row => row.Bound == row.Coils)} | {some.Select(row => row.Time.TotalSeconds).Order().ElementAt(some.Count / 2):f3} | {some.Max(row => row.Time.TotalSeconds):f2} |");
    }

    private static void Compare(StringBuilder report, List<Row> rows, TimeSpan limit)
    {
        var both = rows.Where(row => row.Direct is not null).ToList();
        if (both.Count == 0)
            return;
        report.AppendLine(CultureInfo.InvariantCulture,
            $"The same {both.Count} instances, spread over all sets, by each method ({limit.TotalSeconds} s and one core each; the direct model has one variable a size and coil):").AppendLine();
        report.AppendLine("| method | at best known | coils over best known, all together | time, all together |");
        report.AppendLine("| --- | --- | --- | --- |");
        Line("best-fit decreasing", row => row.BestFit, _ => TimeSpan.Zero, "under 0.01 s");
        Line("direct solver model", row => row.Direct!.Value, row => row.DirectTime, null);
        Line("planner", row => row.Coils, row => row.Time, null);
        report.AppendLine();

        void Line(string name, Func<Row, int> coils, Func<Row, TimeSpan> time, string? said) => report.AppendLine(CultureInfo.InvariantCulture,
            $"| {name} | {both.Count(row => coils(row) == row.Instance.BestKnown)} | {both.Sum(row => coils(row) - row.Instance.BestKnown)} | {said ?? FormattableString.Invariant($"{both.Sum(row => time(row).TotalSeconds):f1} s")} |");
    }
}
