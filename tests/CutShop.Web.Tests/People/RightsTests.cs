using System.Net;
using Microsoft.AspNetCore.Routing;

namespace CutShop.Web.Tests.People;

/// <summary>Every route of the site, tried by everyone, against one table.</summary>
public sealed class RightsTests
{
    /// <summary>Who may use each route: O owner, D desk, C cutter, B driller (who bores), A anyone without signing in; R and T keys that read and take in.</summary>
    private static readonly Dictionary<string, string> Table = new()
    {
        ["GET assets/{tag}/{name}"] = "ODCBA",
        ["GET health/live"] = "ODCBA",
        ["GET health/ready"] = "ODCBA",
        ["GET p"] = "ODCBA",
        ["GET p/{code}"] = "ODCBA",
        ["GET p/{code}/line"] = "ODCBA",
        ["GET p/{code}/bores"] = "ODCBA",
        ["GET p/{code}/bored"] = "ODCBA",
        ["GET p/{code}/set-out"] = "ODCBA",
        ["GET p/{code}/measure"] = "ODCBA",
        ["GET p/{code}/installed"] = "ODCBA",
        ["GET p/{code}/report"] = "ODCBA",
        ["GET language/{tag}"] = "ODCBA",
        ["GET trouble"] = "ODCBA",
        ["GET no-network"] = "ODCBA",
        ["GET worker.js"] = "ODCBA",
        ["GET s/{code}"] = "ODCBA",
        ["GET s/{code}/pages"] = "ODCBA",
        ["GET s/{code}/codes"] = "ODCBA",
        ["GET s/{code}/pack.html"] = "ODCBA",
        ["GET s/{code}/pack.pdf"] = "ODCBA",
        ["GET jobs/{number}/site-pack"] = "ODCB",
        ["GET sign-in"] = "ODCBA",
        ["GET sign-out"] = "ODCBA",
        ["GET set-up/{token}"] = "ODCBA",

        ["GET "] = "ODCB",
        ["GET jobs/{number}"] = "ODCB",
        ["POST jobs/{number}"] = "OD",
        ["GET jobs/{number}/{kind:regex(^(summary|cut-tickets|drill-tickets)$)}"] = "ODCB",
        ["GET jobs/{number}/{kind}.pdf"] = "ODCB",
        ["GET jobs/{number}/labels.pdf"] = "ODCB",
        ["GET jobs/{number}/post-labels.pdf"] = "ODCB",
        ["GET jobs/{number}/history"] = "ODCB",
        ["GET stock"] = "ODCB",
        ["POST stock"] = "ODC",
        ["GET stock/surplus"] = "ODCB",
        ["POST stock/surplus"] = "ODC",
        ["GET stock/labels.pdf"] = "ODCB",
        ["GET stock/{mark}/label.pdf"] = "ODCB",
        ["GET stock/{mark}"] = "ODCB",
        ["POST stock/{mark}"] = "ODC",
        ["GET plans"] = "ODCB",
        ["POST plans"] = "ODC",
        ["GET plans/{id:long}"] = "ODCB",
        ["POST plans/{id:long}"] = "ODC",
        ["GET plans/search/{id:long}"] = "ODCB",
        ["POST plans/search/{id:long}"] = "ODC",
        ["GET plans/{id:long}.pdf"] = "ODCB",
        ["GET plans/{id:long}.svg"] = "ODCB",
        ["GET settings"] = "OD",
        ["GET settings/cutting"] = "OD",
        ["GET settings/benches"] = "OD",
        ["GET settings/sending"] = "OD",
        ["GET settings/address"] = "OD",
        ["GET settings/desk"] = "OD",
        ["GET jobs/{number}/labels"] = "ODCB",
        ["POST jobs/{number}/labels"] = "OD",
        ["GET reports"] = "ODCB",
        ["POST reports"] = "OD",
        ["GET reports/{id:long}/photo"] = "ODCB",
        ["GET settings/letterhead"] = "OD",

        ["GET cut"] = "ODCB",
        ["POST cut"] = "OC",
        ["GET cut/{code}"] = "ODCB",
        ["POST cut/{code}"] = "OC",
        ["GET cut/{code}/ticket.pdf"] = "ODCB",
        ["GET drill/{job}/{post}/ticket.pdf"] = "ODCB",
        ["GET drill/{job}/{post}/label.pdf"] = "ODCB",
        ["GET jobs/by-rules"] = "OD",
        ["GET jobs/{number}/by-rules"] = "OD",
        ["GET drill"] = "ODCB",
        ["POST drill"] = "OB",
        ["GET drill/bits"] = "ODCB",
        ["GET drill/{job}/{post}"] = "ODCB",
        ["POST drill/{job}/{post}"] = "OB",
        ["GET pack"] = "ODCB",
        ["GET pack/{job}"] = "ODCB",
        ["GET pack/{job}/list"] = "ODCB",
        ["GET pack/{job}/list.pdf"] = "ODCB",
        ["GET scan"] = "ODCB",
        ["GET board"] = "ODCB",
        ["GET board.csv"] = "ODCB",
        ["GET board/news"] = "ODCB",

        ["GET drafts"] = "OD",
        ["GET drafts/new"] = "OD",
        ["GET drafts/{id:long}/{handler:regex(^(preview|plan|save|merge|reopen)$)?}"] = "OD",
        ["GET drafts/{id:long}/change"] = "OD",
        ["GET quotes/{id:long}"] = "OD",
        ["GET quotes/{id:long}.pdf"] = "OD",
        ["GET prices"] = "OD",
        ["GET prices/new"] = "OD",
        ["GET bits/{handler:regex(^(hang|takeoff)$)?}"] = "ODCB",
        ["POST bits/{handler:regex(^(hang|takeoff)$)?}"] = "OD",
        ["GET jobs/{number}/cancel"] = "OD",
        ["GET jobs/{number}/{handler:regex(^(release|takeback|takeup|change|copy)$)}"] = "OD",
        ["GET p/{code}/dropped"] = "ODCBA",

        ["GET me"] = "ODCB",
        ["GET people"] = "O",
        ["GET people/{id:long}"] = "O",
        ["GET tablets"] = "OD",
        ["GET keys"] = "O",

        ["GET api/openapi.json"] = "ODCBRT",
        ["GET api/jobs"] = "RT",
        ["POST api/jobs"] = "T",
        ["POST api/jobs/csv"] = "T",
        ["GET api/jobs/{number}"] = "RT",
        ["GET api/jobs/{number}/takeoff"] = "RT",
        ["GET api/jobs/{number}/tickets"] = "RT",
        ["GET api/jobs/{number}/tickets.pdf"] = "RT",
        ["GET api/jobs/{number}/labels"] = "RT",
        ["GET api/jobs/{number}/labels.pdf"] = "RT",
        ["GET api/jobs/{number}/pieces.csv"] = "RT",
        ["GET api/jobs/{number}/bores.csv"] = "RT",
        ["GET api/jobs/{number}/fixings.csv"] = "RT",
        ["GET api/changes"] = "RT",
    };

