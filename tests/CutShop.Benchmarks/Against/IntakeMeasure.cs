using System.Globalization;
using CutShop.Benchmarks.Takeoff;

namespace CutShop.Benchmarks.Against;

/// <summary>A large job taken in by the API, which makes no paper: from the first byte sent to the answer that it is stored.</summary>
internal sealed class IntakeMeasure(ShopProgram program) : Measure
{
    private const int Posts = 10_000;

    private readonly ProgramShop _shop = new(program);
    private int _jobs;

    public override void Prepare()
    {
        _shop.Start();
        TakeIn();
    }

    public override IEnumerable<Reading> Turn() =>
        [new(string.Create(CultureInfo.InvariantCulture, $"intake of {Posts:N0} posts by the API, ms"), TakeIn())];

    public override void Dispose() => _shop.Dispose();

    /// <summary>Each is a job of its own.</summary>
    private double TakeIn()
    {
        var file = GeneratedJob.OfPosts(Posts, string.Create(CultureInfo.InvariantCulture, $"IN-{_jobs++}"));
        return Time(() => _shop.TakeInByApi(file));
    }
}
