using CutShop.Testing.Jobs;
using Microsoft.Playwright;

namespace CutShop.Web.Tests.Benches;

/// <summary>A post at the drill: few taps, each of which can be taken back, and a change of the bit told large.</summary>
public sealed class DrillPageTests(HeadlessBrowser browser)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_line_post_of_two_rows_takes_four_taps_and_each_one_like_it_one_more()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await TakeInAsync(shop, "LQ-4");
        var page = await browser.OpenAsync(shop, touch: true, role: Role.Driller);
        var posts = PostWork.Of(job).ToDictionary(work => work.Post.Mark);
        await page.GotoAsync("/drill/LQ-4/A2");
        await page.TouchAsync("Take this post");
        await Assertions.Expect(page.GetByText("3 alike: 0 done")).ToBeVisibleAsync();
        Assert.Equal(3, await page.DrillAsync(posts["A2"]));

        await page.TouchAsync("Next post");
        await Assertions.Expect(page.GetByText("3 alike: 1 done")).ToBeVisibleAsync();
        Assert.Equal(1, await page.DrillAsync(posts["A3"]));
        await Assertions.Expect(page.GetByText("3 alike: 2 done")).ToBeVisibleAsync();
        Assert.EndsWith("/drill/LQ-4/A4", new Uri(page.Url).AbsolutePath, StringComparison.Ordinal);

        // The tap was too much: A3 is not drilled, and waits again.
        await page.TouchAsync("It was not drilled: undo");
        await Assertions.Expect(page.GetByText("Post A4 of LQ-4 is at your bench.")).ToBeVisibleAsync();
        Assert.Equal("waiting", new DrillBench(shop.Database).Find(("LQ-4", "A3"))!.State);
    }

    [Fact]
    public async Task A_step_and_a_spoiled_post_are_taken_back_by_a_tap()
    {
        await using var shop = await RunningShop.StartAsync();
        await TakeInAsync(shop, "LQ-4");
        var (bench, page) = (new DrillBench(shop.Database), await browser.OpenAsync(shop, touch: true, role: Role.Driller));
        await page.GotoAsync("/drill/LQ-4/A2");
        await page.TouchAsync("Take this post");
        await page.TouchAsync("Drilled: 2 of 6");
        await page.TouchAsync("Undo this step");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Drilled: 2 of 6" })).ToBeVisibleAsync();
        Assert.Equal(0, bench.Find(("LQ-4", "A2"))!.Steps);

        await page.TouchAsync("Drilled: 2 of 6");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Drilled: 4 of 6" })).ToBeVisibleAsync();
        await page.GetByText("Something is wrong with it").TapAsync();
        await page.TouchAsync("split");
        await page.TouchAsync("It is not spoiled: take it back");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Drilled: 4 of 6" })).ToBeVisibleAsync();

        await page.TouchAsync("Nothing is drilled: hand it back");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Drill bench" })).ToBeVisibleAsync();
        Assert.Equal(("waiting", 0L), (bench.Find(("LQ-4", "A2"))!.State, bench.Find(("LQ-4", "A2"))!.Steps));
    }

    // The stopped bore of an end is W / 2 = 2 3/4 in deep, a through bore 1/8 in more from each face; 1 1/2 in and 1 in rope want 1 9/16 and 1 1/16 in, and the rack has 1 5/8 and 1 1/8 in.
    [Fact]
    public async Task A_change_of_bit_and_collar_is_told_from_what_this_person_drilled_last()
    {
        await using var shop = await RunningShop.StartAsync();
        await TakeInAsync(shop, "LQ-4");
        await TakeInAsync(shop, "LQ-5", "1");
        var page = await browser.OpenAsync(shop, touch: true, role: Role.Driller);
        await page.GotoAsync("/drill/LQ-4/A1");
        await page.TouchAsync("Take this post");
        var told = page.Locator(".now .change");
        await Assertions.Expect(told).ToContainTextAsync(["FIT THE BIT: 1 5/8 in, threaded Forstner bit", "SET THE COLLAR: 2 3/4 in"]);
        await page.TouchAsync("Drilled: 2 of 4");
        await Assertions.Expect(told).ToContainTextAsync(["FIT THE PILOT BIT: 7/64 in", "FIT THE BIT FOR THE HEAD: countersink 1/2 in"]);
        await page.TouchAsync("All screw holes are in and the rope fits: post done");
        await Assertions.Expect(page.GetByText("is done: drilled.")).ToBeVisibleAsync();

        await page.GotoAsync("/drill/LQ-4/A2");
        await page.TouchAsync("Take this post");
        await Assertions.Expect(told).ToHaveTextAsync(["SET THE COLLAR: 2 3/4 in → 2 7/8 in"]);
        await page.TouchAsync("Drilled: 2 of 6");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Drilled: 4 of 6" })).ToBeVisibleAsync();
        await Assertions.Expect(told).ToHaveCountAsync(0);
        await page.TouchAsync("Drilled: 4 of 6");
        await page.TouchAsync("All screw holes are in and the rope fits: post done");
        await Assertions.Expect(page.GetByText("is done: drilled.")).ToBeVisibleAsync();

        await page.GotoAsync("/drill/LQ-5/A2");
        await page.TouchAsync("Take this post");
        await Assertions.Expect(told).ToContainTextAsync(["CHANGE THE BIT: 1 5/8 in → 1 1/8 in"]);
    }

    [Fact]
    public async Task A_post_s_label_is_read_at_the_bench_and_another_post_s_label_says_which_one_is_at_it()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await TakeInAsync(shop, "LQ-4");
        var code = shop.Jobs.Find("LQ-4")!.Codes[0];
        var page = await browser.OpenAsync(shop, touch: true, role: Role.Driller);
        await page.GotoAsync("/drill/LQ-4/A2");
        await page.TouchAsync("Take this post");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Drilled: 2 of 6" })).ToBeVisibleAsync();
        await page.GotoAsync("/scan?at=drill&text=" + Uri.EscapeDataString(PieceAddress.OfPost("https://elsewhere.example", code, "A3").OrThrow()));
        Assert.Equal("/drill/LQ-4/A3", new Uri(page.Url).AbsolutePath);
        await Assertions.Expect(page.GetByText("This is post A3. Post A2 of LQ-4 is at your bench.")).ToBeVisibleAsync();
        foreach (var address in new[] { "/drill/LQ-4/A2/label.pdf", "/jobs/LQ-4/post-labels.pdf" })
        {
            var pdf = await page.APIRequest.GetAsync(shop.Address + address.TrimStart('/'));
            Assert.Equal((200, "application/pdf"), (pdf.Status, pdf.Headers["content-type"]));
        }
        Assert.Equal(5, PostWork.Of(job).Count());
    }

    [Theory]
    [InlineData("en", "Mark above ground", "6 in from the top")]
    [InlineData("es", "Marca sobre el suelo", "6 in desde arriba")]
    public async Task The_page_tells_each_mark_from_the_datum_and_from_the_top_and_what_to_beware_of(string language, string heading, string fromTop)
    {
        await using var shop = await RunningShop.StartAsync();
        await TakeInAsync(shop, "LQ-4");
        var page = await browser.OpenAsync(shop, touch: true, role: Role.Driller);
        await page.GotoAsync($"/language/{language}?back=/drill/LQ-4/A2");
        var text = (await page.Locator("main").InnerTextAsync()).Replace('\u00A0', ' ');
        Assert.Contains(heading, text, StringComparison.Ordinal);
        Assert.Contains(fromTop, text, StringComparison.Ordinal);
        Assert.Contains(language == "en" ? "clamp the post" : "sujetar el poste", text, StringComparison.Ordinal);
        Assert.DoesNotMatch("(?i)from the foot|taladros|desde el pie", text);
    }

    /// <summary>A line of five posts and two rows: three line posts that are alike between two ends.</summary>
    private static async Task<JobTakeoff> TakeInAsync(RunningShop shop, string number, string rope = "1 1/2")
    {
        var form = SmallJobs.Posts(5, number);
        var job = DraftReading.Of(form with { Rope = form.Rope with { Diameter = rope } }, ShopTables.Standard).Takeoff!.Job;
        await new JobIntake(shop.Database, ShopTables.Standard).TakeInAsync(job, "Ada", cancel: Cancel);
        return shop.Jobs.Find(number)!.Takeoff;
    }
}
