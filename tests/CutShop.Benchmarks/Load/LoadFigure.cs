using System.Globalization;
using CutShop.Benchmarks.Trust;
using CutShop.Testing.Load;
using CutShop.Testing.Stores;

namespace CutShop.Benchmarks.Load;

/// <summary>Tablets and phones work on one process for minutes.</summary>
internal static class LoadFigure
{
    private const int Tablets = 50;
    private const int Phones = 200;
    private const double MostGrowth = 1.25;

    private static readonly TimeSpan BetweenTaps = TimeSpan.FromSeconds(0.5);
    private static readonly TimeSpan BetweenPages = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan Window = TimeSpan.FromSeconds(30);

    public static async Task<TrustRow> OfAsync(TrustDose dose)
    {
        var duration = dose.Load;
        PostgresServer.WaitsForTheDisk = true;
        using var run = new LoadRun(new LoadPlan(Tablets, Phones, duration, BetweenTaps, BetweenPages), dose.IsOnServer ? PostgresServer.NewDatabase() : null);
        var figures = await run.RunAsync(CancellationToken.None);
        foreach (var (at, bytes) in figures.Memory)
            Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{at.TotalSeconds,5:0} s {Mebibytes(bytes),6:0} MiB"));
        var (begin, end) = (figures.MemoryBetween(TimeSpan.FromMinutes(1) - Window / 2, TimeSpan.FromMinutes(1) + Window / 2), figures.MemoryBetween(duration - Window, duration));
        var harm = figures.Errors.Concat(figures.Findings).ToList();
        if (begin > 0 && end > begin * MostGrowth)
            harm.Add("memory grew");
        return new(
            $"{Tablets} bench tablets and {Phones} site phones on one process{(dose.IsOnServer ? ", the database on a server" : "")}",
            string.Create(
                CultureInfo.InvariantCulture,
                $"""
                {duration.TotalSeconds:0} s; {figures.Taps.Count} requests of tablets (p50 {Ms(figures.Taps, 0.5)}, p99 {Ms(figures.Taps, 0.99)}), {figures.Pages.Count} of phones (p50 {Ms(figures.Pages, 0.5)}, p99 {Ms(figures.Pages, 0.99)}); {figures.Errors.Count} errors; {figures.Claims} pieces given, {figures.Cut} cut, each once; memory {Mebibytes(begin):0} MiB after a minute, {Mebibytes(end):0} MiB at the end
                """),
            figures.Findings.Count,
            harm);
    }

    private static string Ms(IReadOnlyList<double> seconds, double share) =>
        string.Create(CultureInfo.InvariantCulture, $"{LoadFigures.Percentile(seconds, share):0.0} ms");

    private static double Mebibytes(double bytes) => bytes / (1024 * 1024);
}
