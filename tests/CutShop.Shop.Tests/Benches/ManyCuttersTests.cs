using System.Collections.Concurrent;
using CutShop.Testing.Stores;

namespace CutShop.Shop.Tests.Benches;

public sealed class ManyCuttersTests : IDisposable
{
    private const int Clients = 32;
    private const int Coils = 40;

    // A server answers each statement over a connection.
    private static readonly int Tickets = TestStore.IsOnServer ? 1_000 : 10_000;

    private readonly ShopOnDisk _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Thirty_two_clients_pull_thousands_of_tickets_and_each_is_given_once()
    {
        await ManyTickets.FillAsync(_shop.Database, Tickets, Coils, Cancel);
        var bench = new CutBench(_shop.Database);
        var given = new ConcurrentBag<PieceCode>();
        await Task.WhenAll(Enumerable.Range(0, Clients).Select(client => Task.Run(
            async () =>
            {
                // Each pulls until nothing waits; no client can pull more than there is.
                for (var i = 0; i <= Tickets; i++)
                {
                    var answer = await bench.NextAsync($"cutter {client}", $"{client} pulls {i}", Cancel);
                    if (!answer.IsDone)
                        return;
                    var code = PieceCode.Parse(answer.Outcome).OrThrow();
                    given.Add(code);
                    PlannedShop.AssertDone(await bench.RecordCutAsync(code, $"cutter {client}", $"{client} cuts {i}", Cancel));
                }
            },
            Cancel)));
        Assert.Equal(Tickets, given.Count);
        Assert.Equal(Tickets, given.Distinct().Count());
        Assert.Equal(Tickets, _shop.Database.Read(session => session.Value<long>("SELECT count(*) FROM cut_tickets WHERE state = 'cut'")));
        Assert.Equal(Tickets, _shop.Database.Read(session => session.Value<long>("SELECT count(*) FROM history WHERE what = 'taken-to-bench'")));
        Assert.Equal(Tickets, _shop.Database.Read(session => session.Value<long>("SELECT count(*) FROM rope_uses WHERE kind = 'piece'")));
    }

    public void Dispose() => _shop.Dispose();
}
