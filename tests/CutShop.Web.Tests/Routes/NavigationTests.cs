using System.Text.RegularExpressions;

namespace CutShop.Web.Tests.Routes;

public sealed class NavigationTests
{
    private const string Main = "<nav aria-label=\"Main\">(?<links>.*?)</nav>";
    private const string Station = "<nav class=\"station\" aria-label=\"[^\"]*\">(?<links>.*?)</nav>";

    [Theory]
    [InlineData(Role.Owner, "Orders, Stock, Benches, Site, Board, Settings", "Cut, Drill, Pack")]
    [InlineData(Role.Desk, "Orders, Stock, Benches, Site, Board, Settings", "Cut, Drill, Pack")]
    [InlineData(Role.Cutter, "Jobs, Stock, Benches, Site, Board", "Cut, Pack")]
    [InlineData(Role.Driller, "Jobs, Stock, Benches, Site, Board", "Drill, Pack")]
    public async Task The_bar_has_at_most_six_entries_and_each_role_sees_its_own(Role role, string entries, string benches)
    {
        await using var shop = await RunningShop.StartAsync();
        var client = await shop.SignInAsync(role);
        var seen = LinksIn(await client.GetStringAsync(new Uri("/stock", UriKind.Relative), TestContext.Current.CancellationToken), Main);
        Assert.Equal(entries, string.Join(", ", seen.Select(link => link.Name)));
        Assert.InRange(seen.Count, 1, 6);
        Assert.Equal(benches.Split(", ")[0].ToLowerInvariant(), seen.Single(link => link.Name == "Benches").Address[1..]);
        foreach (var (_, address) in seen)
        {
            using var page = await client.AskAsync(address);
            Assert.Equal((address, System.Net.HttpStatusCode.OK), (address, page.StatusCode));
        }
    }

    [Fact]
    public async Task Below_the_bar_stand_the_pages_of_the_station_and_the_one_that_is_shown()
    {
        await using var shop = await RunningShop.StartAsync();
        var page = await shop.Client.GetStringAsync(new Uri("/plans", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal([("Coils", "/stock"), ("Cut plans", "/plans"), ("Bits", "/bits")], LinksIn(page, Station));
        Assert.Contains("<a href=\"/plans\" aria-current=\"page\">", page, StringComparison.Ordinal);
        Assert.Contains("<a href=\"/stock\" aria-current=\"true\">Stock", page, StringComparison.Ordinal);
        Assert.Empty(LinksIn(await shop.Client.GetStringAsync(new Uri("/board", UriKind.Relative), TestContext.Current.CancellationToken), Station));
    }

    [Fact]
    public async Task A_fresh_shop_lists_what_to_set_up_with_a_tick_at_what_is_done_and_only_for_its_owner()
    {
        await using var shop = await RunningShop.StartAsync();
        var cancel = TestContext.Current.CancellationToken;
        Assert.Equal(["/prices", "/stock", "/settings/letterhead", "/settings/address", "/people"], await LeftAsync(shop.Client));
        Assert.Empty(await LeftAsync(await shop.SignInAsync(Role.Desk)));
        Assert.Equal(["/prices", "/stock", "/settings/letterhead", "/settings/address"], await LeftAsync(shop.Client));
        await Orders.DeskSteps.KeepPricesAsync(shop);
        await new LetterheadShelf(shop.Database).SetAsync(new("Lantern Quay Ropes", ""), "test", cancel);
        await new LabelAddressShelf(shop.Database).SetAsync("https://shop.example", "test", cancel);
        Assert.Equal(["/stock"], await LeftAsync(shop.Client));
        await new CoilShelf(shop.Database).ReceiveAsync(
            new(new(RopeMaterial.Polypropylene, LengthText.Parse("1 1/2 in").OrThrow(), RopeKind.ThreeStrand), "P-1", LengthText.Parse("600 ft").OrThrow(), "rack"), "test", "coil", cancel);
        Assert.DoesNotContain("Set up next", await shop.Client.GetStringAsync(new Uri("/", UriKind.Relative), cancel), StringComparison.Ordinal);
    }

    private static async Task<IReadOnlyList<string>> LeftAsync(HttpClient client)
    {
        var page = await client.GetStringAsync(new Uri("/", UriKind.Relative), TestContext.Current.CancellationToken);
        return [.. Found(page, "<li><a class=\"target\" href=\"(?<address>[^\"]*)\">[^<]*</a>\\s*<span class=\"hint\">").Select(match => match.Groups["address"].Value)];
    }

    private static List<(string Name, string Address)> LinksIn(string page, string nav) =>
        [.. Found(page, nav).SelectMany(bar => Found(bar.Groups["links"].Value, "<a href=\"(?<address>[^\"]*)\"[^>]*>(?<name>[^<]*)</a>")).Select(link => (link.Groups["name"].Value, link.Groups["address"].Value))];

    private static MatchCollection Found(string page, string pattern) =>
        Regex.Matches(page, pattern, RegexOptions.Singleline | RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5));
}
