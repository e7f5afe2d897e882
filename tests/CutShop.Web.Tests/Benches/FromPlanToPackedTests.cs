using Microsoft.Playwright;

namespace CutShop.Web.Tests.Benches;

public sealed class FromPlanToPackedTests(HeadlessBrowser browser)
{
    private const string BeachRamp = "lq-1043-beach-ramp.json";

    [Fact]
    public async Task A_cutter_and_a_driller_take_a_job_from_its_accepted_plan_to_packed()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.PlanDemoAsync(BeachRamp);
        var cutter = await browser.OpenAsync(shop, touch: true, role: Role.Cutter);
        var driller = await browser.OpenAsync(shop, 390, 844, touch: true, role: Role.Driller);
        await Task.WhenAll(CutAllAsync(cutter, job), DrillAllAsync(driller, shop, job));

        // The cutter packs: each piece is scanned by what its label holds.
        await cutter.GotoAsync($"/pack/{job.Number}");
        foreach (var piece in job.Pieces)
        {
            await Assertions.Expect(cutter.Locator("#piece")).ToBeFocusedAsync();
            await cutter.Keyboard.TypeAsync($"HTTPS://SHOP.EXAMPLE/P/{piece.Code.Plain}");
            await cutter.Keyboard.PressAsync("Enter");
            await Assertions.Expect(cutter.Locator(".verdict.right strong")).ToContainTextAsync(piece.Run);
            await Assertions.Expect(cutter.GetByRole(AriaRole.Button, new() { Name = $"Take out {piece.Run}" })).ToBeVisibleAsync();
        }
        // A post is scanned by its mark; what else is missing is asked for before the parcel is closed, and then put in.
        var posts = new PackingBench(shop.Database).Find(job.Number)!.Posts;
        await cutter.Keyboard.TypeAsync($"{job.Number} {posts[0].Mark}");
        await cutter.Keyboard.PressAsync("Enter");
        await Assertions.Expect(cutter.Locator(".verdict.right strong")).ToContainTextAsync(posts[0].Mark);
        await cutter.Locator(".verdict").TapAsync();
        await cutter.TouchAsync("The parcel is ready: close it");
        await Assertions.Expect(cutter.GetByRole(AriaRole.Button, new() { Name = "Close it without them" })).ToBeVisibleAsync();
        await cutter.GetByRole(AriaRole.Link, new() { Name = "Go on packing" }).TapAsync();
        foreach (var post in posts.Skip(1))
        {
            await cutter.TouchAsync($"Put in {post.Mark}");
            await Assertions.Expect(cutter.GetByRole(AriaRole.Button, new() { Name = $"Take out {post.Mark}", Exact = true })).ToBeVisibleAsync();
        }
        foreach (var screws in new PackingBench(shop.Database).Find(job.Number)!.Screws)
        {
            await cutter.TouchAsync($"Put in {screws.Screw}");
            await Assertions.Expect(cutter.GetByRole(AriaRole.Button, new() { Name = $"Take out {screws.Screw}", Exact = true })).ToBeVisibleAsync();
        }
        await cutter.TouchAsync("The parcel is ready: close it");
        await Assertions.Expect(cutter.GetByText("Ready: closed with all rope, posts and screws.")).ToBeVisibleAsync();
        Assert.True(new PackingBench(shop.Database).Find(job.Number)!.IsReady);
        var pdf = await shop.Client.GetByteArrayAsync(new Uri($"/pack/{job.Number}/list.pdf", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal("%PDF"u8, pdf.AsSpan(0, 4));
        // Every inch that came in is somewhere.
        Assert.Equal(0, shop.Database.Read(session => session.Value<long>(
            "SELECT count(*) FROM coils WHERE whole_nm <> left_nm + (SELECT coalesce(sum(nm), 0) FROM rope_uses WHERE coil_id = coils.id)")));
    }

    [Fact]
    public async Task Of_two_cutters_each_has_a_piece_of_their_own()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.PlanDemoAsync(BeachRamp);
        var first = await browser.OpenAsync(shop, touch: true, role: Role.Cutter);
        var second = await browser.OpenAsync(shop, touch: true, role: Role.Owner);
        await Task.WhenAll(first.GotoAsync("/cut"), second.GotoAsync("/cut"));
        await Task.WhenAll(first.TouchAsync("Next piece"), second.TouchAsync("Next piece"));
        await Task.WhenAll(first.WaitForURLAsync("**/cut/*"), second.WaitForURLAsync("**/cut/*"));
        Assert.NotEqual(first.Url, second.Url);
        await second.GotoAsync(first.Url);
        await Assertions.Expect(second.GetByText($"At the bench of {RunningShop.NameOf(Role.Cutter)}")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Taps_without_network_are_kept_named_and_sent_in_order_when_it_is_back()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.PlanDemoAsync(BeachRamp);
        var page = await browser.OpenAsync(shop, touch: true, role: Role.Cutter);
        await page.GotoAsync("/cut");
        await page.TouchAsync("Next piece");
        await page.WaitForURLAsync("**/cut/*");
        var code = PieceCode.Parse(page.Url[^12..]).OrThrow();
        var bench = new CutBench(shop.Database);
        var step2 = bench.Find(code)!.Material is "manila" ? "Done: prepare the ends and cut cold" : "Done: prepare the ends and cut hot";

        await page.Context.SetOfflineAsync(true);
        await page.TouchAsync("Done: pull and mark");
        await page.TouchAsync(step2);
        await Assertions.Expect(page.Locator("#unsent")).ToContainTextAsync("2 taps are not sent yet");
        Assert.Equal(0, bench.Find(code)!.Steps);

        await page.Context.SetOfflineAsync(false);
        await Assertions.Expect(page.Locator("#unsent")).ToBeHiddenAsync();
        await Assertions.Expect(page.GetByText("What does the tape say?")).ToBeVisibleAsync();
        Assert.Equal(2, bench.Find(code)!.Steps);
        Assert.Equal(
            ["step 1 of 4", "step 2 of 4"],
            new JobFeed(shop.Database).ChangesSince(0, 1000).Where(change => change.Code == "cut-step-tapped").Select(change => change.After));
    }

    [Fact]
    public async Task Screw_holes_tapped_without_network_are_kept_and_one_tap_for_the_rest_ends_the_post()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.PlanDemoAsync(BeachRamp);
        var page = await browser.OpenAsync(shop, touch: true, role: Role.Driller);
        await page.GotoAsync("/drill/LQ-1043/B1");
        await page.TouchAsync("Take this post");
        var bench = new DrillBench(shop.Database);

        // B1 ends two rows: two bores in one face, and the holes of two screws in another.
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Drilled: 2 of 4" })).ToBeVisibleAsync();
        await page.Context.SetOfflineAsync(true);
        await page.TouchAsync("Drilled: 2 of 4");
        await page.TouchAsync("All screw holes are in and the rope fits: post done");
        await Assertions.Expect(page.Locator("#unsent")).ToContainTextAsync("2 taps are not sent yet");
        await Assertions.Expect(page.Locator(".steps > .pending")).ToHaveCountAsync(3);
        Assert.Equal(0, bench.Find(("LQ-1043", "B1"))!.Steps);

        await page.Context.SetOfflineAsync(false);
        await Assertions.Expect(page.GetByText("is done: drilled.")).ToBeVisibleAsync();
        Assert.Equal(("drilled", 4L), (bench.Find(("LQ-1043", "B1"))!.State, bench.Find(("LQ-1043", "B1"))!.Steps));
        Assert.Equal(
            ["drilled a bore", "drilled, the rope fits, 2 screw holes with it"],
            new JobFeed(shop.Database).ChangesSince(0, 1000).Where(change => change.What.StartsWith("drilled", StringComparison.Ordinal)).Select(change => change.What));
    }

