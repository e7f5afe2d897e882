using System.Collections.Concurrent;
using CutShop.CutPlan;
using CutShop.Shop.Store;

namespace CutShop.Shop.Stock;

/// <summary>Searches for cut plans that go on while people watch. They live as long as the program runs; what they find is stored as a draft.</summary>
public sealed class PlanSearches(CutPlanDesk desk, TimeProvider time) : IDisposable
{
    private const int MostAtOnce = 2;
    private static readonly TimeSpan Remembered = TimeSpan.FromMinutes(10);

    private readonly ConcurrentDictionary<long, PlanSearch> _searches = new();
    private readonly SemaphoreSlim _places = new(MostAtOnce, MostAtOnce);
    private long _last;

    /// <summary>Starts a search; the search itself waits its turn where others are under way.</summary>
    /// <param name="kind">The rope of the pieces.</param>
    /// <param name="dueBy">The last day of the window; null plans every waiting piece.</param>
    /// <param name="budget">How long to search.</param>
    /// <param name="who">Who asks.</param>
    /// <param name="cutFrom">The rope of the coils, where it is not that of the pieces.</param>
    public long Start(RopeKind kind, DateOnly? dueBy, PlanBudget budget, string who, RopeKind? cutFrom = null)
    {
        ForgetOld();
        var search = new PlanSearch(cutFrom ?? kind, time.GetUtcNow());
        var id = Interlocked.Increment(ref _last);
        _searches[id] = search;
        search.Run(async () =>
        {
            await _places.WaitAsync().ConfigureAwait(false);
            try
            {
                return await desk.DraftAsync(kind, dueBy, budget, who, search, cutFrom, search.Stopped).ConfigureAwait(false);
            }
            finally
            {
                _places.Release();
            }
        });
        return id;
    }

    /// <summary>A search by its number, or null where there is none any more.</summary>
    public PlanSearch? Find(long id) => _searches.GetValueOrDefault(id);

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var search in _searches.Values)
            search.Dispose();
        _places.Dispose();
    }

    private void ForgetOld()
    {
        foreach (var (id, search) in _searches)
        {
            if (search.Answer is not null && time.GetUtcNow() - search.StartedAt > Remembered && _searches.TryRemove(id, out _))
                search.Dispose();
        }
    }
}

/// <summary>One search for a cut plan.</summary>
public sealed class PlanSearch : IProgress<PlanProgress>, IDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private Task<PlanAnswer>? _task;

    internal PlanSearch(RopeKind kind, DateTimeOffset startedAt) => (Kind, StartedAt) = (kind, startedAt);

    /// <summary>The rope.</summary>
    public RopeKind Kind { get; }

    /// <summary>When it started, UTC.</summary>
    public DateTimeOffset StartedAt { get; }

    /// <summary>The best so far, or null before there is any.</summary>
    public PlanProgress? Best { get; private set; }

    /// <summary>The answer, or null while the search goes on.</summary>
    /// <exception cref="AggregateException">The search broke.</exception>
    public PlanAnswer? Answer => _task is { IsCompleted: true } done ? done.Result : null;

    internal CancellationToken Stopped => _stop.Token;

    /// <summary>Ends the search; the best plan so far is stored.</summary>
    public void Stop() => _stop.Cancel();

    /// <summary>Told of each better plan.</summary>
    public void Report(PlanProgress value) => Best = value;

    /// <inheritdoc/>
    public void Dispose() => _stop.Dispose();

    internal void Run(Func<Task<PlanAnswer>> work) => _task = Task.Run(work);
}
