using System.Globalization;
using CutShop.Benchmarks.Fuzz;
using CutShop.Benchmarks.Takeoff;

namespace CutShop.Benchmarks.Against;

/// <summary>
/// The page behind a label, a cut ticket and a drill ticket, in a shop with the demo's jobs and in one with a large job. The first view is the
/// first thing that a server is asked for at all, so each kind of page has a server of its own.
/// </summary>
internal sealed class PagesMeasure(ShopProgram program) : Measure
{
    private const string Large = "LARGE";
    private const int LargePosts = 2_000;
    private const int PagesOfAKind = 20;

    private readonly ProgramShop _demo = new(program);
    private readonly ProgramShop _large = new(program);
    private readonly List<(string Name, ProgramShop Shop, IReadOnlyList<string> Addresses)> _kinds = [];
    private int _turns;

    public override void Prepare()
    {
        var folder = Directory.CreateTempSubdirectory("cutshop-against-jobs-").FullName;
        try
        {
            var large = Path.Combine(folder, "large.json");
            File.WriteAllBytes(large, GeneratedJob.OfPosts(LargePosts, Large));
            Fill(_demo, "the demo's jobs", FuzzSite.DemoFiles, "LQ-1042");
            Fill(_large, string.Create(CultureInfo.InvariantCulture, $"{LargePosts:N0} posts"), [large], Large);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    public override IEnumerable<Reading[]> Turn()
    {
        var turn = _turns++;
        foreach (var (name, shop, addresses) in _kinds)
        {
            shop.Start();
            var first = addresses[turn % addresses.Count];
            var firstView = Time(() => shop.Get(first));
            var view = MedianTime(ask => shop.Get(addresses[ask % addresses.Count]));
            shop.Stop();
            yield return [new($"{name}: first view, ms", firstView), new($"{name}, ms", view)];
        }
    }

    public override void Dispose()
    {
        _demo.Dispose();
        _large.Dispose();
    }

    /// <summary>Has a shop take jobs in, and notes the pages of one of them.</summary>
    private void Fill(ProgramShop shop, string name, IEnumerable<string> files, string job)
    {
        shop.TakeIn(files);
        shop.Start();
        var pages = shop.PagesOf(job);
        shop.Stop();
        foreach (var (kind, addresses) in new[] { ("/p/", pages.OnSite), ("/cut/", pages.Cut), ("/drill/", pages.Drill) })
            _kinds.Add(($"{kind}, {name}", shop, Spread(addresses)));
    }

    /// <summary>Some of them, from all over the job.</summary>
    private static List<string> Spread(IReadOnlyList<string> addresses) =>
        [.. Enumerable.Range(0, Math.Min(PagesOfAKind, addresses.Count)).Select(i => addresses[i * addresses.Count / Math.Min(PagesOfAKind, addresses.Count)])];
}
