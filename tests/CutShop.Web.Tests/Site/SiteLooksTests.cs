using CutShop.Testing.Jobs;
using CutShop.Web.Tests.Benches;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace CutShop.Web.Tests.Site;

public sealed class SiteLooksTests(HeadlessBrowser browser)
{
    [Theory]
    [InlineData("en", 390, 844)]
    [InlineData("es", 390, 844)]
    [InlineData("en", 820, 1180)]
    public async Task Axe_finds_nothing_wrong_on_any_page_for_installers_and_targets_fit_gloves(string language, int width, int height)
    {
        await using var shop = await RunningShop.StartAsync();
        var codes = (await shop.TakeInDemoAsync(BenchShop.NorthWalk)).Codes;
        await new LabelShelf(shop.Database).ReplaceAsync(codes[1], "lost", "test", "k", TestContext.Current.CancellationToken);
        await new JobIntake(shop.Database, ShopTables.Standard).TakeInAsync(SmallJobs.StandingArc("LQ-77"), "test", cancel: TestContext.Current.CancellationToken);
        var (standing, pack) = (shop.Jobs.Find("LQ-77")!.Codes[0], await shop.PackOfAsync(shop.Jobs.Find("LQ-77")!));
        await new BoreTicks(shop.Database).TickAsync(standing, new(new("A1", "top", 1), Wanted: true, Seen: false, At: null), "site", "t", TestContext.Current.CancellationToken);
        var page = await browser.OpenAsStrangerAsync(shop, width, height, touch: true);
        await page.GotoAsync($"/language/{language}?back=/p");
        var code = codes[0].Plain;
        var cancel = TestContext.Current.CancellationToken;
        var measured = new Dictionary<int, Length> { [0] = Length.FromInches(71), [1] = Length.FromInches(76) };
        Assert.Equal(SiteOutcome.Done, await new MeasuredSpans(shop.Database).KeepAsync(codes[0], measured, at: null, "test", "m", cancel));
        await new SiteReports(shop.Database).SendAsync(codes[0], new(SiteReportKind.TooShort, "", null, null), "site", "r", cancel: cancel);
        foreach (var address in new[]
        {
            "/p", "/p/XXXX", $"/p/{codes[1].Plain}", $"/p/{code}", $"/p/{code}?reported=1", $"/p/{code}/line", $"/p/{code}/measure", $"/p/{code}/report",
            $"/p/{standing.Plain}", $"/p/{standing.Plain}/line", $"/p/{standing.Plain}/bores", $"/p/{standing.Plain}/set-out", $"/s/{pack.Plain}",
        })
        {
            await page.GotoAsync(address);
            Assert.Equal(language, await page.GetAttributeAsync("html", "lang"));
            await CheckAsync(page, address, width);
            foreach (var drawing in await page.Locator("figure.drawing").AllAsync())
                Assert.True(await drawing.EvaluateAsync<bool>("one => one.scrollWidth <= one.clientWidth"), $"{address}: a drawing is wider than the page");
            // Letters of 12 pixels are the smallest that a phone is read with at arm's length (common practice, no source).
            foreach (var letters in await page.Locator("figure.drawing svg text").AllAsync())
                Assert.True(await letters.EvaluateAsync<double>("one => one.getAttribute('font-size') * one.getScreenCTM().a") is var size && size >= 12, $"{address}: {await letters.TextContentAsync()}: {size}");
            foreach (var target in await page.Locator("main button:visible, main a:visible, main summary:visible, main label.choice:visible, header nav a:visible, input:visible:not([type=radio])").AllAsync())
                Assert.True((await target.BoundingBoxAsync())!.Height >= 48, $"{address}: {await target.InnerTextAsync()}");
        }
    }

    [Theory]
    [InlineData(390, 844)]
    [InlineData(820, 1180)]
    public async Task Axe_finds_nothing_wrong_on_the_desks_pages_for_the_site(int width, int height)
    {
        await using var shop = await RunningShop.StartAsync();
        var code = (await shop.TakeInDemoAsync(BenchShop.NorthWalk)).Codes[0];
        var reports = new SiteReports(shop.Database);
        await reports.SendAsync(code, new(SiteReportKind.Damaged, "chafed", null, null), "site", "r1", cancel: TestContext.Current.CancellationToken);
        await reports.SendAsync(code, new(SiteReportKind.Missing, "", null, null), "site", "r2", cancel: TestContext.Current.CancellationToken);
        await reports.CloseAsync(1, "spliced", "test", "c", TestContext.Current.CancellationToken);
        var page = await browser.OpenAsync(shop, width, height);
        await new JobIntake(shop.Database, ShopTables.Standard).TakeInAsync(SmallJobs.StandingArc("LQ-77"), "test", cancel: TestContext.Current.CancellationToken);
        foreach (var address in new[] { "/reports", "/jobs/LQ-1042/labels", "/settings/address", "/jobs/LQ-1042", "/jobs/LQ-77", "/jobs/LQ-77/drill-tickets" })
        {
            await page.GotoAsync(address);
            await CheckAsync(page, address, width);
        }
    }

    [Fact]
    public async Task An_installer_marks_a_piece_on_the_line_and_reports_another_without_signing_in()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.PlanAndPackAsync();
        var code = job.Codes[0].Plain;
        var page = await browser.OpenAsStrangerAsync(shop, 390, 844, touch: true);
        await page.GotoAsync($"/p/{code.ToLowerInvariant()}");
        await page.GetByRole(AriaRole.Button, new() { Name = "Mark as installed" }).TapAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Take the mark off: not installed" })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "The line" }).TapAsync();
        await Assertions.Expect(page.GetByText("1 of 9 installed")).ToBeVisibleAsync();

        await page.GotoAsync($"/p/{code}/report");
        await page.GetByText("too short").TapAsync();
        await page.GetByLabel("Note").FillAsync("by a hand");
        await page.GetByRole(AriaRole.Button, new() { Name = "Send the report" }).TapAsync();
        await Assertions.Expect(page.GetByText("The report is sent.")).ToBeVisibleAsync();

        var desk = await browser.OpenAsync(shop, role: Role.Desk);
        await desk.GotoAsync("/reports");
        await desk.GetByRole(AriaRole.Button, new() { Name = "Cut again" }).ClickAsync();
        await Assertions.Expect(desk.GetByText("Cut again as")).ToBeVisibleAsync();
        await page.GotoAsync($"/p/{code}");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("A-top-1 was cut again");
    }

    private static async Task CheckAsync(IPage page, string address, int width)
    {
        var result = await page.RunAxe();
        Assert.Empty(result.Violations.Select(violation => $"{address}: {violation.Id}: {violation.Nodes[0].Html}"));
        Assert.Equal((address, width), (address, await page.EvaluateAsync<int>("document.documentElement.scrollWidth")));
    }
}
