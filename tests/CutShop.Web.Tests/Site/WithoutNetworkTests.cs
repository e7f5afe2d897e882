using CutShop.Testing.Jobs;
using CutShop.Web.Tests.Benches;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace CutShop.Web.Tests.Site;

/// <summary>An installer's phone with the network cut.</summary>
public sealed class WithoutNetworkTests(HeadlessBrowser browser)
{
    [Fact]
    public async Task Scans_marks_and_reports_work_without_a_network_and_reach_the_shop_once_and_in_order()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var page = await OpenStoredAsync(shop, job);
        await page.Context.SetOfflineAsync(true);

        await ScanAsync(page, job.Codes[1]);
        await MarkAsync(page);
        await ExpectUnsentAsync(page, 1);
        await ScanAsync(page, job.Codes[0]);
        await MarkAsync(page);
        await TapAsync(page, "Take the mark off: not installed");
        await ExpectUnsentAsync(page, 3);
        await page.GotoAsync($"/p/{job.Codes[2].Plain}/report");
        await page.GetByLabel("damaged").CheckAsync();
        await page.GetByLabel("Note").FillAsync("Cut through at the second post");
        await page.GetByLabel("Photo").SetInputFilesAsync(new FilePayload { Name = "photo.png", MimeType = "image/png", Buffer = PackedSite.Photo() });
        await TapAsync(page, "Send the report");
        await page.WaitForURLAsync($"**/p/{job.Codes[2].Plain}");
        await ExpectUnsentAsync(page, 4);
        Assert.Empty(shop.FromSite());

        await page.Context.SetOfflineAsync(false);
        await Assertions.Expect(page.Locator("#unsent")).ToBeHiddenAsync(new() { Timeout = 20_000 });
        string[] done = [$"{job.Pieces[1].Run} installed", $"{job.Pieces[0].Run} installed", $"{job.Pieces[0].Run} not-installed", $"{job.Pieces[2].Run} damaged"];
        Assert.Equal(done, shop.FromSite());
        var report = Assert.Single(new SiteReports(shop.Database).Open());
        Assert.Equal("Cut through at the second post", report.Note);
        Assert.NotNull(report.Photo);

