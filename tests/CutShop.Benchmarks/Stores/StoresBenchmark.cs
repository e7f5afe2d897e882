using System.Diagnostics;
using CutShop.Testing.Stores;
using static CutShop.Benchmarks.Printed;

namespace CutShop.Benchmarks.Stores;

/// <summary>
/// The same work on a database file and on a server, each transaction on the disk: pieces claimed and completed, pieces claimed
/// only, and pieces looked up; by one client, by many at one program, and by many at two programs on one server.
/// </summary>
internal static class StoresBenchmark
{
    private const int Waiting = 24_000;
    private const int Coils = 400;
    private const int Many = 16;

    private static readonly TimeSpan Each = TimeSpan.FromSeconds(2);

    /// <summary>Measures and prints; there is no target, only where each store ends.</summary>
    public static int Run()
    {
        PostgresServer.WaitsForTheDisk = true;
        var folder = Directory.CreateTempSubdirectory("cutshop-stores-").FullName;
        var server = PostgresServer.NewDatabase();
        try
        {
            using var file = ShopDatabase.Open(Path.Combine(folder, "cutshop.db"), TimeProvider.System);
            using var first = ShopDatabase.OpenOnServer(server, folder, TimeProvider.System);
            using var second = ShopDatabase.OpenOnServer(server, folder, TimeProvider.System);
            var codes = Fill(file).Zip(Fill(first)).ToArray();

            Say($"{"a second",-34}{"file",9}{"server",9}{"of file",9}{"server, two programs",22}{"of file",9}");
            Line("looked up, 1 client", One(file, i => LookUp(file, codes[i].First)), One(first, i => LookUp(first, codes[i].Second)), both: null);
            Line(
                $"looked up, {Many} clients",
                Several([file], (database, i) => LookUp(database, codes[i].First)),
                Several([first], (database, i) => LookUp(database, codes[i].Second)),
                Several([first, second], (database, i) => LookUp(database, codes[i].Second)));
            Line("claimed and completed, 1 client", One(file, i => Cut(file, "one", i)), One(first, i => Cut(first, "one", i)), both: null);
            Line(
                $"claimed and completed, {Many} clients",
                Several([file], (database, i) => Cut(database, "many", i)),
                Several([first], (database, i) => Cut(database, "many", i)),
                Several([first, second], (database, i) => Cut(database, "both", i)));
            Line(
                $"claimed, {Many} clients",
                Several([file], (database, i) => Claim(database, $"many {i}")),
                Several([first], (database, i) => Claim(database, $"many {i}")),
                Several([first, second], (database, i) => Claim(database, $"both {i}")));
            return 0;
        }
        finally
        {
            PostgresServer.Drop(server);
            Directory.Delete(folder, recursive: true);
        }
    }

    private static IReadOnlyList<PieceCode> Fill(ShopDatabase database)
    {
        ManyTickets.FillAsync(database, Waiting, Coils, CancellationToken.None).GetAwaiter().GetResult();
        return database.Read(session => session.All<PieceCode>("SELECT code FROM pieces ORDER BY id"));
    }

    private static Task LookUp(ShopDatabase database, PieceCode code)
    {
        new CutBench(database).Find(code);
        return Task.CompletedTask;
    }

    private static async Task Cut(ShopDatabase database, string round, int i)
    {
        var who = $"{round} {i % Many}";
        var code = PieceCode.Parse((await new CutBench(database).NextAsync(who, $"next {round} {i}")).Outcome).OrThrow();
        await new CutBench(database).RecordCutAsync(code, who, $"done {round} {i}");
    }

    private static async Task Claim(ShopDatabase database, string who) => await new CutBench(database).NextAsync(who, $"claim {who}");

    private static double One(ShopDatabase database, Func<int, Task> work) => Several([database], (_, i) => work(i), clients: 1);

    /// <summary>How many pieces of work a second are done, each numbered and done once.</summary>
    private static double Several(ShopDatabase[] programs, Func<ShopDatabase, int, Task> work, int clients = Many)
    {
        var next = -1;
        var start = Stopwatch.GetTimestamp();
        Task.WhenAll(Enumerable.Range(0, clients).Select(client => Task.Run(async () =>
        {
            while (Stopwatch.GetElapsedTime(start) < Each)
                await work(programs[client % programs.Length], Interlocked.Increment(ref next) % Waiting);
        }))).GetAwaiter().GetResult();
        return (next + 1) / Stopwatch.GetElapsedTime(start).TotalSeconds;
    }

    private static void Line(string what, double file, double server, double? both) =>
        Say($"{what,-34}{file,9:0}{server,9:0}{server / file,9:0.00}{both,22:0}{both / file,9:0.00}");
}
