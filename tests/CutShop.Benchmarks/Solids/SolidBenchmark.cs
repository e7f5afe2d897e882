using System.Globalization;
using CutShop.Benchmarks.Takeoff;
using CutShop.Testing.Solids;

namespace CutShop.Benchmarks.Solids;

/// <summary>
/// <c>solid [--posts N]</c>: a post as a solid. What it costs to build one that is like none before and to ask it everything, and how many
/// of its figures random points counted in the bodies do not bear out.
/// </summary>
internal static class SolidBenchmark
{
    private const int Posts = 10_000;
    private const int Rounds = 15;
    private const double MostMicroseconds = 5;

    /// <summary>Measures, counts, prints and judges.</summary>
    public static int Run(string[] args)
    {
        var counted = args is ["--posts", var count] ? int.Parse(count, CultureInfo.InvariantCulture) : Posts;
        return Cost() & Count(counted) ? 0 : 1;
    }

    private static bool Cost()
    {
        var tables = ShopTables.Standard;
        var takeoff = JobTakeoff.Of(JobFileReader.Read(UnlikePosts.Unlike(Posts)).Job!, tables);
        var works = PostWork.Of(takeoff).ToList();
        var sum = 0.0;
        var measured = Stopwatches.InTurns(Rounds, 1, () =>
        {
            foreach (var work in works)
                sum += Asked(PostSolid.Of(work, tables.Screws));
        });
        var micro = measured[0].Seconds * 1e6 / Posts;
        var met = micro <= MostMicroseconds;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Posts:N0} posts that all differ, {takeoff.Bores.Count:N0} bores, {takeoff.Fixings.Count:N0} screws; {measured[0].Bytes / Posts} bytes a post"));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"built, and asked for all wood, gaps and bites: {micro:0.00} us a post, at most {MostMicroseconds}: {(met ? "met" : "MISSED")}"));
        return met && sum > 0;
    }

    private static double Asked(PostSolid solid)
    {
        var sum = 0.0;
        for (var i = 0; i < solid.Bores.Count; i++)
        {
            sum += solid.WoodRound(solid.Bores[i]).Above.Inches;
            for (var j = 0; j < i; j++)
                sum += Gap.Between(solid.Bores[i].Body, solid.Bores[j].Body);
            for (var j = 0; j < solid.Screws.Count; j++)
                sum += solid.Screws[j].GapTo(solid.Bores[i].Body, upTo: 1) + solid.Screws[j].BiteIn(solid.Bores[i].Rope);
        }
        for (var i = 0; i < solid.Screws.Count; i++)
        {
            for (var j = 0; j < i; j++)
                sum += solid.Screws[i].GapTo(solid.Screws[j], upTo: 1);
        }
        return sum;
    }

    private static bool Count(int posts)
    {
        var differences = Enumerable.Range(0, posts).AsParallel().SelectMany(CountedPost.Differences).ToList();
        foreach (var difference in differences.Take(20))
            Console.WriteLine(difference);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"random points counted in the bodies of {posts:N0} random posts: {differences.Count} figures differ by more than {CountedPost.Allowed} in: {(differences.Count == 0 ? "met" : "MISSED")}"));
        return differences.Count == 0;
    }
}
