using System.Diagnostics;
using System.Globalization;
using System.Text;
using CutShop.Testing.Stores;
using CutShop.Testing.Trust;

namespace CutShop.Testing.Load;

/// <summary>Tablets and phones on one process of the real program, over HTTP on this machine, on a shop of its own.</summary>
internal sealed class LoadRun : IDisposable
{
    /// <summary>The cut length of every piece: 72 in clear and half of two 5 1/2 in posts.</summary>
    public const string Measured = "77 1/2 in";

    private const int RowsAJob = 12;

    private static readonly RopeKind[] Ropes =
    [
        .. from material in new[] { RopeMaterial.Polypropylene, RopeMaterial.Manila }
           from diameter in new[] { Length.Inch, Length.Inch + Length.FromSixtyFourths(16), Length.Inch + Length.FromSixtyFourths(32), Length.Inch * 2 }
           select new RopeKind(material, diameter, RopeKind.ThreeStrand),
    ];

    private static readonly TimeSpan LookAtMemory = TimeSpan.FromSeconds(5);

    private readonly LoadPlan _plan;
    private readonly string? _connection;
    private readonly ShopPlace _shop;
    private readonly int _port = FreePort.Find();
    private readonly LoadNotes _notes = new();

    /// <param name="plan">How many work how fast and how long.</param>
    /// <param name="connection">A database on a server, or null for a file.</param>
    public LoadRun(LoadPlan plan, string? connection = null)
    {
        (_plan, _connection) = (plan, connection);
        _shop = new(Directory.CreateTempSubdirectory("cutshop-load-").FullName, connection);
    }

    private Uri Address => new(string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{_port}"));

    /// <summary>Fills the shop, lets everyone work, stops the server and looks at what is stored.</summary>
    public async Task<LoadFigures> RunAsync(CancellationToken cancel)
    {
        var (tablets, phones) = await FillAsync(cancel);
        var memory = new List<(TimeSpan, long)>();
        try
        {
            using var server = await ServerProcess.StartAsync(_shop.Folder, _port, _connection);
            foreach (var tablet in tablets)
                await tablet.BeginAsync();
            var start = Stopwatch.GetTimestamp();
            bool IsOver() => Stopwatch.GetElapsedTime(start) > _plan.Duration || cancel.IsCancellationRequested;
            var work = Task.WhenAll([.. tablets.Select(tablet => tablet.WorkAsync(IsOver)), .. phones.Select(phone => phone.WorkAsync(IsOver))]);
            using var process = Process.GetProcessById(server.Id);
            while (await Task.WhenAny(work, Task.Delay(LookAtMemory, cancel)) != work)
            {
                process.Refresh();
                memory.Add((Stopwatch.GetElapsedTime(start), process.WorkingSet64));
            }
            await work;
            await server.StopAsync();
            return new(
                [.. tablets.SelectMany(tablet => tablet.Seconds)],
                [.. phones.SelectMany(phone => phone.Seconds)],
                _notes.Claims.Count,
                _notes.Cut.Count,
                memory,
                [.. _notes.Errors],
                [.. _notes.GivenTwice, .. Stored()]);
        }
        finally
        {
            foreach (var client in tablets.Concat<LoadClient>(phones))
                client.Dispose();
        }
    }

    public void Dispose() => Directory.Delete(_shop.Folder, recursive: true);

    private async Task<(List<BenchTablet> Tablets, List<SitePhone> Phones)> FillAsync(CancellationToken cancel)
    {
        using var database = _shop.Open(TimeProvider.System);
        var intake = new JobIntake(database, ShopTables.Standard);
        for (var i = 0; i * RowsAJob < _plan.Pieces; i++)
            await intake.TakeInAsync(JobFileReader.Read(Encoding.UTF8.GetBytes(JobFile(i, Ropes[i % Ropes.Length]))).Job!, "load", cancel: cancel);
        foreach (var rope in Ropes)
            await PlanAsync(database, rope, cancel);

        var codes = database.Read(session => session.All<string>("SELECT code FROM pieces ORDER BY id"));
        var tablets = new List<BenchTablet>();
        for (var i = 0; i < _plan.Tablets; i++)
        {
            var (name, password) = ($"Cutter {i}", PeopleShelf.DrawPassword());
            await new PeopleShelf(database).AddAsync(name, Role.Cutter, password, "load", cancel);
            tablets.Add(new(Address, i, _plan.BetweenTaps, _notes, name, password));
        }
        return (tablets, [.. Enumerable.Range(_plan.Tablets, _plan.Phones).Select(i => new SitePhone(Address, i, _plan.BetweenPages, _notes, codes))]);
    }

    private static async Task PlanAsync(ShopDatabase database, RopeKind rope, CancellationToken cancel)
    {
        var pieces = database.Read(session => session.Value<long>(
            "SELECT count(*) FROM pieces WHERE material = @material AND diameter_nm = @Diameter", new { material = Rope.NameOf(rope.Material), rope.Diameter }));
        if (pieces == 0)
            return;
        const int PiecesACoil = 80;
        for (var coil = 0; coil <= pieces / PiecesACoil; coil++)
            await new CoilShelf(database).ReceiveAsync(new(rope, "L-1", Length.Foot * 600, "rack"), "load", $"coil {rope} {coil}", cancel);
        var desk = new CutPlanDesk(database);
        var draft = await desk.DraftAsync(rope, dueBy: null, new PlanBudget(TimeSpan.FromSeconds(10), UseSolver: false), "load", cancel: cancel);
        if ((await desk.AcceptAsync(draft.PlanId, "load", cancel)).Problems is [var problem, ..])
            throw new InvalidOperationException(problem.ToString());
    }

    /// <summary>What the stored history says against it.</summary>
    private IEnumerable<string> Stored()
    {
        using (var database = _shop.Open(TimeProvider.System))
        {
            foreach (var twice in database.Read(session => session.All<string>(
                "SELECT what || ' twice: ticket ' || subject_id FROM history WHERE subject = 'cut ticket' AND what IN ('taken-to-bench', 'cut-finished') GROUP BY what, subject_id HAVING count(*) > 1")))
                yield return twice;
            var cut = database.Read(session => session.Value<long>("SELECT count(*) FROM cut_tickets WHERE state = 'cut'"));
            if (cut != _notes.Cut.Count)
                yield return $"{_notes.Cut.Count} pieces were acknowledged as finished, {cut} are";
        }
        foreach (var finding in ShopCheck.Of(_shop, TimeProvider.System))
            yield return finding.ToString();
    }

    private static string JobFile(int number, RopeKind rope)
    {
        var rows = Enumerable.Range(1, RowsAJob).Select(row =>
            $$"""{ "mark": "r{{row}}", "height": "{{3 * row}} in", "sag": "0 in", "start": "stopped", "finish": "stopped" }""");
        return $$"""
            { "number": "LQ-{{number}}", "rope": { "material": "{{Rope.NameOf(rope.Material)}}", "diameter": "{{LengthText.Millimetres(rope.Diameter, 6)}}" }, "allowances": { "shrink": "0%" },
              "lines": [ { "mark": "A",
                "posts": [ { "mark": "A1", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
                           { "mark": "A2", "shape": "square", "across": "5 1/2 in", "height": "42 in" } ],
                "sections": [ { "clear": "72 in" } ],
                "rows": [ {{string.Join(", ", rows)}} ] } ] }
            """;
    }
}