    private static readonly (char Letter, Role Role)[] Roles = [('O', Role.Owner), ('D', Role.Desk), ('C', Role.Cutter), ('B', Role.Driller)];

    [Fact]
    public async Task Every_route_answers_each_role_and_each_key_as_the_one_table_says()
    {
        await using var shop = await RunningShop.StartAsync();
        var callers = new List<(char Letter, HttpClient Client)> { ('A', shop.NewClient()) };
        foreach (var (letter, role) in Roles)
            callers.Add((letter, await shop.SignInAsync(role, follow: false)));
        callers.Add(('R', await shop.WithKeyAsync(KeyScope.Read)));
        callers.Add(('T', await shop.WithKeyAsync(KeyScope.TakeIn)));

        var wrong = new List<string>();
        var seen = new HashSet<string>();
        foreach (var (method, route) in shop.Routes.SelectMany(Methods))
        {
            var key = $"{method} {route.RoutePattern.RawText?.TrimStart('/')}";
            seen.Add(key);
            if (!Table.TryGetValue(key, out var allowed) && !Table.TryGetValue($"GET{key[method.Length..]}", out allowed))
            {
                wrong.Add($"{key}: no row");
                continue;
            }
            foreach (var (letter, client) in callers)
            {
                var isAllowed = allowed.Contains(letter, StringComparison.Ordinal) || (letter is 'R' or 'T' && allowed.Contains('A', StringComparison.Ordinal));
                using var request = new HttpRequestMessage(new HttpMethod(method), AddressOf(route));
                using var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
                if (isAllowed == IsRefusal(answer))
                    wrong.Add($"{key}: {letter} got {(int)answer.StatusCode} {answer.Headers.Location}");
            }
        }
        Assert.Empty(wrong);
        Assert.Empty(Table.Keys.Except(seen));
    }

