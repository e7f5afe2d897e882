using System.Diagnostics;
using System.Globalization;
using System.Text;
using CutShop.Testing.Trust;

namespace CutShop.Benchmarks.Against;

/// <summary>A cutter takes the next piece and says that it is cut, piece after piece: two taps each.</summary>
internal sealed class BenchMeasure(ShopProgram program) : Measure
{
    private const string Material = "Polypropylene";
    private const string Diameter = "1 in";
    private const int JobsATurn = 60;
    private const int CoilsATurn = 2;
    private const int PiecesATurn = JobsATurn * KillRun.RowsAJob;

    private static readonly TimeSpan LongestSearch = TimeSpan.FromSeconds(60);

    private readonly ProgramShop _shop = new(program);
    private int _jobs;

    public override void Prepare()
    {
        // Each turn makes its own work.
    }

    public override IEnumerable<Reading[]> Turn()
    {
        _shop.Start();
        MakeWork();
        _shop.UseFormsOf("/cut");
        var times = new double[PiecesATurn];
        for (var piece = 0; piece < PiecesATurn; piece++)
            times[piece] = Time(() => _shop.Tap($"{_shop.Tap("/cut?handler=Next")}?handler=FromPaper"));
        _shop.Stop();
        return [[new("a piece claimed and completed at the cut bench, ms", Stopwatches.Median(times))]];
    }

    public override void Dispose() => _shop.Dispose();

    /// <summary>The plan that a search leads to.</summary>
    private string Found(string search)
    {
        for (var start = Stopwatch.GetTimestamp(); Stopwatch.GetElapsedTime(start) < LongestSearch;)
        {
            if (_shop.Follow(search) is { } plan)
                return plan;
            Thread.Sleep(TimeSpan.FromMilliseconds(50));
        }
        throw new InvalidOperationException($"{program.Name}: the search found no plan: {_shop.Get(search)}");
    }

    /// <summary>Jobs of a few pieces each, and coils on which all of them are planned.</summary>
    private void MakeWork()
    {
        for (var i = 0; i < JobsATurn; i++)
            _shop.TakeInByApi(Encoding.UTF8.GetBytes(KillRun.JobFile(string.Create(CultureInfo.InvariantCulture, $"CUT-{_jobs++}"), Material.ToLowerInvariant(), Diameter)));
        _shop.UseFormsOf("/stock");
        (string, string)[] rope = [("Material", Material), ("Diameter", Diameter), ("Construction", "three-strand")];
        for (var i = 0; i < CoilsATurn; i++)
            _shop.Post("/stock", [("RequestKey", Guid.NewGuid().ToString("N")), .. rope, ("Lot", "L1"), ("CoilLength", "600 ft"), ("Place", "rack 1")]);
        _shop.Post(Found(_shop.Post("/plans", [.. rope, ("Seconds", "1")]).To!));
    }
}
