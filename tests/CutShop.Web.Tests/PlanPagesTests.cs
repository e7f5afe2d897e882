using CutShop.Testing.Jobs;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace CutShop.Web.Tests;

public sealed class PlanPagesTests(HeadlessBrowser browser, PlanPagesTests.PlannedShop planned) : IClassFixture<PlanPagesTests.PlannedShop>
{
    [Fact]
    public async Task A_coil_is_hung_up_a_plan_is_made_and_accepted_and_the_tickets_know_their_coil()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.TakeInDemoAsync("lq-1042-north-walk.json");
        var page = await browser.OpenAsync(shop, 820, 1180);

        await page.GotoAsync("/stock");
        await page.GetByLabel("Material").SelectOptionAsync("polypropylene");
        await page.GetByLabel("Diameter").FillAsync("1 1/2 in");
        await page.GetByLabel("Lot").FillAsync("P-2611");
        await page.GetByLabel("Length").FillAsync("600 yards");
        await page.GetByRole(AriaRole.Button, new() { Name = "Hang it up" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Length: \"600 yards\"");
        await Assertions.Expect(page.GetByLabel("Lot")).ToHaveValueAsync("P-2611");
        await page.GetByLabel("Length").FillAsync("600 ft");
        await page.GetByRole(AriaRole.Button, new() { Name = "Hang it up" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Coil K0001");

        await page.GotoAsync("/plans");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make a plan" }).ClickAsync();
        await page.WaitForURLAsync("**/plans/1");
        await Assertions.Expect(page.GetByText("proved best")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Accept plan 1" }).ClickAsync();
        await Assertions.Expect(page.GetByText("accepted", new() { Exact = true })).ToBeVisibleAsync();

        await page.GotoAsync("/jobs/LQ-1042/cut-tickets");
        await Assertions.Expect(page.Locator("article.sheet").First).ToContainTextAsync("K0001, lot P-2611");
        Assert.All(shop.Jobs.Find("LQ-1042")!.Pieces, piece => Assert.Equal("K0001", piece.Place!.Coil));
    }

    [Fact]
    public async Task What_is_short_is_listed_to_buy_with_the_day_it_is_needed()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.TakeInDemoAsync("lq-1043-beach-ramp.json");
        var page = await browser.OpenAsync(shop);
        await page.GotoAsync("/plans");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make a plan" }).ClickAsync();
        await page.WaitForURLAsync("**/plans/1");
        await page.GotoAsync("/plans");
        var row = page.GetByRole(AriaRole.Region, new() { Name = "What to buy" }).GetByRole(AriaRole.Row).Nth(1);
        await Assertions.Expect(row).ToContainTextAsync("1 1/2 in manila, three-strand");
        await Assertions.Expect(row).ToContainTextAsync("2027-03-05");
    }

    [Theory]
    [InlineData("/stock", 1280, 800)]
    [InlineData("/stock", 390, 844)]
    [InlineData("/stock/K0001", 820, 1180)]
    [InlineData("/stock/K0002", 390, 844)]
    [InlineData("/stock/K0002", 1280, 800)]
    [InlineData("/stock/K0003", 820, 1180)]
    [InlineData("/plans", 1280, 800)]
    [InlineData("/plans", 390, 844)]
    [InlineData("/plans/1", 820, 1180)]
    [InlineData("/plans/1", 390, 844)]
    [InlineData("/settings/cutting", 390, 844)]
    public async Task Axe_finds_nothing_wrong_and_no_page_is_wider_than_its_screen(string address, int width, int height)
    {
        var page = await browser.OpenAsync(planned.Shop, width, height);
        Assert.Equal(200, (await page.GotoAsync(address))!.Status);
        var result = await page.RunAxe();
        Assert.Empty(result.Violations.Select(violation => $"{violation.Id}: {violation.Nodes[0].Html}"));
        Assert.Equal(width, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_lot_s_sample_is_measured_a_coil_is_soaked_and_taken_back_and_preshrunk_jobs_wait_for_it()
    {
        await using var shop = await RunningShop.StartAsync();
        await new JobIntake(shop.Database, ShopTables.Standard).TakeInAsync(
            SmallJobs.OnePiece("LQ-7", material: "manila", allowances: """{ "wetting": { "loses": "12.5%", "manner": "preshrunk" } }"""), "test", cancel: TestContext.Current.CancellationToken);
        var page = await browser.OpenAsync(shop, 820, 1180);
        await page.GotoAsync("/stock");
        await page.GetByLabel("Material").SelectOptionAsync("manila");
        await page.GetByLabel("Diameter").FillAsync("1 1/2 in");
        await page.GetByLabel("Lot").FillAsync("M-7");
        await page.GetByLabel("Length").FillAsync("600 ft");
        await page.GetByRole(AriaRole.Button, new() { Name = "Hang it up" }).ClickAsync();

        await page.GetByLabel("Sample before it is soaked").FillAsync("10 ft");
        await page.GetByLabel("Sample once it is dry").FillAsync("dry");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the sample" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Sample once it is dry: \"dry\"");
        await page.GetByLabel("Sample once it is dry").FillAsync("8 ft 9 in");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the sample" }).ClickAsync();
        await Assertions.Expect(page.GetByText("Together: 12.5% of its length")).ToBeVisibleAsync();

        await page.GotoAsync("/plans");
        await Assertions.Expect(page.Locator(".note.warn")).ToContainTextAsync("only 600' 0\"");
        await Assertions.Expect(page.Locator(".note.warn")).ToContainTextAsync("K0001");

        await page.GotoAsync("/stock/K0001");
        await page.GetByLabel("Length once it is dry").FillAsync("525 ft");
        await page.GetByRole(AriaRole.Button, new() { Name = "Coil K0001 is soaked and dried" }).ClickAsync();
        await Assertions.Expect(page.Locator(".lead")).ToContainTextAsync("preshrunk");
        await page.GotoAsync("/plans");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make a plan" }).ClickAsync();
        await page.WaitForURLAsync("**/plans/1");
        Assert.Equal(("K0001", true), (new PlanShelf(shop.Database).Find(1)!.Coils[0].Coil, new PlanShelf(shop.Database).Find(1)!.Kind.IsPreshrunk));

        await page.GotoAsync("/stock/K0001");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take back that coil K0001 was soaked" }).ClickAsync();
        await Assertions.Expect(page.Locator(".lead")).Not.ToContainTextAsync("preshrunk");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take back K0001 12.5%" }).ClickAsync();
        await Assertions.Expect(page.GetByText("Together:")).ToHaveCountAsync(0);
        Assert.Equal(Length.Foot * 600, new CoilShelf(shop.Database).Find("K0001")!.Left);
    }

    /// <summary>A shop with one job, a coil for it, a plan that is not accepted, and coils of natural rope with samples, new and preshrunk.</summary>
    public sealed class PlannedShop : SharedShop
    {
        protected override async Task FillAsync(RunningShop shop)
        {
            await shop.TakeInDemoAsync("lq-1042-north-walk.json");
            var kind = new RopeKind(RopeMaterial.Polypropylene, LengthText.Parse("1 1/2 in").OrThrow(), RopeKind.ThreeStrand);
            await new CoilShelf(shop.Database).ReceiveAsync(new(kind, "P-2611", Length.Foot * 600, "rack 1"), "test", "r1", TestContext.Current.CancellationToken);
            var manila = kind with { Material = RopeMaterial.Manila, Colour = "tarred" };
            var wetting = new WettingShelf(shop.Database);
            foreach (var key in new[] { "r2", "r3" })
                await new CoilShelf(shop.Database).ReceiveAsync(new(manila, "M-7", Length.Foot * 600, "rack 2"), "test", key, TestContext.Current.CancellationToken);
            await wetting.KeepSampleAsync("K0002", Length.Foot * 10, Length.Foot * 9, "test", "s1", TestContext.Current.CancellationToken);
            await wetting.PreshrinkAsync("K0003", Length.Foot * 600, Length.Foot * 530, "test", "p1", TestContext.Current.CancellationToken);
            await new CutPlanDesk(shop.Database).DraftAsync(kind, dueBy: null, new(TimeSpan.FromSeconds(10)), "test", cancel: TestContext.Current.CancellationToken);
        }
    }
}
