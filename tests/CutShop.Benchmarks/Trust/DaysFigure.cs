using System.Globalization;
using CutShop.Testing.Trust;

namespace CutShop.Benchmarks.Trust;

/// <summary>Days at the benches on which people slip: afterwards the books are whole, and everybody has a way on.</summary>
internal static class DaysFigure
{
    private const int MostHarmTold = 20;

    public static async Task<TrustRow> OfAsync(int days)
    {
        var seed = Environment.TickCount & int.MaxValue / 2;
        var harm = new List<string>();
        for (var day = 0; day < days; day++)
        {
            if (await RandomDay.OfAsync(seed + day) is { } wrong)
                harm.Add(wrong);
        }
        return new(
            "days of slips at the cut bench and at packing: taps twice, out of turn and sent again, wrong figures and scans, takeovers, lost coils",
            string.Create(CultureInfo.InvariantCulture, $"{days} days; each piece finished or handed back, each measure taken back, every coil accounted for; seed {seed}"),
            harm.Count,
            [.. harm.Take(MostHarmTold)]);
    }
}
