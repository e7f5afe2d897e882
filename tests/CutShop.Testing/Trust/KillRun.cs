using System.Collections.Concurrent;
using System.Globalization;
using CutShop.Testing.Stores;

namespace CutShop.Testing.Trust;

/// <summary>
/// Kills the server (SIGKILL) again and again at random moments while clients write through its pages and its API. After each
/// kill the database is checked whole and held against everything that was acknowledged; then the server starts again and the
/// clients send again what got no answer.
/// </summary>
internal sealed class KillRun : IDisposable
{
    /// <summary>Rows of rope of every job: pieces it has, and bores in each of its two posts.</summary>
    public const int RowsAJob = 3;

    /// <summary>The cut length of every piece: 72 in clear and half of two 5 1/2 in posts.</summary>
    public const string Measured = "77 1/2 in";

    private const int MostWritesALife = 60;
    private const int LongestStretch = 40;

    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(60);

    private readonly string _shop = Directory.CreateTempSubdirectory("cutshop-kills-").FullName;
    private readonly int _port = FreePort.Find();
    private readonly Random _random;
    private readonly List<ShopClient> _clients = [];
    private readonly ConcurrentQueue<string> _faults = new();
    private readonly List<string> _findings = [];
    private readonly List<string> _lost = [];
    private long _sentAgain;

    /// <param name="seed">Decides when the server is killed; the machine decides what it is at then.</param>
    public KillRun(int seed) => _random = new Random(seed);

    public Uri Address => new(string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{_port}"));

    public Door Door { get; } = new();

    public Acknowledged Told { get; } = new();

    public long ApiKeyId { get; private set; }

    /// <summary>A job of two posts with three rows of rope between them.</summary>
    public static string JobFile(string number, string material, string diameter) =>
        $$"""
        { "number": "{{number}}", "rope": { "material": "{{material}}", "diameter": "{{diameter}}" }, "allowances": { "shrink": "0%" },
          "lines": [ { "mark": "A",
            "posts": [ { "mark": "A1", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
                       { "mark": "A2", "shape": "square", "across": "5 1/2 in", "height": "42 in" } ],
            "sections": [ { "clear": "72 in" } ],
            "rows": [ { "mark": "top", "height": "36 in", "sag": "0 in", "start": "stopped", "finish": "stopped" },
                      { "mark": "middle", "height": "24 in", "sag": "0 in", "start": "stopped", "finish": "stopped" },
                      { "mark": "low", "height": "12 in", "sag": "0 in", "start": "stopped", "finish": "stopped" } ] } ] }
        """;

    public void Fault(string fault) => _faults.Enqueue(fault);

    /// <summary>A request got no answer: that is a kill's doing, or else a fault.</summary>
    public void Unanswered(string client, Exception why)
    {
        Interlocked.Increment(ref _sentAgain);
        if (Door.IsOpen)
            Fault($"{client}: no answer, though nobody was killed: {why.Message}");
    }

    public async Task<KillFigures> RunAsync(int kills, IProgress<int>? progress, CancellationToken cancel)
    {
        await FillAsync(cancel);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        var work = _clients.Select(client => client.WorkAsync(stop.Token)).ToList();
        for (var kill = 1; kill <= kills; kill++)
        {
            using var server = await ServerProcess.StartAsync(_shop, _port);
            var enough = Told.Writes + 1 + _random.Next(MostWritesALife);
            Door.Open();
            await UntilAsync(() => Told.Writes >= enough, work, cancel);
            await Task.Delay(_random.Next(LongestStretch), cancel);
            Door.Close();
            await server.KillAsync();
            await UntilAsync(() => Door.Waiting == _clients.Count, work, cancel);
            Check(kill);
            progress?.Report(kill);
        }
        await stop.CancelAsync();
        await Task.WhenAll(work);
        using var database = Open();
        return database.Read(session => new KillFigures(
            kills,
            Told.Writes,
            Interlocked.Read(ref _sentAgain),
            session.Value<long>("SELECT count(*) FROM cut_tickets WHERE state IN ('cut', 'packed')"),
            session.Value<long>("SELECT count(*) FROM drill_tickets WHERE state = 'drilled'"),
            session.Value<long>("SELECT count(*) FROM cut_plans WHERE state IN ('accepted', 'replaced')"),
            session.Value<long>("SELECT count(*) FROM jobs"),
            _lost,
            _findings,
            [.. _faults]));
    }

    public void Dispose()
    {
        foreach (var client in _clients)
            client.Dispose();
        Directory.Delete(_shop, recursive: true);
    }

    private ShopDatabase Open() => ShopDatabase.Open(ShopFolder.DatabaseIn(_shop), TimeProvider.System);

    private async Task FillAsync(CancellationToken cancel)
    {
        using var database = Open();
        var (_, key) = await new ApiKeyShelf(database).MakeAsync("kills", KeyScope.TakeIn, "test", cancel);
        ApiKeyId = database.Read(session => session.Value<long>("SELECT max(id) FROM api_keys"));
        foreach (var (name, role) in new[] { ("Ana", Role.Cutter), ("Ben", Role.Cutter), ("Cai", Role.Driller), ("Dov", Role.Driller), ("Eva", Role.Desk) })
        {
            var password = PeopleShelf.DrawPassword();
            await new PeopleShelf(database).AddAsync(name, role, password, "test", cancel);
            _clients.Add(role switch
            {
                Role.Cutter => new Cutter(this, name, password),
                Role.Driller => new Driller(this, name, password),
                _ => new DeskClerk(this, name, password, key),
            });
        }
    }

    /// <summary>Opens the database as a start after a power cut would, and looks at all of it.</summary>
    private void Check(int kill)
    {
        using (var database = Open())
            _lost.AddRange(Told.Lost(database).Select(lost => $"kill {kill}: {lost}"));
        _findings.AddRange(ShopCheck.Of(new ShopPlace(_shop), TimeProvider.System).Select(finding => $"kill {kill}: {finding}"));
    }

    private static async Task UntilAsync(Func<bool> holds, IReadOnlyList<Task> work, CancellationToken cancel)
    {
        using var late = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        late.CancelAfter(LongestWait);
        while (!holds())
        {
            if (work.FirstOrDefault(one => one.IsFaulted) is { } broken)
                await broken;
            await Task.Delay(TimeSpan.FromMilliseconds(2), late.Token);
        }
    }
}
