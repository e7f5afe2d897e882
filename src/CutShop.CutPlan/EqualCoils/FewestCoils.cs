namespace CutShop.CutPlan.EqualCoils;

/// <summary>Pieces cut from coils that are all as long.</summary>
/// <param name="Coils">Sizes cut from each coil.</param>
/// <param name="Bound">Proved: no plan has fewer coils.</param>
/// <param name="Method">What found it.</param>
internal sealed record EqualCoilPlan(IReadOnlyList<IReadOnlyList<long>> Coils, int Bound, EqualCoilMethod Method)
{
    /// <summary>True where no plan has fewer coils.</summary>
    public bool IsProved => Coils.Count <= Bound;
}

/// <summary>What found a plan for coils that are all as long.</summary>
internal enum EqualCoilMethod
{
    /// <summary>A quick rule.</summary>
    QuickRule,

    /// <summary>The linear programme, rounded down a dive.</summary>
    Dive,

    /// <summary>An integer choice from every pattern that counts.</summary>
    WholeList,

    /// <summary>A dive or rule with chance in it.</summary>
    Chance,

    /// <summary>An integer choice from the linear programme's patterns.</summary>
    KnownPatterns,
}

/// <summary>
/// Cuts pieces from the fewest coils where all coils are as long and there is no end of them: the bin-packing problem.
/// </summary>
/// <remarks>
/// Quick rules first; then the linear programme over patterns, which gives a sound bound; dives from it; then every
/// pattern that a plan of one coil fewer could hold, from which an integer choice is made or proved impossible; then
/// chance, seeded, until time is up. The best plan so far is what is returned.
/// </remarks>
internal sealed class FewestCoils
{
    private const int ShortList = 3_000;
    private const int LongList = 40_000;

    private readonly PieceMix _mix;
    private readonly long _unit;
    private readonly SearchClock _clock;
    private readonly Action<EqualCoilPlan>? _progress;
    private List<Pattern> _best = [];
    private EqualCoilMethod _method;
    private int _bound;

    private FewestCoils(PieceMix mix, long unit, SearchClock clock, Action<EqualCoilPlan>? progress)
    {
        _mix = mix;
        _unit = unit;
        _clock = clock;
        _progress = progress;
    }

    private bool IsDone => _best.Count <= _bound || _clock.IsUp;

    /// <summary>The best plan found in the time given.</summary>
    /// <param name="pieces">Sizes, positive, none over <paramref name="room"/>.</param>
    /// <param name="room">What each coil takes.</param>
    /// <param name="withSolver">False where the solver package cannot be used: the quick rules and their bound answer.</param>
    /// <param name="clock">Time.</param>
    /// <param name="progress">Told the best plan each time it or its bound is better.</param>
    public static EqualCoilPlan Of(
        IReadOnlyList<long> pieces, long room, bool withSolver, SearchClock clock, Action<EqualCoilPlan>? progress = null)
    {
        if (pieces.Count == 0)
            return new([], 0, EqualCoilMethod.QuickRule);
        var unit = WholeUnit.Of(pieces);
        var search = new FewestCoils(PieceMix.Of(pieces, room / unit * unit), unit, clock, progress);
        search.QuickRules();
        if (withSolver && !search.IsDone)
            search.WithSolver();
        return search.Plan();
    }

    /// <summary>Longest piece first, each into the coil that it leaves the least room in: the rule to compare with.</summary>
    public static int BestFit(IReadOnlyList<long> pieces, long room) => QuickFits.BestFit(PieceMix.Of(pieces, room)).Count;

    private EqualCoilPlan Plan() => new([.. _best.Select(Sizes)], _bound, _method);

    private List<long> Sizes(Pattern coil)
    {
        var sizes = new List<long>();
        for (var k = 0; k < coil.Kinds.Length; k++)
            sizes.AddRange(Enumerable.Repeat(_mix.Sizes[coil.Kinds[k]] * _unit, coil.Counts[k]));
        return sizes;
    }

