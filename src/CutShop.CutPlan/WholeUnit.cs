namespace CutShop.CutPlan;

/// <summary>The largest unit in which some whole figures are all whole.</summary>
internal static class WholeUnit
{
    /// <summary>Greatest common divisor of positive figures; 1 where there is none.</summary>
    public static long Of(IEnumerable<long> figures)
    {
        var unit = 0L;
        foreach (var figure in figures)
        {
            unit = Common(unit, figure);
            if (unit == 1)
                break;
        }
        return Math.Max(unit, 1);
    }

    private static long Common(long a, long b)
    {
        while (b != 0)
            (a, b) = (b, a % b);
        return a;
    }
}
