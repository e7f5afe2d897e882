using System.Diagnostics;
using CutShop.Testing.Stores;
using static CutShop.Benchmarks.Printed;

namespace CutShop.Benchmarks.Benches;

/// <summary>
/// Claim and complete at the cut bench, each transaction on the disk: against the same two transactions written raw, between
/// many clients, and with a million finished tickets stored.
/// </summary>
internal static class BenchesBenchmark
{
    private const int Waiting = 60_000;
    private const int Coils = 200;
    private const int Finished = 1_000_000;
    private const int Rounds = 15;
    private const int PiecesARound = 400;
    private const int Clients = 16;
    private const double LeastOfRaw = 0.8;
    private const double LeastOfMean = 0.5;
    private const double LeastWhenFull = 0.8;

    private static readonly TimeSpan FairnessTime = TimeSpan.FromSeconds(4);

    /// <summary>Measures and says whether the targets are met.</summary>
    public static int Run()
    {
        var folder = Directory.CreateTempSubdirectory("cutshop-bench-").FullName;
        try
        {
            var (ours, raw) = AgainstRaw(folder);
            var share = Fairness(folder);
            var (empty, full) = WithMillionFinished(folder);
            Console.WriteLine();
            return Line("rate against raw", ours / raw, LeastOfRaw)
                & Line("slowest client against the mean", share, LeastOfMean)
                & Line($"rate with {Finished:N0} finished against none", full / empty, LeastWhenFull) ? 0 : 1;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static (double Ours, double Raw) AgainstRaw(string folder)
    {
        using var ours = Fill(folder, "ours");
        using var other = Fill(folder, "raw");
        using var raw = new RawBench(other.Path);
        var (oursSeconds, rawSeconds) = (new double[Rounds], new double[Rounds]);
        ClaimAndComplete(ours, PiecesARound, "warm");
        raw.ClaimAndComplete(PiecesARound, "warm");
        for (var round = 0; round < Rounds; round++)
        {
            oursSeconds[round] = Time(() => ClaimAndComplete(ours, PiecesARound, $"round {round}"));
            rawSeconds[round] = Time(() => raw.ClaimAndComplete(PiecesARound, $"round {round}"));
        }
        var (a, b) = (PiecesARound / Stopwatches.Median(oursSeconds), PiecesARound / Stopwatches.Median(rawSeconds));
        Say($"one client, pieces a second (two transactions each): ours {a:0}, raw {b:0}");
        return (a, b);
    }

    private static double Fairness(string folder)
    {
        using var database = Fill(folder, "fair");
        var bench = new CutBench(database);
        var start = Stopwatch.GetTimestamp();
        var counts = Task.WhenAll(Enumerable.Range(0, Clients).Select(client => Task.Run(async () =>
        {
            var done = 0;
            while (Stopwatch.GetElapsedTime(start) < FairnessTime)
                await OneAsync(bench, $"cutter {client}", $"{client} {done++}");
            return done;
        }))).GetAwaiter().GetResult();
        Say($"{Clients} clients for {FairnessTime.TotalSeconds:0} s: {counts.Sum() / FairnessTime.TotalSeconds:0} pieces a second; a client {counts.Min()} to {counts.Max()}, mean {counts.Average():0}");
        return counts.Min() / counts.Average();
    }

    private static (double Empty, double Full) WithMillionFinished(string folder)
    {
        using var empty = Fill(folder, "empty");
        using var full = Fill(folder, "full");
        var start = Stopwatch.GetTimestamp();
        FinishedTickets.Add(full, Finished);
        Say($"{Finished:N0} finished tickets stored in {Stopwatch.GetElapsedTime(start).TotalSeconds:0} s");
        var (emptySeconds, fullSeconds) = (new double[Rounds], new double[Rounds]);
        ClaimAndComplete(empty, PiecesARound, "warm");
        ClaimAndComplete(full, PiecesARound, "warm");
        for (var round = 0; round < Rounds; round++)
        {
            emptySeconds[round] = Time(() => ClaimAndComplete(empty, PiecesARound, $"round {round}"));
            fullSeconds[round] = Time(() => ClaimAndComplete(full, PiecesARound, $"round {round}"));
        }
        var (a, b) = (PiecesARound / Stopwatches.Median(emptySeconds), PiecesARound / Stopwatches.Median(fullSeconds));
        Say($"pieces a second: {a:0} with none finished, {b:0} with {Finished:N0} finished");
        return (a, b);
    }

    private static ShopDatabase Fill(string folder, string name)
    {
        var database = ShopDatabase.Open(Path.Combine(folder, name, "cutshop.db"), TimeProvider.System);
        ManyTickets.FillAsync(database, Waiting, Coils, CancellationToken.None).GetAwaiter().GetResult();
        return database;
    }

    private static void ClaimAndComplete(ShopDatabase database, int pieces, string round)
    {
        var bench = new CutBench(database);
        for (var i = 0; i < pieces; i++)
            OneAsync(bench, "Cai", $"{round} {i}").GetAwaiter().GetResult();
    }

    private static async Task OneAsync(CutBench bench, string who, string key)
    {
        var given = await bench.NextAsync(who, $"next {who} {key}");
        var done = given.IsDone ? await bench.RecordCutAsync(PieceCode.Parse(given.Outcome).OrThrow(), who, $"done {who} {key}") : given;
        if (!done.IsDone)
            throw new InvalidOperationException(done.Problem);
    }

    private static double Time(Action work)
    {
        GC.Collect();
        var start = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(start).TotalSeconds;
    }

    private static bool Line(string what, double ratio, double least)
    {
        Say($"{what}: {ratio:0.00}, at least {least:0.00}: {(ratio >= least ? "met" : "NOT met")}");
        return ratio >= least;
    }
}
