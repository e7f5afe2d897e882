using System.Net;
using CutShop.Testing.Rendering;
using CutShop.Web.Tests.Benches;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace CutShop.Web.Tests;

public sealed class PagesTests(HeadlessBrowser browser, PagesTests.NorthWalkShop looked) : IClassFixture<PagesTests.NorthWalkShop>
{
    [Fact]
    public async Task A_page_that_is_not_there_says_so_with_the_right_status()
    {
        await using var shop = await RunningShop.StartAsync();
        using var answer = await shop.Client.GetAsync(new Uri("/jobs/none", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("There is no such page", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_piece_page_names_neither_customer_nor_due_date()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync("lq-1042-north-walk.json");
        var page = await shop.Client.GetStringAsync(new Uri($"/p/{job.Codes[0].Plain}", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Contains("A-top-1", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Lantern Quay", page, StringComparison.Ordinal);
        Assert.DoesNotContain("2027", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_piece_page_tells_what_is_done_at_every_post()
    {
        await using var shop = await RunningShop.StartAsync();
        var walk = await shop.TakeInDemoAsync("lq-1042-north-walk.json");
        var pier = await shop.TakeInDemoAsync("lq-1044-lamp-pier.json");
        var knotted = await shop.Stranger.GetStringAsync(new Uri($"/p/{walk.Codes[2].Plain}", UriKind.Relative), TestContext.Current.CancellationToken);
        // The third run of the top row starts at a corner, its screw a quarter of the rope above 36 in, and ends in a knot.
        Assert.Contains("A9: the knot sits behind the post", knotted, StringComparison.Ordinal);
        Assert.Contains("36&#xA0;3/8&#xA0;in", knotted, StringComparison.Ordinal);
        var wrapped = await shop.Stranger.GetStringAsync(new Uri($"/p/{pier.Codes[0].Plain}", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Contains("C3: wind the rope 2.5 turns round the post", wrapped, StringComparison.Ordinal);
        Assert.Contains("head below the rope", wrapped, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/", 1280, 800)]
    [InlineData("/", 390, 844)]
    [InlineData("/jobs/LQ-1042", 1280, 800)]
    [InlineData("/jobs/LQ-1042", 390, 844)]
    [InlineData("/jobs/LQ-1042/cut-tickets", 1280, 800)]
    [InlineData("/jobs/LQ-1042/cut-tickets", 390, 844)]
    [InlineData("/jobs/LQ-1042/drill-tickets", 820, 1180)]
    [InlineData("/jobs/LQ-1042/drill-tickets", 390, 844)]
    [InlineData("/jobs/LQ-1042/summary", 390, 844)]
    [InlineData("/jobs/LQ-1042/summary", 820, 1180)]
    [InlineData("/p", 390, 844)]
    public async Task Axe_finds_nothing_wrong_and_no_page_is_wider_than_its_screen(string address, int width, int height)
    {
        var page = await browser.OpenAsync(looked.Shop, width, height);
        Assert.Equal(200, (await page.GotoAsync(address))!.Status);
        var result = await page.RunAxe();
        Assert.Empty(result.Violations.Select(violation => $"{violation.Id}: {violation.Nodes[0].Html}"));
        Assert.Equal(width, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        await page.Context.CloseAsync();
    }

    [Theory]
    [InlineData("Letter")]
    [InlineData("A4")]
    public async Task A_cut_ticket_printed_from_the_browser_is_one_sheet(string format)
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.PlanDemoAsync();
        var page = await browser.OpenAsync(shop);
        await page.GotoAsync("/jobs/LQ-1042/cut-tickets");
        Assert.Equal(await page.Locator("article.sheet").CountAsync(), Poppler.PageSizes(await page.PdfAsync(new() { Format = format })).Count);
    }

    [Fact]
    public async Task A_mistyped_code_is_caught_and_a_right_one_leads_to_the_piece()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync("lq-1044-lamp-pier.json");
        var code = job.Codes[0].ToString();
        var page = await browser.OpenAsync(shop, 390, 844);
        await page.GotoAsync("/p");
        await page.GetByLabel("Code on the label").FillAsync(code[..^1] + (code[^1] == 'A' ? 'C' : 'A'));
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("does not match");

        await page.GetByLabel("Code on the label").FillAsync(code.ToLowerInvariant().Replace("-", " ", StringComparison.Ordinal));
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("C-rope-1: from C1 to C6");
    }

    /// <summary>A shop with one job.</summary>
    public sealed class NorthWalkShop : SharedShop
    {
        protected override Task FillAsync(RunningShop shop) => shop.TakeInDemoAsync("lq-1042-north-walk.json");
    }
}
