using Google.OrTools.LinearSolver;

namespace CutShop.CutPlan.EqualCoils;

/// <summary>
/// The linear programme over patterns: how often each is cut, in fractions, so that every piece is cut with the fewest
/// coils. Patterns are found as they are wanted, by the prices that the programme puts on sizes.
/// </summary>
internal sealed class PatternPrices : IDisposable
{
    /// <summary>Prices are whole numbers of this share of a coil, so that bounds are exact.</summary>
    public const long PerCoil = 100_000_000;

    private const long PriceTolerance = PerCoil / 1_000_000;
    private const int PatternsARound = 12;

    private readonly PieceMix _mix;
    private readonly Solver _solver;
    private readonly Constraint[] _cut;
    private readonly List<Variable> _uses = [];
    private readonly List<Pattern> _patterns = [];
    private readonly HashSet<Pattern> _known = [];
    private readonly PatternSearch _search;

    /// <summary>Starts with patterns that together cut every piece.</summary>
    public PatternPrices(PieceMix mix, IEnumerable<Pattern> patterns)
    {
        _mix = mix;
        _search = new(mix);
        _solver = Solver.CreateSolver("GLOP") ?? throw new InvalidOperationException("The solver package has no linear solver.");
        _cut = [.. mix.Counts.Select((count, kind) => _solver.MakeConstraint(count, double.PositiveInfinity, $"s{kind}"))];
        _solver.Objective().SetMinimization();
        Left = (int[])mix.Counts.Clone();
        foreach (var pattern in patterns)
            Add(pattern);
    }

    /// <summary>Patterns known so far.</summary>
    public IReadOnlyList<Pattern> Patterns => _patterns;

    /// <summary>Pieces still to be cut, by size.</summary>
    public int[] Left { get; }

    /// <summary>How often each known pattern is cut, after the last solve.</summary>
    public double[] Uses { get; private set; } = [];

    /// <summary>Price of a piece of each size at the last solve whose richest pattern was proved.</summary>
    public long[] Prices { get; private set; } = [];

    /// <summary>Worth of the richest pattern at <see cref="Prices"/>.</summary>
    public long RichestWorth { get; private set; }

    /// <summary>Coils in fractions at the last solve.</summary>
    public double Value { get; private set; }

    /// <summary>Fewest coils for what is left, proved; 0 where no richest pattern could be proved.</summary>
    public int Bound { get; private set; }

    /// <summary>True where the last solve ended with no better pattern to be found.</summary>
    public bool IsSettled { get; private set; }

    /// <summary>Solves, adding patterns until none is worth more than a coil, the rounds are used up or time is.</summary>
    /// <returns>False where the programme could not be solved.</returns>
    public bool Solve(SearchClock clock, int rounds = int.MaxValue)
    {
        Bound = 0;
        IsSettled = false;
        for (var round = 0; ; round++)
        {
            if (_solver.Solve() != Solver.ResultStatus.OPTIMAL)
                return false;
            // Read before a pattern is added: after that the solution is gone.
            Value = _solver.Objective().Value();
            Uses = [.. _uses.Select(use => use.SolutionValue())];
            var prices = new long[_mix.Kinds];
            for (var kind = 0; kind < prices.Length; kind++)
                prices[kind] = Math.Max(0, (long)(_cut[kind].DualValue() * PerCoil));
            if (!AddPatterns(prices))
            {
                IsSettled = true;
                return true;
            }
            if (round >= rounds || clock.IsUp)
                return true;
        }
    }

    /// <summary>Takes a pattern as cut: its pieces are no longer left.</summary>
    public void Cut(Pattern pattern, int times)
    {
        pattern.TakeFrom(Left, times);
        Relimit();
    }

    /// <summary>Sets what is left back to everything.</summary>
    public void Restart()
    {
        _mix.Counts.CopyTo(Left, 0);
        Relimit();
    }

    /// <summary>Adds a pattern if it is new.</summary>
    public bool Add(Pattern pattern)
    {
        if (pattern.Kinds.Length == 0 || !_known.Add(pattern))
            return false;
        var use = _solver.MakeNumVar(0, pattern.FitsIn(Left) ? double.PositiveInfinity : 0, string.Empty);
        for (var k = 0; k < pattern.Kinds.Length; k++)
            _cut[pattern.Kinds[k]].SetCoefficient(use, pattern.Counts[k]);
        _solver.Objective().SetCoefficient(use, 1);
        _uses.Add(use);
        _patterns.Add(pattern);
        return true;
    }

    /// <inheritdoc/>
    public void Dispose() => _solver.Dispose();

    private void Relimit()
    {
        for (var kind = 0; kind < _cut.Length; kind++)
            _cut[kind].SetLb(Left[kind]);
        for (var p = 0; p < _patterns.Count; p++)
            _uses[p].SetUb(_patterns[p].FitsIn(Left) ? double.PositiveInfinity : 0);
    }

    private bool AddPatterns(long[] prices)
    {
        var counts = _search.Richest(prices, Left, _mix.Room, nodes: 2_000);
        if (_search.Worth <= PerCoil + PriceTolerance && !_search.IsProved)
            counts = _search.Richest(prices, Left, _mix.Room, nodes: 1_000_000, withTable: true);
        if (_search.IsProved)
            Note(prices, _search.Worth);
        var added = false;
        var left = (int[])Left.Clone();
        for (var pattern = 0; pattern < PatternsARound && _search.Worth > PerCoil + PriceTolerance; pattern++)
        {
            var found = Pattern.Of(counts);
            added |= Add(found);
            found.TakeFrom(left);
            counts = _search.Richest(prices, left, _mix.Room, nodes: 2_000);
        }
        return added;
    }

    private void Note(long[] prices, long richest)
    {
        if (richest <= 0)
            return;
        Int128 all = 0;
        for (var kind = 0; kind < prices.Length; kind++)
            all += (Int128)prices[kind] * Left[kind];
        Bound = Math.Max(Bound, (int)((all + richest - 1) / richest));
        Prices = prices;
        RichestWorth = richest;
    }
}
