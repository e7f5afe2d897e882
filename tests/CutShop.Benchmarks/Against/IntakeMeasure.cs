using System.Globalization;
using CutShop.Benchmarks.Takeoff;

namespace CutShop.Benchmarks.Against;

/// <summary>A large job taken in by the API, which makes no paper: from the first byte sent to the answer that it is stored.</summary>
internal sealed class IntakeMeasure(ShopProgram program) : Measure
{
    private const int Posts = 10_000;
    private const int WarmPosts = 1_000;

    private readonly ProgramShop _shop = new(program);
    private int _jobs;

    public override void Prepare()
    {
        // A shop without a job is all that it takes.
    }

    public override IEnumerable<Reading[]> Turn()
    {
        _shop.Start();
        TakeIn(WarmPosts);
        var time = TakeIn(Posts);
        _shop.Stop();
        return [[new(string.Create(CultureInfo.InvariantCulture, $"intake of {Posts:N0} posts by the API, ms"), time)]];
    }

    public override void Dispose() => _shop.Dispose();

    /// <summary>Each is a job of its own.</summary>
    private double TakeIn(int posts)
    {
        var file = GeneratedJob.OfPosts(posts, string.Create(CultureInfo.InvariantCulture, $"IN-{_jobs++}"));
        return Time(() => _shop.TakeInByApi(file));
    }
}
