using System.Net;

namespace CutShop.Web.Tests.Host;

public sealed class LocalAddressTests(HeadlessBrowser browser)
{
    private const string Elsewhere = "elsewhere.example";

    [Theory]
    [InlineData("/stock", "/stock")]
    [InlineData("/jobs/LQ-1042?plan=1&sort=a%20b", "/jobs/LQ-1042?plan=1&sort=a%20b")]
    [InlineData("/é b", "/%C3%A9%20b")]
    [InlineData("/\U0001F9F5", "/%F0%9F%A7%B5")]
    [InlineData(null, "/cut")]
    [InlineData("", "/cut")]
    [InlineData("stock", "/cut")]
    [InlineData("https://elsewhere.example/", "/cut")]
    [InlineData("//elsewhere.example/", "/cut")]
    [InlineData("/\\elsewhere.example/", "/cut")]
    [InlineData("/\t/elsewhere.example/", "/cut")]
    [InlineData("/\r\n/elsewhere.example/", "/cut")]
    [InlineData("/a\r\nSet-Cookie: a=b", "/cut")]
    public void An_address_of_the_site_stays_and_any_other_is_not_gone_to(string? asked, string expected) =>
        Assert.Equal(expected, LocalAddress.Of(asked, "/cut"));

    /// <summary>Checked by the browser's own reading of addresses.</summary>
    [Fact]
    public async Task No_mix_of_slashes_and_characters_that_a_browser_drops_leads_a_browser_elsewhere()
    {
        string[] marks = ["/", "\\", "\t", "\n", "\r", " ", "\u00A0", "é", ".", "@", ":"];
        var asked = (from a in marks from b in marks from c in marks select $"/{a}{b}{c}{Elsewhere}/x").ToArray();
        await using var shop = await RunningShop.StartEmptyAsync();
        var page = await browser.OpenAsStrangerAsync(shop);
        var hosts = await page.EvaluateAsync<string[]>("all => all.map(one => new URL(one, 'https://shop.example/here').host)", asked.Select(one => LocalAddress.Of(one, "/")).ToArray());
        Assert.All(hosts, host => Assert.Equal("shop.example", host));
        // Unchecked, some of them do lead elsewhere.
        var raw = await page.EvaluateAsync<string[]>("all => all.map(one => { try { return new URL(one, 'https://shop.example/here').host } catch { return '' } })", asked);
        Assert.Contains(Elsewhere, raw);
    }

    [Theory]
    [InlineData("/%09/elsewhere.example/x", "/cut")]
    [InlineData("/%0D%0A/elsewhere.example/x", "/cut")]
    [InlineData("//elsewhere.example/x", "/cut")]
    [InlineData("/%C3%A9", "/%C3%A9")]
    public async Task Choosing_a_language_goes_back_to_the_site_alone(string back, string to)
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        using var answer = await shop.Stranger.AskAsync($"/language/es?back={back}");
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal(to, answer.Headers.Location!.OriginalString);
    }

    [Theory]
    [InlineData("/é", "/%C3%A9")]
    [InlineData("/\r\n/elsewhere.example", "/")]
    public async Task Signing_in_with_an_address_that_no_header_can_carry_goes_to_it_escaped_or_to_the_jobs(string back, string to)
    {
        await using var shop = await RunningShop.StartAsync();
        using var answer = await shop.NewClient().SendFormAsync(
            $"/sign-in?back={Uri.EscapeDataString(back)}", ("name", RunningShop.NameOf(Role.Owner)), ("password", await shop.PasswordOfAsync(Role.Owner)));
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal(to, answer.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task The_way_to_the_sign_in_form_does_not_name_the_host_that_a_request_gave()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        using var request = new HttpRequestMessage(HttpMethod.Get, "/stock?diameter=1%201%2F2%20in") { Headers = { Host = Elsewhere } };
        using var answer = await shop.Stranger.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal("/sign-in?back=%2Fstock%3Fdiameter%3D1%25201%252F2%2520in", answer.Headers.Location!.OriginalString);
    }
}
