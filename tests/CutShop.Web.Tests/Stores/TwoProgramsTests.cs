using System.Collections.Concurrent;
using System.Net;
using CutShop.Testing.Stores;
using CutShop.Testing.Trust;

namespace CutShop.Web.Tests.Stores;

/// <summary>Two programs, each a process, serve one shop: one database on a server, and one folder.</summary>
public sealed class TwoProgramsTests : IDisposable
{
    private const int Cutters = 12;
    private const int Tickets = 120;
    private const string Password = "a long enough word to sign in";

    private readonly TestStore _store = TestStore.OnServer();
    private readonly ShopDatabase _database;

    public TwoProgramsTests() => _database = _store.Open();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Cutters_who_tap_now_at_one_and_now_at_the_other_are_given_each_piece_once()
    {
        await ManyTickets.FillAsync(_database, Tickets, coils: 16, Cancel);
        foreach (var cutter in Enumerable.Range(0, Cutters))
            Assert.True((await new PeopleShelf(_database).AddAsync($"Cutter {cutter}", Role.Cutter, Password, "test", Cancel)).IsDone);
        var programs = await Task.WhenAll(Enumerable.Range(0, 2).Select(_ => StartAsync()));
        try
        {
            var given = new ConcurrentBag<string>();
            await Task.WhenAll(Enumerable.Range(0, Cutters).Select(cutter => Task.Run(() => CutAsync(programs, cutter, given), Cancel)));
            Assert.Equal(Tickets, given.Count);
            Assert.Equal(Tickets, given.Distinct().Count());
            Assert.Equal(Tickets, _database.Read(session => session.Value<long>("SELECT count(*) FROM cut_tickets WHERE state = 'cut'")));
        }
        finally
        {
            foreach (var program in programs)
                program.Dispose();
        }
    }

    public void Dispose()
    {
        _database.Dispose();
        _store.Dispose();
    }

    private Task<ServerProcess> StartAsync()
    {
        var program = ServerProcess.Command("serve", "--shop", _store.Folder, "--listen", "http://127.0.0.1:0");
        program.Environment["CUTSHOP_DATABASE"] = _store.Connection;
        return ServerProcess.StartAsync(program);
    }

    /// <summary>Signs in at one program, then pulls piece after piece, at the two in turn, until none waits.</summary>
    private async Task CutAsync(ServerProcess[] programs, int cutter, ConcurrentBag<string> given)
    {
        var cookies = new CookieContainer();
        var clients = programs.Select(program => new HttpClient(new HttpClientHandler { CookieContainer = cookies, AllowAutoRedirect = false }) { BaseAddress = program.Address }).ToArray();
        using var signedIn = await clients[cutter % 2].SendFormAsync("/sign-in", ("name", $"Cutter {cutter}"), ("password", Password));
        Assert.Equal(HttpStatusCode.Redirect, signedIn.StatusCode);
        for (var i = 0; ; i++)
        {
            using var answer = await clients[(cutter + i) % 2].SendFormAsync("/cut?handler=Next", ("key", $"{cutter} pulls {i}"));
            if (answer.StatusCode == HttpStatusCode.OK)
                break;
            var code = answer.Headers.Location!.OriginalString["/cut/".Length..];
            given.Add(code);
            Assert.Null((await new CutBench(_database).RecordCutAsync(PieceCode.Parse(code).OrThrow(), $"Cutter {cutter}", $"{cutter} cuts {i}", Cancel)).Problem);
        }
        foreach (var client in clients)
            client.Dispose();
    }
}
