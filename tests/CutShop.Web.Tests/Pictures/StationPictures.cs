using System.Diagnostics;
using System.Globalization;
using CutShop.Testing;
using CutShop.Web.Tests.Benches;
using CutShop.Web.Tests.Orders;
using Microsoft.Extensions.Time.Testing;
using Microsoft.Playwright;

namespace CutShop.Web.Tests.Pictures;

/// <summary>
/// The pictures in the README: each station with the demo's jobs, at the size of its device, and the paper. Not run with the
/// tests; <c>bash tests/pictures</c> takes them anew.
/// </summary>
public sealed class StationPictures(HeadlessBrowser browser)
{
    private const string Job = "LQ-1042";

    private static readonly (int Width, int Height) Desk = (1280, 860);
    private static readonly (int Width, int Height) Tablet = (1024, 768);
    private static readonly (int Width, int Height) Phone = (390, 844);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact(Explicit = true)]
    public async Task Every_station_has_its_picture()
    {
        var time = new FakeTimeProvider(new DateTimeOffset(2027, 3, 1, 9, 30, 0, TimeSpan.Zero));
        await using var shop = await RunningShop.StartAsync(time);
        await shop.KeepPricesAsync();
        await shop.PlanDemoAsync("lq-1043-beach-ramp.json");
        var job = await shop.PlanDemoAsync(BenchShop.NorthWalk);
        await shop.TakeInDemoAsync("lq-1044-lamp-pier.json");

        var desk = await OpenAsync(shop, Desk, Role.Desk);
        await desk.StartDraftAsync();
        await TakeAsync(desk, "desk-draft");
        await desk.Button("Make a quote").ClickAsync();
        await desk.WaitForURLAsync("**/quotes/*");
        await TakeAsync(desk, "desk-quote");
        await desk.GotoAsync($"/jobs/{Job}");
        await TakeAsync(desk, "desk-job");

        var cutter = await OpenAsync(shop, Tablet, Role.Cutter);
        await NextAsync(cutter, "/cut", "Next piece");
        await TakeAsync(cutter, "cutter-mark");
        await cutter.TouchAsync("Done: pull and mark");
        await cutter.Locator("li.now button.tap").TapAsync();
        await Assertions.Expect(cutter.Locator(".measures button.main")).ToBeEnabledAsync();
        await TakeAsync(cutter, "cutter-measure");

        var driller = await OpenAsync(shop, Tablet, Role.Driller);
        await NextAsync(driller, "/drill", "Next post");
        await TakeAsync(driller, "driller-post");
        await driller.GotoAsync($"/pack/{Job}");
        await TakeAsync(driller, "packing");

        var owner = await OpenAsync(shop, Desk, Role.Owner);
        await owner.GotoAsync("/board");
        await TakeAsync(owner, "owner-board");
        await owner.GotoAsync("/plans/2");
        await TakeAsync(owner, "owner-plan");

        var installer = await browser.OpenAsStrangerAsync(shop, Phone.Width, Phone.Height, touch: true);
        await installer.GotoAsync($"/p/{job.Codes[0].Plain}");
        await TakeAsync(installer, "installer-piece");
        await installer.GotoAsync($"/p/{job.Codes[0].Plain}/line");
        await TakeAsync(installer, "installer-line");

        foreach (var (paper, page) in new[] { ("cut-tickets", 1), ("drill-tickets", 2), ("labels", 1) })
            await TakePaperAsync(shop, paper, page);
    }

    private async Task<IPage> OpenAsync(RunningShop shop, (int Width, int Height) screen, Role role) =>
        await browser.OpenAsync(shop, screen.Width, screen.Height, touch: true, role);

    private static async Task NextAsync(IPage page, string bench, string button)
    {
        await page.GotoAsync(bench);
        await page.TouchAsync(button);
        await page.WaitForURLAsync($"**{bench}/**");
    }

    private static Task<byte[]> TakeAsync(IPage page, string name) => page.ScreenshotAsync(new() { Path = Path.Combine(Folder(), name + ".png") });

    private static async Task TakePaperAsync(RunningShop shop, string paper, int page)
    {
        var file = Path.Combine(Path.GetTempPath(), $"{Guid.NewGuid():N}.pdf");
        await File.WriteAllBytesAsync(file, await shop.Client.GetByteArrayAsync(new Uri($"/jobs/{Job}/{paper}.pdf", UriKind.Relative), Cancel), Cancel);
        var number = page.ToString(CultureInfo.InvariantCulture);
        using var poppler = Process.Start("pdftoppm", ["-r", paper == "labels" ? "110" : "70", "-f", number, "-l", number, "-singlefile", "-png", file, Path.Combine(Folder(), paper)]);
        await poppler.WaitForExitAsync(Cancel);
        Assert.Equal(0, poppler.ExitCode);
        File.Delete(file);
    }

    private static string Folder() => Path.Combine(SourceTree.Root, "docs", "pictures");
}
