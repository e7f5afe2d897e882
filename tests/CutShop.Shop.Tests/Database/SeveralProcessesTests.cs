using System.Collections.Concurrent;
using CutShop.Shop.Tests.Benches;
using CutShop.Takeoff;

namespace CutShop.Shop.Tests.Database;

/// <summary>Two programs on one server. Each has its own <see cref="ShopDatabase"/>, so nothing but the server keeps them apart.</summary>
public sealed class SeveralProcessesTests : IDisposable
{
    private const int Clients = 32;
    private const int Tickets = 800;

    private readonly TestStore _store = TestStore.OnServer();
    private readonly ShopDatabase[] _programs;

    public SeveralProcessesTests() => _programs = [_store.Open(), _store.Open()];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>Two coils are few for 32 cutters, who get in each other's way; forty are many.</summary>
    [Theory]
    [InlineData(40)]
    [InlineData(2)]
    public async Task Thirty_two_cutters_at_two_programs_are_given_each_piece_once_and_never_more_rope_than_there_is(int coils)
    {
        await ManyTickets.FillAsync(_programs[0], Tickets, coils, Cancel);
        var given = new ConcurrentBag<PieceCode>();
        await ClientsAsync(async (program, client) =>
        {
            var bench = new CutBench(program);
            for (var i = 0; i <= Tickets; i++)
            {
                var answer = await bench.NextAsync($"cutter {client}", $"{client} pulls {i}", Cancel);
                if (!answer.IsDone)
                    return;
                given.Add(PieceCode.Parse(answer.Outcome).OrThrow());
                PlannedShop.AssertDone(await bench.RecordCutAsync(PieceCode.Parse(answer.Outcome).OrThrow(), $"cutter {client}", $"{client} cuts {i}", Cancel));
            }
        });
        Assert.Equal(Tickets, given.Count);
        Assert.Equal(Tickets, given.Distinct().Count());
        Assert.Equal(Tickets, Count("SELECT count(*) FROM history WHERE what = 'taken to the bench'"));
        Assert.Equal(Tickets, Count("SELECT count(*) FROM rope_uses WHERE kind = 'piece'"));
        Assert.Equal(0, Count("SELECT count(*) FROM coils WHERE left_nm < 0 OR whole_nm <> left_nm + (SELECT coalesce(sum(nm), 0) FROM rope_uses WHERE coil_id = coils.id)"));
    }

    [Fact]
    public async Task Cutters_who_pull_at_once_from_a_coil_that_has_rope_for_few_are_given_no_more_than_it_has()
    {
        const int Room = 5;
        await ManyTickets.FillAsync(_programs[0], 100, coils: 1, Cancel);
        await _programs[0].WriteAsync(session => session.Execute("UPDATE coils SET left_nm = @left", new { left = Length.Inch * (Room * 10 + 9) }), Cancel);
        var given = new ConcurrentBag<string>();
        await ClientsAsync(async (program, client) =>
        {
            var answer = await new CutBench(program).NextAsync($"cutter {client}", $"{client} pulls", Cancel);
            if (answer.IsDone)
                given.Add(answer.Outcome);
        });
        Assert.Equal(Room, given.Distinct().Count());
        Assert.Equal(Room, given.Count);
    }

    [Fact]
    public async Task One_person_who_pulls_at_many_tablets_at_once_has_one_ticket()
    {
        await ManyTickets.FillAsync(_programs[0], 100, coils: 20, Cancel);
        var given = new ConcurrentBag<string>();
        await ClientsAsync(async (program, client) => given.Add((await new CutBench(program).NextAsync("Cai", $"{client} pulls", Cancel)).Outcome));
        Assert.Single(given.Distinct());
        Assert.Equal(1, Count("SELECT count(*) FROM cut_tickets WHERE state = 'at the bench'"));
    }

    [Fact]
    public async Task A_tap_that_arrives_at_both_programs_counts_once()
    {
        await ManyTickets.FillAsync(_programs[0], 10, coils: 1, Cancel);
        await ClientsAsync(async (program, _) => PlannedShop.AssertDone(await new CutBench(program).NextAsync("Cai", "the same tap", Cancel)));
        Assert.Equal(1, Count("SELECT count(*) FROM history WHERE what = 'taken to the bench'"));
        Assert.Equal(1, Count("SELECT count(*) FROM requests"));
    }

    [Fact]
    public async Task Drillers_at_two_programs_are_given_each_post_once()
    {
        const int Posts = 200;
        await _programs[0].WriteAsync(
            session =>
            {
                session.Execute("INSERT INTO jobs (number, customer, one_lot, job_file, taken_in_at, released_at) VALUES ('LQ-1', '', 0, '{}', @Now, @Now)", new { session.Now });
                session.Execute("INSERT INTO posts (job_id, position, mark) VALUES (1, @i, @mark)", Enumerable.Range(1, Posts).Select(i => new { i, mark = $"A{i}" }));
                return session.Execute("INSERT INTO drill_tickets (post_id, state) SELECT id, 'waiting' FROM posts ORDER BY id");
            },
            Cancel);
        var given = new ConcurrentBag<string>();
        await ClientsAsync(async (program, client) =>
        {
            var bench = new DrillBench(program);
            for (var i = 0; i <= Posts; i++)
            {
                var answer = await bench.NextAsync($"driller {client}", $"{client} pulls {i}", Cancel);
                if (!answer.IsDone)
                    return;
                given.Add(answer.Outcome);
                PlannedShop.AssertDone(await bench.FitsAsync("LQ-1", answer.Outcome["LQ-1/".Length..], $"driller {client}", $"{client} fits {i}", Cancel));
            }
        });
        Assert.Equal(Posts, given.Count);
        Assert.Equal(Posts, given.Distinct().Count());
    }

    /// <summary>Whoever reads on from the last line they saw must meet every line, though many write at once.</summary>
    [Fact]
    public async Task A_reader_who_keeps_the_last_line_of_the_history_misses_none()
    {
        await ManyTickets.FillAsync(_programs[0], Tickets, coils: 40, Cancel);
        using var done = new CancellationTokenSource();
        var reader = Task.Run(
            () =>
            {
                var (seen, news) = (new List<long>(), new JobNews(_programs[1]));
                for (var isLast = false; !isLast;)
                {
                    isLast = done.IsCancellationRequested;
                    seen.AddRange(news.ChangesSince(seen.LastOrDefault(), 10_000).Select(change => change.Id));
                }
                return seen;
            },
            Cancel);
        await ClientsAsync(async (program, client) =>
        {
            for (var i = 0; i < 5; i++)
                PlannedShop.AssertDone(await new CutBench(program).NextAsync($"cutter {client} {i}", $"{client} pulls {i}", Cancel));
        });
        await done.CancelAsync();
        Assert.Equal(_programs[0].Read(session => session.All<long>("SELECT id FROM history ORDER BY id")), await reader);
    }

    public void Dispose()
    {
        foreach (var program in _programs)
            program.Dispose();
        _store.Dispose();
    }

    private Task ClientsAsync(Func<ShopDatabase, int, Task> work) =>
        Task.WhenAll(Enumerable.Range(0, Clients).Select(client => Task.Run(() => work(_programs[client % 2], client), Cancel)));

    private long Count(string sql) => _programs[0].Read(session => session.Value<long>(sql));
}
