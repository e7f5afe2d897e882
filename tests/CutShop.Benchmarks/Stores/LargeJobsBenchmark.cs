using System.Diagnostics;
using CutShop.Benchmarks.Takeoff;
using CutShop.Testing.Stores;
using static CutShop.Benchmarks.Printed;

namespace CutShop.Benchmarks.Stores;

/// <summary>What a post costs when jobs of more and more posts are taken in and cancelled, in a file and on a server: it must not grow with the job.</summary>
internal static class LargeJobsBenchmark
{
    /// <summary>The most that a post of the largest job may cost, as a multiple of one of the smallest.</summary>
    private const double MostGrowth = 2;

    private static readonly int[] Posts = [1_000, 4_000, 16_000];

    /// <summary>Measures and prints; 1 where a post's cost grows.</summary>
    public static int Run()
    {
        PostgresServer.WaitsForTheDisk = true;
        var folder = Directory.CreateTempSubdirectory("cutshop-large-").FullName;
        var server = PostgresServer.NewDatabase();
        try
        {
            using var file = ShopDatabase.Open(Path.Combine(folder, "cutshop.db"), TimeProvider.System);
            using var onServer = ShopDatabase.OpenOnServer(server, folder, TimeProvider.System);
            // Neither pays for its first statements.
            _ = (Cost(file, 100, "first"), Cost(onServer, 100, "first"));
            Say($"{"ms a post",-10}{"file: in",12}{"cancelled",12}{"server: in",12}{"cancelled",12}");
            var costs = Posts.Select(posts => (Posts: posts, File: Cost(file, posts, $"L{posts}"), Server: Cost(onServer, posts, $"L{posts}"))).ToArray();
            foreach (var (posts, one, other) in costs)
                Say($"{posts,-10}{one.In,12:0.000}{one.Cancelled,12:0.000}{other.In,12:0.000}{other.Cancelled,12:0.000}");
            var growth = new[] { costs[^1].File.In / costs[0].File.In, costs[^1].File.Cancelled / costs[0].File.Cancelled, costs[^1].Server.In / costs[0].Server.In, costs[^1].Server.Cancelled / costs[0].Server.Cancelled };
            Say($"{"grew",-10}{growth[0],12:0.00}{growth[1],12:0.00}{growth[2],12:0.00}{growth[3],12:0.00}   (at most {MostGrowth:0})");
            return growth.Max() <= MostGrowth ? 0 : 1;
        }
        finally
        {
            PostgresServer.Drop(server);
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Milliseconds a post.</summary>
    private static (double In, double Cancelled) Cost(ShopDatabase database, int posts, string number)
    {
        var job = JobFileReader.Read(GeneratedJob.OfPosts(posts)).Job! with { Number = number };
        var intake = new JobIntake(database, ShopTables.Standard);
        var taken = Timed(() => intake.TakeInAsync(job, "bench").GetAwaiter().GetResult());
        var release = new JobRelease(database);
        var cancelled = Timed(() => release.CancelAsync(number, "measured", "bench").GetAwaiter().GetResult());
        return (taken / posts, cancelled / posts);
    }

    private static double Timed(Action work)
    {
        var start = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }
}
