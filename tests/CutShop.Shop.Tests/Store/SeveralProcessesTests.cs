using System.Collections.Concurrent;
using CutShop.Shop.Tests.Benches;
using CutShop.Testing.Stores;

namespace CutShop.Shop.Tests.Store;

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
        Assert.Equal(Tickets, Count("SELECT count(*) FROM history WHERE what = 'taken-to-bench'"));
        Assert.Equal(Tickets, Count("SELECT count(*) FROM rope_uses WHERE kind = 'piece'"));
        Assert.Equal(0, Count("SELECT count(*) FROM coils WHERE left_nm < 0 OR whole_nm <> left_nm + (SELECT coalesce(sum(nm), 0) FROM rope_uses WHERE coil_id = coils.id)"));
    }

    [Fact]
    public async Task While_one_is_given_the_last_rope_of_a_coil_another_is_not_given_it_too()
    {
        await ManyTickets.FillAsync(_programs[0], 2, coils: 1, Cancel);
        await _programs[0].WriteAsync(session => session.Execute("UPDATE coils SET left_nm = @left", new { left = Length.Inch * 19 }), Cancel);
        var answers = await SlowAndQuickAsync();
        PlannedShop.AssertDone(answers.Slow);
        Assert.StartsWith("No piece can be cut now", answers.Quick.Problem, StringComparison.Ordinal);
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
        Assert.Equal(1, Count("SELECT count(*) FROM history WHERE what = 'taken-to-bench'"));
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
                PlannedShop.AssertDone(await bench.FitsAsync(("LQ-1", answer.Outcome["LQ-1/".Length..]), $"driller {client}", $"{client} fits {i}", Cancel));
            }
        });
        Assert.Equal(Posts, given.Count);
        Assert.Equal(Posts, given.Distinct().Count());
    }

    /// <summary>Whoever reads on from the last line they saw must meet every line, also of a program that was slow to end.</summary>
    [Fact]
    public async Task A_reader_who_keeps_the_last_line_of_the_history_misses_none()
    {
        await ManyTickets.FillAsync(_programs[0], 2, coils: 2, Cancel);
        var (seen, news) = (new List<long>(), new JobFeed(_programs[1]));
        var answers = await SlowAndQuickAsync(Look);
        Look();
        PlannedShop.AssertDone(answers.Slow);
        PlannedShop.AssertDone(answers.Quick);
        Assert.Equal(_programs[0].Read(session => session.All<long>("SELECT id FROM history ORDER BY id")), seen);

        void Look() => seen.AddRange(news.ChangesSince(seen.LastOrDefault(), 100).Select(change => change.Id));
    }

    public void Dispose()
    {
        foreach (var program in _programs)
            program.Dispose();
        _store.Dispose();
    }

    /// <summary>One program stops in the middle of giving a ticket, with its line of history written; then the other is asked for one.</summary>
    /// <param name="meanwhile">Done when the other has had time to answer, before the first goes on.</param>
    private async Task<(BenchAnswer Slow, BenchAnswer Quick)> SlowAndQuickAsync(Action? meanwhile = null)
    {
        using var isInTheMiddle = new SemaphoreSlim(0);
        using var goOn = new SemaphoreSlim(0);
        var statements = 0;
        _programs[0].BeforeEachWrite = () =>
        {
            // The ticket, who took it, its line of history, the request.
            if (++statements != 4)
                return;
            isInTheMiddle.Release();
            goOn.Wait(Cancel);
        };
        var slow = Task.Run(() => new CutBench(_programs[0]).NextAsync("Ada", "Ada pulls", Cancel), Cancel);
        await isInTheMiddle.WaitAsync(Cancel);
        var quick = Task.Run(() => new CutBench(_programs[1]).NextAsync("Cai", "Cai pulls", Cancel), Cancel);
        await Task.WhenAny(quick, Task.Delay(TimeSpan.FromMilliseconds(500), Cancel));
        meanwhile?.Invoke();
        goOn.Release();
        return (await slow, await quick);
    }

    private Task ClientsAsync(Func<ShopDatabase, int, Task> work) =>
        Task.WhenAll(Enumerable.Range(0, Clients).Select(client => Task.Run(() => work(_programs[client % 2], client), Cancel)));

    private long Count(string sql) => _programs[0].Read(session => session.Value<long>(sql));
}
