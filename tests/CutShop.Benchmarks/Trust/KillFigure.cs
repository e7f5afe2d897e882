using System.Globalization;
using CutShop.Testing.Trust;

namespace CutShop.Benchmarks.Trust;

/// <summary>The server is killed while clients write.</summary>
internal static class KillFigure
{
    public static async Task<TrustRow> OfAsync(int kills)
    {
        var seed = Environment.TickCount;
        using var run = new KillRun(seed);
        var figures = await run.RunAsync(kills, new Line(), CancellationToken.None);
        Console.Error.WriteLine();
        return new(
            "server killed (SIGKILL) at random moments while five clients cut, drill, pack, receive, take in and plan",
            string.Create(CultureInfo.InvariantCulture, $"{figures.Kills} kills; {figures.Acknowledged} writes acknowledged; {figures.SentAgain} requests without an answer sent again; {figures.Jobs} jobs, {figures.Plans} plans, {figures.Cut} pieces cut, {figures.Drilled} posts drilled; seed {seed}"),
            figures.Lost.Count,
            [.. figures.Lost, .. figures.Findings, .. figures.Faults]);
    }

    private sealed class Line : IProgress<int>
    {
        public void Report(int value) => Console.Error.Write(string.Create(CultureInfo.InvariantCulture, $"\rkill {value} "));
    }
}