    [Fact]
    public async Task A_route_that_is_not_there_is_shut_to_strangers_too()
    {
        await using var shop = await RunningShop.StartAsync();
        using var page = await shop.Stranger.AskAsync("/no-such-page");
        Assert.Equal("/sign-in?back=%2Fno-such-page", page.Headers.Location!.OriginalString);
        using var api = await shop.Stranger.AskAsync("/api/no-such-thing");
        Assert.Equal(HttpStatusCode.Unauthorized, api.StatusCode);
    }

    [Fact]
    public async Task What_asks_for_a_password_is_shut_to_an_owner_who_signed_in_by_pin()
    {
        await using var shop = await RunningShop.StartAsync();
        var tablet = await Bench.EnrolAsync(shop);
        await shop.People.SetPinAsync(shop.People.Find(RunningShop.NameOf(Role.Owner))!.Id, "4071", "test", TestContext.Current.CancellationToken);
        using var signedIn = await tablet.SendFormAsync("/sign-in", ("name", RunningShop.NameOf(Role.Owner)), ("pin", "4071"));
        foreach (var (address, status) in new[]
        {
            ("/stock", HttpStatusCode.OK), ("/settings/cutting", HttpStatusCode.OK),
            ("/people", HttpStatusCode.Forbidden), ("/keys", HttpStatusCode.Forbidden), ("/tablets", HttpStatusCode.Forbidden),
        })
        {
            using var answer = await tablet.AskAsync(address);
            Assert.Equal(status, answer.StatusCode);
        }
    }

    /// <summary>A page answers both; where the table has no row for sending, sending is as reading.</summary>
    private static IEnumerable<(string Method, RouteEndpoint Route)> Methods(RouteEndpoint route) =>
        route.Metadata.GetMetadata<IHttpMethodMetadata>() is { } methods
            ? methods.HttpMethods.Select(method => (method, route))
            : [("GET", route), ("POST", route)];

    /// <summary>An address of a route, with something in each of its places.</summary>
    internal static string AddressOf(RouteEndpoint route) => "/" + string.Concat((route.RoutePattern.RawText ?? "").TrimStart('/')
        .Replace("{number}", "none", StringComparison.Ordinal)
        .Replace("{kind:regex(^(summary|cut-tickets|drill-tickets)$)}", "summary", StringComparison.Ordinal)
        .Replace("{kind}", "summary", StringComparison.Ordinal)
        .Replace("{id:long}", "1", StringComparison.Ordinal)
        .Replace("{handler:regex(^(preview|plan|save|merge|reopen)$)?}", "save", StringComparison.Ordinal)
        .Replace("{handler:regex(^(hang|takeoff)$)?}", "hang", StringComparison.Ordinal)
        .Replace("{handler:regex(^(release|takeback|takeup|change|copy)$)}", "release", StringComparison.Ordinal)
        .Replace("{mark}", "none", StringComparison.Ordinal)
        .Replace("{code}", "none", StringComparison.Ordinal)
        .Replace("{tag}", "none", StringComparison.Ordinal)
        .Replace("{name}", "none", StringComparison.Ordinal)
        .Replace("{token}", "none", StringComparison.Ordinal));

    private static bool IsRefusal(HttpResponseMessage answer) =>
        answer.StatusCode is HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden
        || (answer.StatusCode == HttpStatusCode.Redirect && answer.Headers.Location!.OriginalString.Contains("/sign-in?", StringComparison.Ordinal));
}
