using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace CutShop.Web.Tests.Benches;

public sealed class BenchPagesTests(HeadlessBrowser browser)
{
    [Theory]
    [InlineData(1280, 800)]
    [InlineData(390, 844)]
    public async Task Axe_finds_nothing_wrong_on_any_bench_page_and_none_is_wider_than_its_screen(int width, int height)
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.PlanDemoAsync();
        var page = await browser.OpenAsync(shop, width, height, touch: true);
        string[] addresses =
        [
            "/cut", "/cut?lost=nothing", $"/cut/{job.Codes[0].Plain}", "/drill", "/drill/LQ-1042/A1", "/drill/bits", "/pack", "/pack/LQ-1042", "/pack/LQ-1042/list",
            "/board", "/settings/benches", "/settings/sending",
        ];
        foreach (var address in addresses)
            await CheckAsync(page, address, width);

        await page.GotoAsync("/drill");
        await page.TouchAsync("Next post");
        await CheckAsync(page, await WhereAsync(page, "**/drill/*/*"), width);
        await page.GotoAsync("/cut");
        await page.TouchAsync("Next piece");
        var ticket = await WhereAsync(page, "**/cut/*");
        await CheckAsync(page, ticket, width);
        await page.TouchAsync("Done: pull and mark");
        await page.TouchAsync("Done: prepare the ends and cut hot");
        await page.GetByLabel("Another length").FillAsync("60 in");
        await page.TouchAsync("Enter");
        await CheckAsync(page, await WhereAsync(page, "**read=**"), width);
        await page.TouchAsync("It is too short: put it aside");
        await Assertions.Expect(page.Locator("main .note.warn:visible")).ToContainTextAsync(", 5' 0\" (1524 mm): write that mark on it and hang it at rack 1.");
        await page.GotoAsync($"/language/es?back={ticket}");
        await CheckAsync(page, ticket, width);
    }

    [Theory]
    [InlineData("/cut", "Next piece")]
    [InlineData("/drill", "Next post")]
    public async Task The_next_ticket_is_the_thing_to_do_only_where_one_waits(string bench, string next)
    {
        await using var shop = await RunningShop.StartAsync();
        Assert.Contains($"<button class=\"tap\">{next}</button>", await PageAsync(), StringComparison.Ordinal);
        await shop.PlanDemoAsync();
        Assert.Contains($"<button class=\"main tap\">{next}</button>", await PageAsync(), StringComparison.Ordinal);

        Task<string> PageAsync() => shop.Client.GetStringAsync(new Uri(bench, UriKind.Relative), TestContext.Current.CancellationToken);
    }

    [Fact]
    public async Task Every_target_is_at_least_48_px_and_the_main_one_20_mm()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.PlanDemoAsync();
        var page = await browser.OpenAsync(shop, 390, 844, touch: true);
        await page.GotoAsync("/cut");
        await page.TouchAsync("Next piece");
        await WhereAsync(page, "**/cut/*");
        foreach (var button in await page.Locator("main button:visible, main a:visible, main summary:visible, header nav a:visible, header input:visible").AllAsync())
            Assert.True((await button.BoundingBoxAsync())!.Height >= 48, await button.InnerTextAsync());
        var box = (await page.Locator("button.tap:visible").BoundingBoxAsync())!;
        // 20 mm are 75.6 px of a style sheet.
        Assert.True(box.Height >= 75.6 && box.Width >= 75.6);
    }

    [Fact]
    public async Task The_benches_speak_spanish_and_lengths_and_codes_stay_the_same()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.PlanDemoAsync();
        var page = await browser.OpenAsync(shop, touch: true);
        await page.GotoAsync("/cut");
        await page.GetByRole(AriaRole.Link, new() { Name = "Español" }).ClickAsync();
        await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("lang", "es");
        await page.TouchAsync("Siguiente pieza");
        await WhereAsync(page, "**/cut/*");
        var code = page.Url[^12..];
        var piece = job.Pieces.Single(one => one.Code.Plain == code);
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Hecho: sacar y marcar" })).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".figure-cut .huge")).ToHaveTextAsync(LengthText.Unbroken(LengthText.FeetInches(piece.Cut)));
        await page.GetByRole(AriaRole.Link, new() { Name = "English" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Done: pull and mark" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_language_link_never_leads_off_the_site()
    {
        await using var shop = await RunningShop.StartAsync();
        foreach (var back in new[] { "https://elsewhere.example/", "//elsewhere.example/", "/\\elsewhere.example", "" })
        {
            var client = shop.NewClient(shop.OwnersCookies);
            using var answer = await client.GetAsync(new Uri($"/language/es?back={Uri.EscapeDataString(back)}", UriKind.Relative), TestContext.Current.CancellationToken);
            Assert.Equal("/cut", answer.Headers.Location!.OriginalString);
        }
    }

    [Fact]
    public async Task The_board_changes_by_itself_when_something_is_cut_and_gives_its_figures_as_csv()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.PlanDemoAsync();
        var page = await browser.OpenAsync(shop);
        await page.GotoAsync("/board");
        await Assertions.Expect(page.GetByText("Live.")).ToBeVisibleAsync();
        var bench = new CutBench(shop.Database);
        Assert.Null((await bench.RecordCutAsync(job.Codes[0], "Tamsin", "k1", TestContext.Current.CancellationToken)).Problem);
        var cut = page.Locator(".facts div", new() { HasText = "Cut, to pack" }).Locator("dd");
        await Assertions.Expect(cut).ToHaveTextAsync("1", new() { Timeout = 15_000 });
        var csv = await shop.Client.GetStringAsync(new Uri("/board.csv", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Contains("job,LQ-1042,pieces cut,1,\r\n", csv, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1280, 800)]
    [InlineData(390, 844)]
    public async Task A_piece_of_a_cancelled_job_is_not_packed_but_hung_up_from_the_page_of_surplus_and_is_then_a_coil_with_a_mark_of_its_own(int width, int height)
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.PlanDemoAsync();
        await new CutBench(shop.Database).RecordCutAsync(job.Codes[0], "Tamsin", "k1", TestContext.Current.CancellationToken);
        await new JobRelease(shop.Database).CancelAsync(job.Number, "no longer wanted", "Ada", TestContext.Current.CancellationToken);
        var page = await browser.OpenAsync(shop, width, height);
        await CheckAsync(page, $"/pack/{job.Number}", width);
        await Assertions.Expect(page.GetByText("The job is cancelled: nothing of it is packed.")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByLabel("Scan each piece as it goes in")).ToHaveCountAsync(0);
        await page.GotoAsync("/stock");
        await page.GetByRole(AriaRole.Link, new() { Name = "1 surplus piece" }).ClickAsync();
        await CheckAsync(page, await WhereAsync(page, "**/stock/surplus"), width);
        await page.GetByRole(AriaRole.Button, new() { Name = $"Hang it up {job.Codes[0]}" }).ClickAsync();
        await Assertions.Expect(page.GetByText("No surplus pieces.")).ToBeVisibleAsync();
        await CheckAsync(page, new Uri(page.Url).PathAndQuery, width);
        await page.Locator(".note a").ClickAsync();
        await Assertions.Expect(page.GetByText("An offcut of")).ToBeVisibleAsync();
        await page.GotoAsync($"/p/{job.Codes[0].Plain}");
        await Assertions.Expect(page.GetByText($"Job {job.Number} was cancelled. It was cut, and its rope is an offcut or scrap now. Do not hang it.")).ToBeVisibleAsync();
    }

    private static async Task<string> WhereAsync(IPage page, string pattern)
    {
        await page.WaitForURLAsync(pattern);
        return new Uri(page.Url).PathAndQuery;
    }

    private static async Task CheckAsync(IPage page, string address, int width)
    {
        await page.GotoAsync(address);
        var result = await page.RunAxe();
        Assert.Empty(result.Violations.Select(violation => $"{address}: {violation.Id}: {violation.Nodes[0].Html}"));
        Assert.Equal((address, width), (address, await page.EvaluateAsync<int>("document.documentElement.scrollWidth")));
    }
}
