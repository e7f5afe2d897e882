using CutShop.Testing.Rendering;
using CutShop.Web.Tests.Site;
using Microsoft.Playwright;

namespace CutShop.Web.Tests.Benches;

/// <summary>Parcels of a limited weight, and the reminder that follows a closed parcel.</summary>
public sealed class SplitParcelPagesTests(HeadlessBrowser browser)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_piece_that_is_too_much_for_a_parcel_goes_into_the_next_which_one_tap_begins()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.PlanAndPackAsync();
        Assert.Null((await new CutBench(shop.Database).RecordCutAsync(job.Codes[1], "Cai", "cut 2", Cancel)).Problem);
        Assert.Empty(await new SendingSettingsShelf(shop.Database).SetAsync(new("1", "no", "6"), "Ada", Cancel));
        var page = await browser.OpenAsync(shop, 390, 844, touch: true, role: Role.Cutter);
        await page.GotoAsync($"/pack/{job.Number}");
        var second = job.Pieces[1].Run;
        await Assertions.Expect(page.GetByText($"{second} does not fit into parcel 1 any more: it would be over 1 lb.")).ToBeVisibleAsync();
        await page.TouchAsync($"Put in {second}");
        await Assertions.Expect(page.GetByText("Begin the next parcel and scan it again.")).ToBeVisibleAsync();
        await page.Locator(".verdict").TapAsync();
        await page.TouchAsync("Close parcel 1, begin parcel 2");
        await page.TouchAsync("Go on with parcel 1");
        await page.TouchAsync("Close parcel 1, begin parcel 2");
        await page.TouchAsync($"Put in {second}");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = $"Take out {second}", Exact = true })).ToBeVisibleAsync();
        Assert.Equal([1, 2], new PackingBench(shop.Database).Find(job.Number)!.Pieces.Where(piece => piece.IsPacked).Select(piece => piece.Parcel));
        await Assertions.Expect(page.GetByText("parcel 2", new() { Exact = true })).ToBeVisibleAsync();
        var list = Poppler.WordsOf(await shop.Client.GetByteArrayAsync(new Uri($"/pack/{job.Number}/list.pdf", UriKind.Relative), Cancel));
        Assert.Contains("Parcel 2 of 2: ", list, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_desk_puts_setting_again_off_and_marks_it_and_the_board_shows_what_is_due()
    {
        var time = new Microsoft.Extensions.Time.Testing.FakeTimeProvider(new(2027, 2, 1, 8, 0, 0, TimeSpan.Zero));
        await using var shop = await RunningShop.StartAsync(time);
        await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        const string address = "/jobs/LQ-1042";
        Assert.Contains("it comes by itself when the parcel is closed", await PageAsync(address), StringComparison.Ordinal);
        using (var refused = await shop.Client.SendFormAsync($"{address}?handler=ReSet", ("day", "2026-01-01"), ("key", SiteShop.NewKey())))
            Assert.Contains("\"2026-01-01\" is no day from today on; accepted: a day such as 2027-03-01.", await refused.TextAsync(), StringComparison.Ordinal);
        using (var chosen = await shop.Client.SendFormAsync($"{address}?handler=ReSet", ("day", "2027-02-01"), ("key", SiteShop.NewKey())))
            Assert.Contains("Due on ", await chosen.TextAsync(), StringComparison.Ordinal);
        Assert.Contains("Rope to set again", await PageAsync("/board"), StringComparison.Ordinal);
        using (var done = await shop.Client.SendFormAsync($"{address}?handler=ReSetDone", ("key", SiteShop.NewKey())))
            Assert.Contains("Set again on ", await done.TextAsync(), StringComparison.Ordinal);
        Assert.DoesNotContain("Rope to set again", await PageAsync("/board"), StringComparison.Ordinal);
        var cutter = await shop.SignInAsync(Role.Cutter);
        Assert.DoesNotContain("Remind on this day", await cutter.GetStringAsync(new Uri(address, UriKind.Relative), Cancel), StringComparison.Ordinal);

        Task<string> PageAsync(string of) => shop.Client.GetStringAsync(new Uri(of, UriKind.Relative), Cancel);
    }

    [Fact]
    public async Task The_page_of_a_line_answers_what_is_asked_about_a_railing()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        foreach (var (language, says) in new[] { ("en", "For information: not a rating"), ("es", "no es una certificación") })
        {
            await shop.Client.GetStringAsync(new Uri($"/language/{language}?back=/p", UriKind.Relative), Cancel);
            using var answer = await shop.Client.AskAsync($"/p/{job.Codes[0].Plain}/line");
            Assert.Contains(says, await answer.TextAsync(), StringComparison.Ordinal);
        }
    }
}
