using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace CutShop.Web.Tests.Orders;

/// <summary>What real sites have, typed at the desk in a browser.</summary>
public sealed class RealSitePageTests(HeadlessBrowser browser)
{
    [Fact]
    public async Task A_gate_a_curve_and_a_ring_are_asked_for_with_the_keyboard_and_drawn()
    {
        await using var shop = await RunningShop.StartAsync();
        var page = await browser.OpenAsync(shop, 1280, 900);
        await page.GotoAsync("/drafts/new");
        foreach (var (field, text) in DeskSteps.FourPosts)
            await page.Field(field).FillAsync(text);
        await page.GetByText("Curve or ring").PressAsync("Enter");
        await page.Field("course").SelectOptionAsync("curve");
        await page.Field("curve.radius").FillAsync("20'");
        await page.Field("curve.angle").FillAsync("50");
        await page.Field("curve.turns").SelectOptionAsync("left");
        await page.Button("Make the draft").PressAsync("Enter");
        await page.WaitForURLAsync("**/drafts/*");
        await Assertions.Expect(page.Locator("#standing")).ToContainTextAsync("Ready");
        await Assertions.Expect(page.Field("lines[0].curve.radius")).ToHaveValueAsync("20'");
        await Assertions.Expect(page.Field("lines[0].posts[1].turn")).ToHaveCountAsync(0);

        await page.GetByText("More for line A").PressAsync("Enter");
        await page.Button("Close line A to a ring").PressAsync("Enter");
        await Assertions.Expect(page.Field("lines[0].sections[3].width")).ToBeFocusedAsync();
        await Assertions.Expect(page.GetByText("the last section leads back to A1")).ToBeVisibleAsync();

        await page.GetByText("More for line A").PressAsync("Enter");
        await page.Button("Measure line A section by section").PressAsync("Enter");
        await Assertions.Expect(page.Field("lines[0].sections[2].width")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Field("lines[0].sections[3].width")).ToHaveCountAsync(0);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_mistake_in_what_is_folded_away_opens_it_while_somebody_types()
    {
        await using var shop = await RunningShop.StartAsync();
        var draft = await shop.DraftAsync();
        var page = await browser.OpenAsync(shop, 1280, 900);
        await page.GotoAsync($"/drafts/{draft}");
        await Assertions.Expect(page.Field("lines[0].rows[0].start.eye.pin")).ToBeHiddenAsync();
        await page.Field("lines[0].rows[0].start").FillAsync("eye");
        await Assertions.Expect(page.Field("lines[0].rows[0].start.eye.pin")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("[data-note='lines[0].rows[0].start.eye.pin'] .error")).ToContainTextAsync("Missing");
        foreach (var (name, text) in new[] { ("pin", "1/2"), ("length", "6"), ("reach", "1 1/2") })
            await page.Field($"lines[0].rows[0].start.eye.{name}").FillAsync(text);
        await Assertions.Expect(page.Locator("#standing")).ToContainTextAsync("Ready");
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task The_figures_of_each_manner_of_shrinking_stand_below_the_choice_before_one_is_made()
    {
        await using var shop = await RunningShop.StartAsync();
        var draft = await shop.DraftAsync(form => form with { Rope = form.Rope with { Material = "manila" } });
        var page = await browser.OpenAsync(shop, 1280, 900);
        await page.GotoAsync($"/drafts/{draft}");
        await page.Locator("summary", new() { HasText = "Natural rope" }).ClickAsync();
        await page.Field("allowances.wetting.loses").FillAsync("12.5");
        var figures = page.Locator("[data-note='allowances.wetting.manner'] .echo");
        await Assertions.Expect(figures).ToHaveCountAsync(3);
        await page.Field("allowances.wetting.manner").SelectOptionAsync("hung-long");
        await Assertions.Expect(page.Locator("#standing")).ToContainTextAsync("Ready");
        await Assertions.Expect(figures).ToHaveCountAsync(3);
        await Assertions.Expect(page.Locator("#preview li").Filter(new() { HasText = "is cut for" })).ToHaveCountAsync(0);
        await page.Field("allowances.wetting.manner").SelectOptionAsync("");
        await page.Field("allowances.wetting.loses").FillAsync("");
        await Assertions.Expect(figures).ToHaveCountAsync(0);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_plain_draft_folds_away_what_few_need()
    {
        await using var shop = await RunningShop.StartAsync();
        var draft = await shop.DraftAsync();
        var page = await browser.OpenAsync(shop, 1280, 900);
        await page.GotoAsync($"/drafts/{draft}");
        Assert.Equal(0, await page.Locator("#draft-form details[open]").CountAsync());
        string[] seen = ["mark", "shape", "across", "height", "turn"];
        Assert.Equal(
            seen.Select(field => $"lines[0].posts[1].{field}"),
            await page.EvaluateAsync<string[]>("[...document.querySelectorAll('[name^=\"lines[0].posts[1].\"]')].filter(box => box.checkVisibility()).map(box => box.name)"));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_released_job_with_what_real_sites_have_opens_as_a_draft_of_its_change()
    {
        await using var shop = await RunningShop.StartAsync();
        var draft = await shop.DraftAsync(form => DraftFields.With(form with { Number = "LQ-77" }, RealSite));
        var taken = await new DraftIntake(shop.Database, new(shop.Database, ShopTables.Standard)).TakeInAsync(draft, 1, "test", TestContext.Current.CancellationToken);
        Assert.Null(taken.Problem);
        await new JobRelease(shop.Database).ReleaseAsync("LQ-77", "test", TestContext.Current.CancellationToken);
        var page = await browser.OpenAsync(shop, 1280, 900);
        await page.GotoAsync("/jobs/LQ-77");
        await page.Button("Change this job").ClickAsync();
        await page.WaitForURLAsync("**/drafts/*");
        await Assertions.Expect(page.Locator("h1")).ToContainTextAsync("Change of released job LQ-77");
        await Assertions.Expect(page.Field("lines[0].posts[1].holes")).ToHaveValueAsync("low: 1 5/8 in");
        await Assertions.Expect(page.Field("lines[0].rows[0].finish.eye.pin")).ToHaveValueAsync("1/2 in");
        await page.Field("lines[0].rows[0].heights").FillAsync("A2: 34");
        await page.Button("Save and check").ClickAsync();
        await page.Button("Show what changes in the job").ClickAsync();
        await Assertions.Expect(page.Locator("h1")).ToContainTextAsync("Change of job LQ-77");
        await page.Context.CloseAsync();
    }

    [Theory]
    [InlineData(1280, 800)]
    [InlineData(820, 1180)]
    [InlineData(390, 844)]
    public async Task Axe_finds_nothing_wrong_with_everything_unfolded_and_the_page_fits(int width, int height)
    {
        await using var shop = await RunningShop.StartAsync();
        var draft = await shop.DraftAsync(form => DraftFields.With(form, RealSite));
        var curve = await shop.DraftAsync(form => DraftEdits.PutOnCurve(form, 0));
        var ring = await shop.DraftAsync(_ => LongRing);
        var page = await browser.OpenAsync(shop, width, height);
        foreach (var address in new[] { $"/drafts/{draft}", $"/drafts/{curve}", $"/drafts/{ring}", "/drafts/new" })
        {
            await page.GotoAsync(address);
            await Assertions.Expect(page.Locator("h1")).ToContainTextAsync("raft");
            await page.EvaluateAsync("document.querySelectorAll('details').forEach(fold => fold.open = true)");
            var result = await page.RunAxe();
            Assert.Empty(result.Violations.Select(violation => $"{address}: {violation.Id}: {violation.Nodes[0].Html}"));
            Assert.Equal(width, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        }
        await page.Context.CloseAsync();
    }

    /// <summary>A ring that is drawn in more than one stretch.</summary>
    private static DraftForm LongRing => new DraftQuestions
    {
        Number = "LQ-5002",
        Posts = "8",
        Course = DraftLine.Closed,
        Shape = "round",
        Girth = "26",
        PostHeight = "42",
        Spacing = "centres",
        Width = "70",
        Rows = "36",
        Diameter = "1 1/2",
        Sag = "4",
        Ends = "wrap 1",
        Between = "wrap 1",
    }.ToForm().OrThrow();

    private static IEnumerable<KeyValuePair<string, string>> RealSite =>
    [
        new("boring", "site"), new("bore", "level"), new("longest", "600'"), new("rope.colour", "tan"), new("lines[0].drop", "31"),
        new("lines[0].posts[1].holes", "low: 1 5/8"), new("lines[0].posts[2].boring", "shop"), new("lines[0].sections[1].clearAt", "low: 71 1/2"),
        new("lines[0].rows[0].heights", "A2: 35"), new("lines[0].rows[0].finish", "eye"), new("lines[0].rows[0].finish.eye.pin", "1/2"),
        new("lines[0].rows[0].finish.eye.length", "6"), new("lines[0].rows[0].finish.eye.reach", "1 1/2"),
    ];
}
