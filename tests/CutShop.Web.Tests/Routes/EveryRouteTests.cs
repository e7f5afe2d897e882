using System.Net;
using CutShop.Web.Tests.Benches;

namespace CutShop.Web.Tests.Routes;

/// <summary>
/// Every route of the site, as the site's own table of routes lists them: each method, handler, caller and odd value. None ends in an
/// error of the server, and none lets anybody do more than the table of rights says. A route that is added is tried too.
/// </summary>
public sealed class EveryRouteTests
{
    private static readonly string Long = new('a', 3000);

    /// <summary>Values that no form of the site sends, as they are typed.</summary>
    private static readonly string[] Odd =
    [
        "", "\t", "é", "\U0001F9F5", "\r\n/", "-1", "9223372036854775808", "1'\"<b>", "a/b", Long,
    ];

    private static readonly string[] OddBodies = ["", "null", "[]", "{}", "\"", "{\"number\":\"\u0000\"}", "\uFEFF{", "a=b", Long];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task No_method_or_handler_of_any_route_lets_anybody_do_more_than_the_table_of_rights_says()
    {
        await using var shop = await RunningShop.StartAsync();
        var values = await ValuesAsync(shop);
        var routes = await SiteRoute.AllAsync(shop.Services, shop.Routes);
        var (wrong, tried) = (new List<string>(), 0);
        foreach (var (name, role, key) in Callers())
        {
            await using var caller = new RouteCaller(shop, role, key);
            foreach (var (route, call) in routes.SelectMany(route => route.Calls, (route, call) => (route, call)))
            {
                var isLetIn = route.LetsIn(role, key, call.Method);
                foreach (var handler in Handlers(call))
                {
                    var lines = Lines(shop);
                    var (status, to) = await caller.SendAsync(call.Method, route.Address(place => Uri.EscapeDataString(values(route, place))), handler, []);
                    tried++;
                    if (status >= HttpStatusCode.InternalServerError || (!isLetIn && (!IsRefusal(status, to) || Lines(shop) != lines)))
                        wrong.Add($"{name}: {call.Method} {route} {handler}: {(int)status} {to}");
                }
            }
        }
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
        Assert.True(tried > 3000, $"{tried} requests");
    }

    [Fact]
    public async Task No_odd_value_in_an_address_a_query_a_form_or_a_body_ends_in_an_error_of_the_server()
    {
        await using var shop = await RunningShop.StartAsync();
        var values = await ValuesAsync(shop);
        var routes = await SiteRoute.AllAsync(shop.Services, shop.Routes);
        var another = shop.AllJobs()[^1].Number;
        await using var owner = new RouteCaller(shop, Role.Owner, key: null);
        await using var program = new RouteCaller(shop, role: null, KeyScope.TakeIn);
        var (wrong, tried) = (new List<string>(), 0);
        foreach (var (route, call) in routes.SelectMany(route => route.Calls, (route, call) => (route, call)))
        {
            var caller = route.LetsIn(Role.Owner, key: null, call.Method) ? owner : program;
            var usual = route.Address(place => Uri.EscapeDataString(values(route, place)));
            foreach (var odd in call.Method is "GET" or "POST" ? route.Places.SelectMany(_ => Odd.Append(another), (place, value) => (place, value)) : [])
                await TryAsync(route.Address(place => Uri.EscapeDataString(place == odd.place ? odd.value : values(route, place))), [], body: null, $"{odd.place}={odd.value}");
            foreach (var (field, value) in call.Fields.Where(field => !route.Places.Contains(field.Name)).SelectMany(_ => Odd.Append(another), (field, value) => (field, value)))
                await TryAsync(usual, [.. call.Fields.Select(one => (one.Name, one == field ? value : UsualOf(one.Type)))], body: null, $"{field.Name}={value}");
            foreach (var body in call.Method is "POST" && call.Handler is null ? OddBodies : [])
            {
                foreach (var type in new[] { "application/json", "text/csv", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x", "" })
                    await TryAsync(usual, [], (type, body), $"{type}: {body}");
            }

            async Task TryAsync(string address, IReadOnlyList<(string, string)> fields, (string Type, string Text)? body, string what)
            {
                var (status, _) = await caller.SendAsync(call.Method, address, call.Handler, fields, body);
                tried++;
                if (status >= HttpStatusCode.InternalServerError)
                    wrong.Add($"{call.Method} {route} {call.Handler} with {what[..Math.Min(what.Length, 60)]}: {(int)status}");
            }
        }
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
        Assert.True(tried > 3000, $"{tried} requests");
    }

    private static IEnumerable<(string Name, Role? Role, KeyScope? Key)> Callers()
    {
        yield return ("a stranger", null, null);
        foreach (var scope in Enum.GetValues<KeyScope>())
            yield return ($"a {ApiKeyShelf.NameOf(scope)} key", null, scope);
        // The owner comes last: what an owner does may end others' work.
        foreach (var role in Enum.GetValues<Role>().OrderByDescending(role => role))
            yield return (RoleNames.NameOf(role), role, null);
    }

    /// <summary>The call's own handler, and for a method without one a handler that no page has.</summary>
    private static IEnumerable<string?> Handlers(RouteCall call) => call.Handler is null ? [null, "nonesuch"] : [call.Handler];

    private static bool IsRefusal(HttpStatusCode status, string? to) =>
        status is HttpStatusCode.BadRequest or HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden or HttpStatusCode.NotFound or HttpStatusCode.MethodNotAllowed
        || (status == HttpStatusCode.Redirect && to?.StartsWith("/sign-in?back=", StringComparison.Ordinal) == true);

    private static long Lines(RunningShop shop) => shop.Database.Read(session => session.Value<long>("SELECT count(*) FROM history"));

    private static string UsualOf(Type type) =>
        type == typeof(string) ? "a"
        : type == typeof(bool) ? "true"
        : type == typeof(DateOnly) ? "2027-03-01"
        : type.IsEnum ? Enum.GetNames(type)[0]
        : "1";

    /// <summary>A shop with something behind every kind of address, and what stands in a place so that something is found.</summary>
    private static async Task<Func<SiteRoute, string, string>> ValuesAsync(RunningShop shop)
    {
        var job = await shop.PlanDemoAsync();
        await shop.TakeInDemoAsync("lq-1043-beach-ramp.json");
        var pack = await new SitePackShelf(shop.Database).CodeOfAsync(job.Number, "test", Cancel);
        var coil = new CoilShelf(shop.Database).InHand()[0].Mark;
        var post = job.Takeoff.Bores[0].Post.Mark;
        return (route, place) => route.WordFor(place) ?? (place switch
        {
            "number" or "job" => job.Number,
            "code" when route.ToString().StartsWith("/s/", StringComparison.Ordinal) => pack!.Value.Plain,
            "code" => job.Codes[0].Plain,
            "post" => post,
            "mark" => coil,
            _ => "1",
        });
    }
}
