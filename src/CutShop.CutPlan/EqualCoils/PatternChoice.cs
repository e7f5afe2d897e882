using Google.OrTools.LinearSolver;

namespace CutShop.CutPlan.EqualCoils;

/// <summary>How a choice of patterns ended.</summary>
internal enum ChoiceEnd
{
    /// <summary>Coils were found.</summary>
    Found,

    /// <summary>There is no such choice among the patterns given.</summary>
    Impossible,

    /// <summary>Time was up.</summary>
    Open,
}

/// <summary>Chooses whole patterns from a list so that all pieces are cut from a given number of coils.</summary>
internal static class PatternChoice
{
    /// <summary>Chooses by integer programming on one thread.</summary>
    /// <param name="mix">All pieces.</param>
    /// <param name="patterns">Patterns to choose from.</param>
    /// <param name="coils">Coils to use at most.</param>
    /// <param name="exactly">
    /// True where the list holds every pattern that counts, so that pieces are met exactly and a failure is a proof;
    /// false where a pattern may also be cut in part.
    /// </param>
    /// <param name="clock">Time.</param>
    public static (ChoiceEnd End, List<Pattern> Coils) Of(
        PieceMix mix, IReadOnlyList<Pattern> patterns, int coils, bool exactly, SearchClock clock)
    {
        using var solver = Solver.CreateSolver("SCIP") ?? throw new InvalidOperationException("The solver package has no integer solver.");
        var cut = mix.Counts.Select(count => solver.MakeConstraint(count, exactly ? count : double.PositiveInfinity, string.Empty)).ToArray();
        var used = solver.MakeConstraint(exactly ? coils : 0, coils, string.Empty);
        var uses = new Variable[patterns.Count];
        for (var p = 0; p < uses.Length; p++)
        {
            uses[p] = solver.MakeIntVar(0, coils, string.Empty);
            used.SetCoefficient(uses[p], 1);
            for (var k = 0; k < patterns[p].Kinds.Length; k++)
                cut[patterns[p].Kinds[k]].SetCoefficient(uses[p], patterns[p].Counts[k]);
        }
        solver.SetTimeLimit(Math.Max(1, (long)clock.Left.TotalMilliseconds));
        using var stop = clock.Cancelled.Register(() => solver.InterruptSolve());
        var status = solver.Solve();
        if (status is Solver.ResultStatus.INFEASIBLE)
            return (exactly ? ChoiceEnd.Impossible : ChoiceEnd.Open, []);
        if (status is not (Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.FEASIBLE))
            return (ChoiceEnd.Open, []);
        return (ChoiceEnd.Found, Read(mix, patterns, use => (int)Math.Round(uses[use].SolutionValue())));
    }

    private static List<Pattern> Read(PieceMix mix, IReadOnlyList<Pattern> patterns, Func<int, int> uses)
    {
        var left = (int[])mix.Counts.Clone();
        var coils = new List<Pattern>();
        for (var p = 0; p < patterns.Count; p++)
        {
            for (var use = uses(p); use > 0; use--)
            {
                var pattern = patterns[p].Within(left);
                if (pattern.Kinds.Length == 0)
                    continue;
                pattern.TakeFrom(left);
                coils.Add(pattern);
            }
        }
        return coils;
    }
}
