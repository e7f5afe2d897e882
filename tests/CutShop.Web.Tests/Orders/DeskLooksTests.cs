using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace CutShop.Web.Tests.Orders;

public sealed class DeskLooksTests(HeadlessBrowser browser, DeskLooksTests.FilledShop filled) : IClassFixture<DeskLooksTests.FilledShop>
{
    private static readonly (int Width, int Height)[] Screens = [(1280, 800), (820, 1180), (390, 844)];

    public static TheoryData<string> Addresses { get; } =
    [
        "/", "/?show=all&q=lq", "/drafts", "/drafts/new", "/drafts/1", "/drafts/2", "/drafts/3/change", "/quotes/1", "/prices", "/prices/new", "/settings", "/settings/letterhead", "/bits", "/stock",
        "/jobs/LQ-1042", "/jobs/LQ-1042/cancel", "/jobs/LQ-1042/history", "/settings/desk",
    ];

    [Theory]
    [MemberData(nameof(Addresses))]
    public async Task Axe_finds_nothing_wrong_and_the_page_fits_the_screen_at_every_size(string address)
    {
        foreach (var (width, height) in Screens)
        {
            var page = await browser.OpenAsync(filled.Shop, width, height);
            var errors = new List<string>();
            page.Console += (_, message) =>
            {
                if (message.Type == "error")
                    errors.Add(message.Text);
            };
            await page.GotoAsync(address);
            var result = await page.RunAxe();
            Assert.Empty(result.Violations.Select(violation => $"{width}: {violation.Id}: {violation.Nodes[0].Html}"));
            Assert.Equal(width, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
            Assert.Empty(errors);
            await page.Context.CloseAsync();
        }
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/drafts")]
    [InlineData("/drafts/new")]
    [InlineData("/drafts/1")]
    [InlineData("/prices/new")]
    [InlineData("/bits")]
    [InlineData("/settings")]
    public async Task Everything_to_press_or_type_in_is_at_least_48_pixels_tall(string address)
    {
        var page = await browser.OpenAsync(filled.Shop, 820, 1180, touch: true);
        await page.GotoAsync(address);
        var small = await page.EvaluateAsync<string[]>(
            """
            [...document.querySelectorAll('main button, main .button, main .row-link, main input:not([type=hidden]), main select, main summary')]
              .filter(el => el.offsetParent !== null && el.getBoundingClientRect().height < 47.9)
              .map(el => `${el.tagName} ${el.id || el.textContent.trim()} ${el.getBoundingClientRect().height}`)
            """);
        Assert.Empty(small);
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task The_coils_fit_a_screen_of_a_desk_with_their_longest_figures()
    {
        await using var shop = await RunningShop.StartAsync();
        var stock = new CoilShelf(shop.Database);
        foreach (var length in new[] { "587' 11 13/16", "31' 6" })
        {
            await stock.ReceiveAsync(
                new(new(RopeMaterial.Polypropylene, LengthText.Parse("1 1/2 in").OrThrow(), RopeKind.ThreeStrand), "P-2611-2027", LengthText.Parse(length).OrThrow(), "rack 3, left"),
                "test",
                length,
                TestContext.Current.CancellationToken);
        }
        var page = await browser.OpenAsync(shop, 1280, 800);
        await page.GotoAsync("/stock");
        await Assertions.Expect(page.GetByRole(AriaRole.Row)).ToHaveCountAsync(3);
        Assert.Equal(0, await page.EvaluateAsync<int>("(() => { const coils = document.querySelector('.scroll'); return coils.scrollWidth - coils.clientWidth; })()"));
        Assert.True(await page.EvaluateAsync<bool>("document.querySelector('.top').clientHeight < 80"), "the way round stands on one line");
    }

    /// <summary>A shop with a job, prices, a good draft, a bad one, one that changes the job, and a quote.</summary>
    public sealed class FilledShop : SharedShop
    {
        protected override async Task FillAsync(RunningShop shop)
        {
            await shop.KeepPricesAsync();
            await shop.TakeInDemoAsync("lq-1042-north-walk.json");
            var good = await shop.DraftAsync();
            await shop.DraftAsync(form => form with { Number = "", Rope = new() { Material = "manila", Diameter = "thick" }, Lines = [form.Lines[0] with { Mark = "" }] });
            var changing = DraftOf.Job(shop.Jobs.Find("LQ-1042")!.Takeoff.Job);
            await shop.DraftAsync(_ => DraftEdits.AddPost(changing, 0, 3) with { Changes = "LQ-1042" });
            Assert.Equal("1", await shop.QuoteAsync(good));
            await new LetterheadShelf(shop.Database).SetAsync(new("Lantern Quay Ropes", "Quay 1\nLantern Quay"), "test", TestContext.Current.CancellationToken);
        }
    }
}