    [Fact]
    public async Task A_tap_whose_answer_was_lost_is_sent_again_and_counts_once()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.PlanDemoAsync(BeachRamp);
        var page = await browser.OpenAsync(shop, touch: true, role: Role.Cutter);
        await page.GotoAsync("/cut");
        await page.TouchAsync("Next piece");
        await page.WaitForURLAsync("**/cut/*");
        var code = PieceCode.Parse(page.Url[^12..]).OrThrow();
        var lost = 0;
        await page.RouteAsync("**/cut/*handler=Tick", async route =>
        {
            // The server gets it; the tablet never hears of it the first time.
            if (lost++ > 0)
            {
                await route.ContinueAsync();
                return;
            }
            await route.FetchAsync();
            await route.AbortAsync();
        });
        await page.TouchAsync("Done: pull and mark");
        await Assertions.Expect(page.Locator("#unsent")).ToContainTextAsync("1 tap is not sent yet");
        await Assertions.Expect(page.Locator("li.now h2")).ToContainTextAsync("prepare the ends");
        await Assertions.Expect(page.Locator("#unsent")).ToBeHiddenAsync(new() { Timeout = 15_000 });
        Assert.Equal(1, new CutBench(shop.Database).Find(code)!.Steps);
        Assert.True(lost >= 2);
    }

    [Fact]
    public async Task Without_the_script_the_bench_works_as_plain_forms()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.PlanDemoAsync(BeachRamp);
        var page = await browser.OpenAsync(shop, touch: true, role: Role.Cutter);
        await page.RouteAsync("**/bench.js", route => route.AbortAsync());
        await page.GotoAsync("/cut");
        await page.TouchAsync("Next piece");
        await page.WaitForURLAsync("**/cut/*");
        await page.TouchAsync("Done: pull and mark");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Done: prepare the ends" })).ToBeVisibleAsync();
        Assert.Equal(1, new CutBench(shop.Database).Find(PieceCode.Parse(page.Url[^12..]).OrThrow())!.Steps);
    }

    private static async Task CutAllAsync(IPage page, StoredJob job)
    {
        await page.GotoAsync("/cut");
        foreach (var _ in job.Pieces)
        {
            await page.TouchAsync("Next piece");
            await page.WaitForURLAsync("**/cut/*");
            await page.CutAsync(job.Takeoff.Pieces[0].Rope.IsNatural);
        }
        await page.TouchAsync("Next piece");
        await Assertions.Expect(page.GetByText("No pieces are waiting to be cut.")).ToBeVisibleAsync();
    }

    private static async Task DrillAllAsync(IPage page, RunningShop shop, StoredJob job)
    {
        var posts = PostWork.Of(job.Takeoff).Where(work => work.Bores.Count > 0).ToDictionary(work => work.Post.Mark);
        await page.GotoAsync("/drill");
        for (var i = 0; i < posts.Count; i++)
        {
            // After a post that was like the last one, the next one like it is at the bench already.
            if (new Uri(page.Url).AbsolutePath == "/drill")
                await page.TouchAsync("Next post");
            await page.WaitForURLAsync("**/drill/*/*");
            Assert.InRange(await page.DrillAsync(posts[new Uri(page.Url).Segments[^1]]), 1, 4);
        }
        Assert.Equal(posts.Count, new DrillBench(shop.Database).Latest(100).Count);
    }
}
