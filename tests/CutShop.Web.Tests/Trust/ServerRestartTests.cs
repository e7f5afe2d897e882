using System.Collections.Concurrent;
using System.Net;
using CutShop.Testing.Stores;
using CutShop.Testing.Trust;
using CutShop.Web.Tests.Host;

namespace CutShop.Web.Tests.Trust;

/// <summary>The database server goes away and comes back under the running program: that is said, and work goes on without hands.</summary>
public sealed class ServerRestartTests : IDisposable
{
    private const int Clients = 6;

    private readonly PostgresServer _postgres = PostgresServer.OfItsOwn();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task While_it_is_away_people_are_told_and_the_first_requests_afterwards_are_answered()
    {
        using var shop = await StartAsync(_postgres.NewShop());
        await ReadAtOnceAsync(shop, HttpStatusCode.OK);
        var token = await TokenAsync(shop);
        _postgres.Down();
        using (var page = await SendAsync(shop, token, "while it is away"))
        {
            Assert.Equal(HttpStatusCode.ServiceUnavailable, page.StatusCode);
            Assert.Contains("The database server does not answer.", await page.TextAsync(), StringComparison.Ordinal);
            Assert.NotNull(page.Headers.RetryAfter);
        }
        using var watch = new HttpClient { BaseAddress = shop.Client.BaseAddress };
        using (var ready = await watch.AskAsync("/health/ready"))
            Assert.Equal(HttpStatusCode.ServiceUnavailable, ready.StatusCode);
        using (var live = await watch.AskAsync("/health/live"))
            Assert.Equal(HttpStatusCode.OK, live.StatusCode);

        _postgres.Up();
        await ReadAtOnceAsync(shop, HttpStatusCode.OK);
        using (var page = await SendAsync(shop, token, "while it is away"))
            Assert.Equal(HttpStatusCode.Redirect, page.StatusCode);
    }

    [Fact]
    public async Task Connections_that_a_restart_ended_fail_nobody()
    {
        using var shop = await StartAsync(_postgres.NewShop());
        await ReadAtOnceAsync(shop, HttpStatusCode.OK);
        _postgres.Down();
        _postgres.Up();
        await ReadAtOnceAsync(shop, HttpStatusCode.OK);
    }

    [Fact]
    public async Task What_is_being_written_when_it_restarts_is_done_or_said_and_counts_once_when_it_is_sent_again()
    {
        var connection = _postgres.NewShop();
        using var shop = await StartAsync(connection);
        var token = await TokenAsync(shop);
        var (statuses, acknowledged, isOver) = (new ConcurrentDictionary<HttpStatusCode, int>(), new ConcurrentBag<string>(), false);
        var work = Task.WhenAll(Enumerable.Range(0, Clients).Select(client => Task.Run(
            async () =>
            {
                for (var i = 0; !Volatile.Read(ref isOver); i++)
                {
                    HttpStatusCode status;
                    do
                    {
                        using var answer = await SendAsync(shop, token, $"{client} {i}");
                        status = answer.StatusCode;
                        statuses.AddOrUpdate(status, 1, (_, count) => count + 1);
                    }
                    while (status == HttpStatusCode.ServiceUnavailable);
                    acknowledged.Add($"{client} {i}");
                }
            },
            Cancel)));
        for (var restart = 0; restart < 3; restart++)
        {
            var before = acknowledged.Count;
            while (acknowledged.Count < before + 20)
                await Task.Delay(TimeSpan.FromMilliseconds(5), Cancel);
            _postgres.Down();
            _postgres.Up();
        }
        Volatile.Write(ref isOver, true);
        await work;
        Assert.Empty(statuses.Keys.Except([HttpStatusCode.Redirect, HttpStatusCode.ServiceUnavailable]));
        Assert.True(statuses.ContainsKey(HttpStatusCode.ServiceUnavailable));
        using var database = ShopDatabase.OpenOnServer(connection, shop.Folder, TimeProvider.System);
        Assert.Equal(acknowledged.Count, new CoilShelf(database).InHand().Count);
    }

    public void Dispose() => _postgres.Dispose();

    private static async Task<ServedShop> StartAsync(string connection)
    {
        var shop = await ServedShop.StartAsync(new Dictionary<string, string> { ["CUTSHOP_DATABASE"] = connection });
        await shop.SetUpAsync("Ada", "rope and timber 42");
        return shop;
    }

    /// <summary>Reads by as many at once as there are connections kept.</summary>
    private static async Task ReadAtOnceAsync(ServedShop shop, HttpStatusCode expected) =>
        Assert.All(await Task.WhenAll(Enumerable.Range(0, Clients).Select(_ => StatusAsync(shop, "/stock"))), status => Assert.Equal(expected, status));

    private static async Task<HttpStatusCode> StatusAsync(ServedShop shop, string address)
    {
        using var answer = await shop.Client.AskAsync(address);
        return answer.StatusCode;
    }

    private static async Task<string> TokenAsync(ServedShop shop) => PageText.TokenIn(await shop.Client.GetStringAsync(new Uri("/stock", UriKind.Relative), Cancel));

    private static async Task<HttpResponseMessage> SendAsync(ServedShop shop, string token, string key)
    {
        using var form = new FormUrlEncodedContent(new Dictionary<string, string>
        {
            ["__RequestVerificationToken"] = token,
            ["RequestKey"] = key,
            ["Material"] = "Manila",
            ["Diameter"] = "1 in",
            ["Construction"] = "three-strand",
            ["Lot"] = "L1",
            ["CoilLength"] = "90 ft",
            ["Place"] = "",
        });
        return await shop.Client.PostAsync(new Uri("/stock", UriKind.Relative), form, Cancel);
    }
}