    private void QuickRules()
    {
        Raise(RoomBound.Of(_mix));
        Offer(QuickFits.FirstFit(_mix), EqualCoilMethod.QuickRule);
        Offer(QuickFits.BestFit(_mix), EqualCoilMethod.QuickRule);
        // The greater the power, the more the long pieces are preferred to a full coil.
        foreach (var power in (double[])[1, 1.02, 1.1, 1.3, 1.6, 2])
        {
            if (IsDone)
                return;
            Offer(QuickFits.FullestCoil(_mix, Worth(power, null)), EqualCoilMethod.QuickRule);
        }
    }

    private Func<int, long> Worth(double power, Random? chance) => size =>
        (long)(1e9 * Math.Pow(size / (double)_mix.Room, power) * (1 + (chance is null ? 0 : 0.02 * chance.NextDouble())));

    private void WithSolver()
    {
        List<Pattern> start = [.. _best, .. QuickFits.FirstFit(_mix), .. QuickFits.BestFit(_mix), .. QuickFits.FullestCoil(_mix, size => size)];
        using var prices = new PatternPrices(_mix, start);
        if (!prices.Solve(_clock))
            return;
        Raise(prices.Bound);
        var (rootPrices, richest) = (prices.Prices, prices.RichestWorth);
        if (!IsDone)
            Offer(PatternDive.Down(_mix, prices, _best.Count, null, _clock), EqualCoilMethod.Dive);
        Chances(prices, seed: 0, count: 3);
        WholeList(rootPrices, richest, ShortList);
        Chances(prices, seed: 3, count: 30);
        WholeList(rootPrices, richest, LongList);
        for (var seed = 33; !IsDone; seed += 20)
        {
            Known(prices);
            Chances(prices, seed, count: 20);
        }
    }

    private void Chances(PatternPrices prices, int seed, int count)
    {
        for (var draw = seed; draw < seed + count && !IsDone; draw++)
        {
            var chance = new Random(draw);
            Offer(PatternDive.Down(_mix, prices, _best.Count, chance, _clock), EqualCoilMethod.Chance);
            if (!IsDone)
                Offer(QuickFits.FullestCoil(_mix, Worth(1 + chance.NextDouble(), chance)), EqualCoilMethod.Chance);
        }
    }

    /// <summary>One coil fewer, from every pattern that such a plan could hold: found, or proved impossible.</summary>
    private void WholeList(long[] prices, long richest, int limit)
    {
        while (!IsDone && prices.Length > 0)
        {
            var list = PatternList.For(_mix, prices, richest, _best.Count - 1, limit, _clock.AtMost(TimeSpan.FromSeconds(1)));
            if (list is null)
                return;
            var (end, coils) = PatternChoice.Of(_mix, list, _best.Count - 1, exactly: true, _clock);
            if (end == ChoiceEnd.Impossible)
                Raise(_best.Count);
            if (end != ChoiceEnd.Found)
                return;
            Offer(coils, EqualCoilMethod.WholeList);
        }
    }

    private void Known(PatternPrices prices)
    {
        var (end, coils) = PatternChoice.Of(_mix, prices.Patterns, _best.Count - 1, exactly: false, _clock.AtMost(TimeSpan.FromSeconds(2)));
        if (end == ChoiceEnd.Found)
            Offer(coils, EqualCoilMethod.KnownPatterns);
    }

    private void Offer(List<Pattern>? coils, EqualCoilMethod method)
    {
        if (coils is null || (_best.Count > 0 && coils.Count >= _best.Count))
            return;
        _best = coils;
        _method = method;
        _progress?.Invoke(Plan());
    }

    private void Raise(int bound)
    {
        if (bound <= _bound)
            return;
        _bound = bound;
        if (_best.Count > 0)
            _progress?.Invoke(Plan());
    }
}