        // Looked at once more, with a network and without: nothing is sent twice, and the stored page knows.
        await ScanAsync(page, job.Codes[1]);
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Take the mark off: not installed" })).ToBeVisibleAsync();
        await page.Context.SetOfflineAsync(true);
        await ScanAsync(page, job.Codes[1]);
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Take the mark off: not installed" })).ToBeVisibleAsync();
        Assert.Equal(done, shop.FromSite());
    }

    [Fact]
    public async Task What_somebody_else_changed_since_is_shown_and_not_overwritten()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var page = await OpenStoredAsync(shop, job);
        await page.Context.SetOfflineAsync(true);
        await ScanAsync(page, job.Codes[0]);
        await MarkAsync(page);
        await ExpectUnsentAsync(page, 1);
        await shop.MarkAsync(job.Codes[0], InstalledState.Installed);
        await shop.MarkAsync(job.Codes[0], InstalledState.NotInstalled);

        await page.Context.SetOfflineAsync(false);
        await Assertions.Expect(page.Locator("#refused")).ToContainTextAsync("Someone else has taken the mark off this piece since", new() { Timeout = 20_000 });
        Assert.Equal([$"{job.Pieces[0].Run} installed", $"{job.Pieces[0].Run} not-installed"], shop.FromSite());
        await CheckLooksAsync(page);

        await TapAsync(page, "I have seen it");
        await Assertions.Expect(page.Locator("#refused")).ToBeHiddenAsync();
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("#refused")).ToBeHiddenAsync();
    }

    [Fact]
    public async Task A_report_that_the_shop_refused_is_put_right_from_what_was_typed()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var page = await OpenStoredAsync(shop, job);
        await page.GotoAsync($"/p/{job.Codes[2].Plain}/report");
        await page.GetByLabel("damaged").CheckAsync();
        await page.GetByLabel("Note").FillAsync("Cut through at the second post");
        await page.GetByLabel("Photo").SetInputFilesAsync(new FilePayload { Name = "photo.png", MimeType = "image/png", Buffer = "no picture"u8.ToArray() });
        await TapAsync(page, "Send the report");
        await Assertions.Expect(page.Locator("#refused")).ToContainTextAsync("not a JPEG, PNG or WebP", new() { Timeout = 20_000 });
        Assert.Empty(new SiteReports(shop.Database).Open());
        await CheckLooksAsync(page);

        await page.GetByRole(AriaRole.Link, new() { Name = "Correct the report" }).ClickAsync();
        await Assertions.Expect(page.GetByLabel("damaged")).ToBeCheckedAsync();
        await Assertions.Expect(page.GetByLabel("Note")).ToHaveValueAsync("Cut through at the second post");
        await page.GetByLabel("Photo").SetInputFilesAsync(new FilePayload { Name = "photo.png", MimeType = "image/png", Buffer = PackedSite.Photo() });
        await TapAsync(page, "Send the report");
        await page.WaitForURLAsync($"**/p/{job.Codes[2].Plain}?reported=1");
        await Assertions.Expect(page.Locator("#refused")).ToBeHiddenAsync();
        var report = Assert.Single(new SiteReports(shop.Database).Open());
        Assert.Equal("Cut through at the second post", report.Note);
        Assert.NotNull(report.Photo);
    }

    [Fact]
    public async Task An_answer_that_got_lost_is_asked_for_again_and_counts_once()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        // Without the worker the page itself sends, so its answers can be lost on the way.
        var page = await browser.OpenAsStrangerAsync(shop, 390, 844, touch: true);
        await page.GotoAsync($"/p/{job.Codes[0].Plain}");
        var lost = 0;
        var isLost = new TaskCompletionSource();
        await page.RouteAsync("**/installed", async route =>
        {
            if (lost++ > 0)
            {
                await route.ContinueAsync();
                return;
            }
            await route.FetchAsync();
            await route.AbortAsync();
            isLost.SetResult();
        });
        await MarkAsync(page);
        await isLost.Task;
        await ExpectUnsentAsync(page, 1);
        Assert.Single(shop.FromSite());
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("#unsent")).ToBeHiddenAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Take the mark off: not installed" })).ToBeVisibleAsync();
        Assert.Equal(2, lost);
        Assert.Single(shop.FromSite());
    }

    [Fact]
    public async Task What_is_not_stored_says_that_there_is_no_network_and_no_page_of_a_person_is_ever_stored()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var page = await browser.OpenAsync(shop, 390, 844, touch: true, worker: true);
        await page.GotoAsync("/cut");
        await page.EvaluateAsync("navigator.serviceWorker.ready");
        await page.GotoAsync($"/s/{(await shop.PackOfAsync(job)).Plain}");
        await Assertions.Expect(page.Locator("#pack")).ToContainTextAsync("Stored on this device", new() { Timeout = 20_000 });
        await page.GotoAsync("/cut");
        await page.Context.SetOfflineAsync(true);
        foreach (var address in new[] { "/cut", "/", "/p/333333333332" })
        {
            await page.GotoAsync(address);
            await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Sin red" })).ToBeVisibleAsync();
        }
        await CheckLooksAsync(page);
        var stored = await page.EvaluateAsync<string[]>(
            """
            async () => {
              const texts = [];
              for (const name of await caches.keys()) {
                const cache = await caches.open(name);
                for (const request of await cache.keys())
                  if (!request.url.includes("/assets/")) texts.push(await (await cache.match(request)).text());
              }
              return texts;
            }
            """);
        Assert.NotEmpty(stored);
        Assert.DoesNotContain(stored, text => text.Contains("To the shop", StringComparison.Ordinal) || text.Contains(RunningShop.NameOf(Role.Owner), StringComparison.Ordinal));
    }

    [Fact]
    public async Task Typed_codes_and_lines_open_from_the_stored_pack_and_look_right()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var page = await OpenStoredAsync(shop, job);
        await CheckLooksAsync(page);
        await page.Context.SetOfflineAsync(true);
        await page.GotoAsync("/p");
        await page.GetByLabel("Code on the label").FillAsync(job.Codes[2].ToString().ToLowerInvariant());
        await TapAsync(page, "Find");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync(job.Pieces[2].Run);
        await CheckLooksAsync(page);
        await page.GetByRole(AriaRole.Link, new() { Name = "The line" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Line A");
        Assert.EndsWith($"#{job.Codes[2].Plain}", page.Url, StringComparison.Ordinal);
        await CheckLooksAsync(page);
    }

    [Fact]
    public async Task A_measured_span_is_answered_without_a_network_as_the_shop_answers_it_and_reaches_the_shop()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var (code, shared) = (job.Codes[0], 0);
        var page = await OpenStoredAsync(shop, job);
        var measures = new (string Typed, string Next, bool IsShort)[]
        {
            ("6' 0 1/4\"", "", true), ("73 in", "", true), ("71 1/2", "", false), ("1842 mm", "", true), ("6 ft 2 in", "", true),
            ("72 1/8", "72 3/16", true), ("71 1/2", "72 1/2", true), ("1822 mm", "71 15/16", false), ("66", "64 1/16", false), ("5'", "", false),
        };
        foreach (var (typed, next, isShort) in measures)
        {
            await page.Context.SetOfflineAsync(true);
            await page.GotoAsync($"/p/{code.Plain}/measure");
            await page.Locator("#span-0").FillAsync(typed);
            await page.Locator("#span-1").FillAsync(next);
            await TapAsync(page, "Work it out");
            await Assertions.Expect(page.Locator("#advice")).ToBeVisibleAsync();
            await ExpectUnsentAsync(page, 1);
            await CheckLooksAsync(page);
            var offline = await SaidAsync(page);
            Assert.Equal((typed, next, isShort), (typed, next, await page.Locator("#advice form").IsVisibleAsync()));

            await page.Context.SetOfflineAsync(false);
            await Assertions.Expect(page.Locator("#unsent")).ToBeHiddenAsync(new() { Timeout = 20_000 });
            await page.GotoAsync($"/p/{code.Plain}/measure");
            Assert.Equal((typed, next, await SaidAsync(page)), (typed, next, offline));
            shared += offline.Contains("Share it out", StringComparison.Ordinal) ? 1 : 0;
        }
        Assert.True(shared > 4, $"Only {shared} of the answers had a sag to share.");
        Assert.Equal(LengthText.Parse("5'").OrThrow(), new MeasuredSpans(shop.Database).Find(code)!.Clear[0]);
    }

    [Fact]
    public async Task Several_spans_add_up_without_a_network_and_one_tap_reports_them()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var code = job.Codes[0];
        var page = await OpenStoredAsync(shop, job);
        await page.Context.SetOfflineAsync(true);
        await page.GotoAsync($"/p/{code.Plain}/measure");
        await page.Locator("#span-0").FillAsync("74");
        await TapAsync(page, "Work it out");
        await ExpectUnsentAsync(page, 1);
        // Opened again, what is not sent yet stands in its field; the next span adds to it.
        await page.GotoAsync($"/p/{code.Plain}/measure");
        await Assertions.Expect(page.Locator("#span-0")).ToHaveValueAsync("74");
        await page.Locator("#span-1").FillAsync("7200");
        await TapAsync(page, "Work it out");
        await Assertions.Expect(page.Locator("#span-1-said")).ToContainTextAsync("Check the figure and its unit");
        await Assertions.Expect(page.Locator("#advice")).ToBeHiddenAsync();
        await page.Locator("#span-1").FillAsync("74");
        await TapAsync(page, "Work it out");
        await ExpectUnsentAsync(page, 2);
        await TapAsync(page, "Report as too short, with the spans measured");
        await page.WaitForURLAsync($"**/p/{code.Plain}");
        await ExpectUnsentAsync(page, 3);

        await page.Context.SetOfflineAsync(false);
        await Assertions.Expect(page.Locator("#unsent")).ToBeHiddenAsync(new() { Timeout = 20_000 });
        Assert.Equal("too-short", Assert.Single(new SiteReports(shop.Database).Open()).Kind);
        var clear = new MeasuredSpans(shop.Database).Find(code)!.Clear;
        Assert.Equal((Length.FromInches(74), Length.FromInches(74), 2), (clear[0], clear[1], clear.Count));
    }

    [Fact]
    public async Task A_phone_learns_that_a_label_was_revoked_as_soon_as_it_has_a_network_and_says_so_without_one()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var (old, other) = (job.Codes[0], job.Codes[1]);
        var page = await OpenStoredAsync(shop, job);
        await page.Context.SetOfflineAsync(true);
        await ScanAsync(page, old);
        await Assertions.Expect(page.Locator("#age")).ToContainTextAsync("As of ");
        Assert.Matches("As of [A-Z][a-z]+day [0-2][0-9]:[0-5][0-9]", await page.Locator("#age").InnerTextAsync());
        Assert.True((await new LabelShelf(shop.Database).ReplaceAsync(old, "lost", "test", "k", TestContext.Current.CancellationToken)).IsDone);
        await ScanAsync(page, old);

        // Only another piece's page is open when the network comes back.
        await ScanAsync(page, other);
        await page.Context.SetOfflineAsync(false);
        await page.EvaluateAsync("async path => { while (!(await (await caches.match(path)).text()).includes('no longer valid')) await new Promise(done => setTimeout(done, 100)); }", $"/p/{old.Plain}");
        await page.Context.SetOfflineAsync(true);
        foreach (var rest in new[] { "", "/line", "/bores", "/set-out", "/measure", "/report" })
        {
            await page.GotoAsync($"/p/{old.Plain}{rest}");
            await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("This label is no longer valid");
        }
        await CheckLooksAsync(page);
        await ScanAsync(page, other);
    }

    [Fact]
    public async Task A_lines_count_has_the_marks_that_are_not_sent_yet()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var page = await OpenStoredAsync(shop, job);
        await page.Context.SetOfflineAsync(true);
        await page.GotoAsync($"/p/{job.Codes[0].Plain}/line");
        var all = await page.Locator("form[data-outbox=installed]").CountAsync();
        await Assertions.Expect(page.GetByText($"0 of {all} installed")).ToBeVisibleAsync();
        await MarkAsync(page);
        await Assertions.Expect(page.GetByText($"1 of {all} installed")).ToBeVisibleAsync();
        await page.ReloadAsync();
        await Assertions.Expect(page.GetByText($"1 of {all} installed")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Bores_are_ticked_and_taken_back_without_a_network_and_posts_are_set_out_from_the_stored_page()
    {
        await using var shop = await RunningShop.StartAsync();
        await new JobIntake(shop.Database, ShopTables.Standard).TakeInAsync(SmallJobs.StandingArc("LQ-77"), "test", cancel: TestContext.Current.CancellationToken);
        var job = shop.Jobs.Find("LQ-77")!;
        var page = await OpenStoredAsync(shop, job);
        await page.Context.SetOfflineAsync(true);
        await ScanAsync(page, job.Codes[1]);
        await page.GetByRole(AriaRole.Link, new() { Name = "Set out the posts" }).TapAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Line A: set out the posts");
        await CheckLooksAsync(page);
        await ScanAsync(page, job.Codes[1]);
        await page.GetByRole(AriaRole.Link, new() { Name = "Posts to bore" }).TapAsync();
        // Eight posts with two rows; the hole that is there is not to be bored.
        await Assertions.Expect(page.GetByText("0 of 15 bored")).ToBeVisibleAsync();
        var (first, second) = (TickOf(page, "A1", "top"), TickOf(page, "A1", "low"));
        await first.TapAsync();
        await ExpectUnsentAsync(page, 1);
        await Assertions.Expect(page.GetByText("1 of 15 bored")).ToBeVisibleAsync();
        await Assertions.Expect(first).ToHaveTextAsync("Take the tick back: not bored");
        await second.TapAsync();
        await ExpectUnsentAsync(page, 2);
        await first.TapAsync();
        await ExpectUnsentAsync(page, 3);
        await CheckLooksAsync(page);
        await page.ReloadAsync();
        await Assertions.Expect(page.GetByText("1 of 15 bored")).ToBeVisibleAsync();
        Assert.Equal(0, shop.Jobs.Find("LQ-77")!.SitePosts.Sum(post => post.Bored));

        await page.Context.SetOfflineAsync(false);
        await Assertions.Expect(page.Locator("#unsent")).ToBeHiddenAsync(new() { Timeout = 20_000 });
        Assert.Equal(("A1", 2, 1), shop.Jobs.Find("LQ-77")!.SitePosts.Where(post => post.Bored > 0).Select(post => (post.Mark, post.Bores, post.Bored)).Single());
        await Assertions.Expect(TickOf(page, "A1", "low")).ToHaveTextAsync("Take the tick back: not bored");
        await page.Context.SetOfflineAsync(true);
        await page.GotoAsync($"/p/{job.Codes[0].Plain}/bores");
        await Assertions.Expect(page.GetByText("1 of 15 bored")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_pasted_address_of_a_label_opens_its_stored_page()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var page = await OpenStoredAsync(shop, job);
        await page.Context.SetOfflineAsync(true);
        await page.GotoAsync("/p");
        await page.GetByLabel("Code on the label").FillAsync($"HTTP://ANOTHER.EXAMPLE/P/{job.Codes[1].Plain}");
        await TapAsync(page, "Find");
        await Assertions.Expect(page.Locator(".code").First).ToHaveTextAsync(job.Codes[1].ToString());
    }

    /// <summary>What the page says of the spans: each section's lines, the total, and every way out.</summary>
    private static async Task<string> SaidAsync(IPage page) => string.Join(
        '\n',
        await page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('.span .note p, #advice .total, #advice h2, #advice li')].filter(one => one.offsetParent).map(one => one.textContent.trim())"));

    private static ILocator TickOf(IPage page, string post, string row) => page.Locator($"form[data-place='LQ-77/{post}/{row}/1'] button");

    private async Task<IPage> OpenStoredAsync(RunningShop shop, StoredJob job)
    {
        var page = await browser.OpenAsStrangerAsync(shop, 390, 844, touch: true, worker: true);
        await page.GotoAsync($"/s/{(await shop.PackOfAsync(job)).Plain}");
        await Assertions.Expect(page.Locator("#pack")).ToContainTextAsync($"Stored on this device: {job.Pieces.Count} pieces", new() { Timeout = 20_000 });
        return page;
    }

    /// <summary>Opens what the label's code holds.</summary>
    private static async Task ScanAsync(IPage page, PieceCode code)
    {
        await page.GotoAsync($"/P/{code.Plain}");
        await Assertions.Expect(page.Locator(".code").First).ToHaveTextAsync(code.ToString());
    }

    /// <summary>Marks a piece that the shop has not cut, and says that it hangs all the same.</summary>
    private static async Task MarkAsync(IPage page)
    {
        await page.Locator("summary", new() { HasText = "Mark as installed" }).First.TapAsync();
        await TapAsync(page, "Yes, it hangs: mark as installed");
    }

    private static Task TapAsync(IPage page, string name) => page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true }).First.TapAsync();

    private static Task ExpectUnsentAsync(IPage page, int count) => Assertions.Expect(page.Locator("#unsent li")).ToHaveCountAsync(count);

    private static async Task CheckLooksAsync(IPage page)
    {
        var result = await page.RunAxe();
        Assert.Empty(result.Violations.Select(violation => $"{page.Url}: {violation.Id}: {violation.Nodes[0].Html}"));
        Assert.Equal((page.Url, 390), (page.Url, await page.EvaluateAsync<int>("document.documentElement.scrollWidth")));
    }
}
