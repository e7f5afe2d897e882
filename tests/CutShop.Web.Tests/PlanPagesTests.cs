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

    /// <summary>A shop with one job, a coil for it, and a plan that is not accepted.</summary>
    public sealed class PlannedShop : SharedShop
    {
        protected override async Task FillAsync(RunningShop shop)
        {
            await shop.TakeInDemoAsync("lq-1042-north-walk.json");
            var kind = new RopeKind(RopeMaterial.Polypropylene, LengthText.Parse("1 1/2 in").OrThrow(), RopeKind.ThreeStrand);
            await new CoilShelf(shop.Database).ReceiveAsync(new(kind, "P-2611", Length.Foot * 600, "rack 1"), "test", "r1", TestContext.Current.CancellationToken);
            await new CutPlanDesk(shop.Database).DraftAsync(kind, dueBy: null, new(TimeSpan.FromSeconds(10)), "test", cancel: TestContext.Current.CancellationToken);
        }
    }
}
