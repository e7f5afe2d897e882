using System.Globalization;
using CutShop.Testing.Stores;
using Microsoft.Extensions.Time.Testing;

namespace CutShop.Shop.Tests.Orders;

/// <summary>An order desk with a database and a clock of its own, gone when disposed.</summary>
internal sealed class DeskShop : IDisposable
{
    private readonly TestStore _store = new();

    public DeskShop()
    {
        Database = _store.Open(Time);
        Tables = new(Database, ShopTables.Standard);
        Drafts = new(Database);
        Prices = new(Database);
        Quotes = new(Database, Tables);
        Intake = new(Database, Tables);
        Release = new(Database);
        Changing = new(Database, Tables);
        Jobs = new(Database);
    }

    public FakeTimeProvider Time { get; } = new(new DateTimeOffset(2027, 1, 11, 9, 0, 0, TimeSpan.Zero));

    public ShopDatabase Database { get; }

    public ShopTablesShelf Tables { get; }

    public DraftShelf Drafts { get; }

    public PriceBook Prices { get; }

    public QuoteDesk Quotes { get; }

    public DraftIntake Intake { get; }

    public JobRelease Release { get; }

    public JobChanging Changing { get; }

    public JobShelf Jobs { get; }

    public static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>A price list for four posts: rope 2.125 a foot, bores 3.00 and 4.25, 4.50 a piece, 35 packing, 120 delivery, 6.25 % tax.</summary>
    public static PriceList List(DateOnly from, string foot = "2.125") => new(
        0,
        from,
        [new(RopeMaterial.Polypropylene, Length.FromSixtyFourths(96), Money.Parse(foot).OrThrow())],
        [new(Length.FromSixtyFourths(80), Money.Parse("3").OrThrow()), new(Length.FromSixtyFourths(144), Money.Parse("4.25").OrThrow())],
        Money.Parse("4.50").OrThrow(),
        Money.Parse("35").OrThrow(),
        Money.Parse("120").OrThrow(),
        Share.Parse("6.25%").OrThrow(),
        QuoteDays: 30);

    public Task<long> KeepPricesAsync(DateOnly from, string foot = "2.125") =>
        Prices.KeepAsync(List(from, foot), "test", $"prices {from:O} {foot}", Cancel);

    public Task<long> StartAsync(DraftForm form, string key = "a draft") => Drafts.StartAsync(form, "test", key, Cancel);

    /// <summary>A draft, quoted.</summary>
    public async Task<long> QuoteAsync(DraftForm form, string key = "a draft")
    {
        var made = await Quotes.MakeAsync(await StartAsync(form, key), version: 1, "test", Cancel);
        Assert.Null(made.Problem);
        return long.Parse(made.Value, CultureInfo.InvariantCulture);
    }

    /// <summary>A job taken in from a draft and released.</summary>
    public async Task<StoredJob> ReleasedJobAsync(DraftForm form)
    {
        var taken = await Intake.TakeInAsync(await StartAsync(form, $"draft of {form.Number}"), version: 1, "test", Cancel);
        Assert.Null(taken.Problem);
        Assert.Equal(ReleaseOutcome.Done, await Release.ReleaseAsync(taken.Value, "test", Cancel));
        return Jobs.Find(taken.Value)!;
    }

    /// <summary>Marks a piece as cut the way a bench does, without its coil.</summary>
    public Task CutAsync(string run) => ExecuteAsync(
        "UPDATE cut_tickets SET state = 'cut' WHERE piece_id = (SELECT id FROM pieces WHERE run = @run AND dropped_at IS NULL)", new { run });

    /// <summary>Marks a post as drilled.</summary>
    public Task DrillAsync(string mark) => ExecuteAsync(
        "UPDATE drill_tickets SET state = 'drilled' WHERE post_id = (SELECT id FROM posts WHERE mark = @mark)", new { mark });

    public Task<int> ExecuteAsync(string sql, object? values = null) => Database.WriteAsync(session => session.Execute(sql, values), Cancel);

    public IReadOnlyList<T> All<T>(string sql, object? values = null) => Database.Read(session => session.All<T>(sql, values));

    /// <summary>Runs a step again and again with its Nth statement broken, until it runs through; each broken run must leave no trace.</summary>
    /// <returns>How many statements the step has.</returns>
    public async Task<int> BreakEachStatementAsync(Func<Task> step)
    {
        var before = Dump();
        for (var broken = 1; ; broken++)
        {
            var count = 0;
            Database.BeforeEachWrite = () =>
            {
                if (++count == broken)
                    throw new IOException("The disk is gone.");
            };
            try
            {
                await step();
                return count;
            }
            catch (IOException)
            {
                Assert.Equal(before, Dump());
            }
            finally
            {
                Database.BeforeEachWrite = null;
            }
        }
    }

    /// <summary>Everything in the database, as text.</summary>
    public string Dump() => _store.Dump();

    public void Dispose()
    {
        Database.Dispose();
        _store.Dispose();
    }
}
