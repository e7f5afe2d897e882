using System.Net;
using System.Text.RegularExpressions;
using CutShop.Testing.Rendering;
using CutShop.Web.Tests.Benches;
using CutShop.Web.Tests.Orders;

namespace CutShop.Web.Tests.Jobs;

public sealed class JobPagesTests
{
    private const string Address = "/jobs/LQ-1042";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_release_is_taken_back_on_the_job_s_page_and_each_ticket_says_that_it_is_not_released()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        Assert.Contains("Take the release back", await PageAsync(shop, Address), StringComparison.Ordinal);
        Assert.DoesNotContain("NOT RELEASED", await PageAsync(shop, $"{Address}/cut-tickets"), StringComparison.Ordinal);
        using (var sent = await shop.Client.SendFormAsync($"{Address}/takeback")) { }
        Assert.Contains("Release to the shop", await PageAsync(shop, Address), StringComparison.Ordinal);
        foreach (var (kind, says) in new[] { ("cut-tickets", "NOT RELEASED: do not cut"), ("drill-tickets", "NOT RELEASED: do not drill") })
        {
            var page = await PageAsync(shop, $"{Address}/{kind}");
            Assert.Equal(Regex.Count(page, "<article class=\"sheet\""), Regex.Count(page, $"<p class=\"stamp\">{says}</p>"));
            Assert.Contains(says, await WordsAsync(shop, $"{Address}/{kind}.pdf"), StringComparison.Ordinal);
        }
        var code = shop.Jobs.Find("LQ-1042")!.Pieces[0].Code.Plain;
        Assert.Contains("NOT RELEASED: do not cut", await WordsAsync(shop, $"/cut/{code}/ticket.pdf"), StringComparison.Ordinal);
        Assert.Contains("NOT RELEASED: do not drill", await WordsAsync(shop, "/drill/LQ-1042/A1/ticket.pdf"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_cancelled_job_shows_why_its_history_and_the_way_back()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        using (var sent = await shop.Client.SendFormAsync($"{Address}/cancel", ("reason", "The pier was sold."))) { }
        var job = await PageAsync(shop, Address);
        Assert.Contains("Reason: The pier was sold.", job, StringComparison.Ordinal);
        Assert.Contains("Take this job up again", job, StringComparison.Ordinal);
        using (var sent = await shop.Client.SendFormAsync($"{Address}/takeup")) { }
        Assert.DoesNotContain("The pier was sold.", await PageAsync(shop, Address), StringComparison.Ordinal);
        Assert.All(shop.Jobs.Find("LQ-1042")!.Pieces, piece => Assert.Equal("waiting", piece.State));
        var history = await PageAsync(shop, $"{Address}/history");
        Assert.Matches("(?s)taken up again.*Test owner.*cancelled.*The pier was sold\\..*taken in", history);
        using var none = await shop.Client.AskAsync("/jobs/LQ-1/history");
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    [Fact]
    public async Task A_job_at_the_bench_has_no_way_back_from_its_release()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        Assert.True((await new DrillBench(shop.Database).NextAsync("Odo", "next", Cancel)).IsDone);
        Assert.DoesNotContain("Take the release back", await PageAsync(shop, Address), StringComparison.Ordinal);
        using (var sent = await shop.Client.SendFormAsync($"{Address}/takeback")) { }
        Assert.NotNull(shop.Jobs.Find("LQ-1042")!.ReleasedAt);
    }

    [Fact]
    public async Task A_search_says_how_many_there_are_among_all_jobs()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        await new JobRelease(shop.Database).CancelAsync("LQ-1042", "a reason", "test", Cancel);
        var page = await PageAsync(shop, "/?q=north");
        Assert.Contains("No matching jobs.", page, StringComparison.Ordinal);
        const string All = "/?q=north&from=&to=&show=all";
        Assert.Contains($"href=\"{All}\">1 among all jobs<", page, StringComparison.Ordinal);
        Assert.Contains("LQ-1042", await PageAsync(shop, All), StringComparison.Ordinal);
        Assert.Contains("None among all jobs.", await PageAsync(shop, "/?q=south"), StringComparison.Ordinal);
        Assert.DoesNotContain("among all jobs", await PageAsync(shop, "/"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_pull_over_the_limit_warns_at_the_job_and_beside_the_quote_and_not_in_what_programs_read()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.KeepPricesAsync();
        var quote = await shop.QuoteAsync(await shop.DraftAsync(form => form with
        {
            Lines = [form.Lines[0] with { Sections = [form.Lines[0].Sections[0] with { Width = "2000" }, .. form.Lines[0].Sections.Skip(1)] }],
        }));
        const string Says = "over the shop's limit of 200 lb";
        Assert.Contains(Says, await PageAsync(shop, $"/quotes/{quote}"), StringComparison.Ordinal);
        Assert.DoesNotContain("shop's limit", await WordsAsync(shop, $"/quotes/{quote}.pdf"), StringComparison.Ordinal);
        using (var sent = await shop.Client.SendFormAsync($"/quotes/{quote}")) { }
        Assert.Contains(Says, await PageAsync(shop, "/jobs/LQ-5001"), StringComparison.Ordinal);
        using (var sent = await shop.Client.SendFormAsync("/settings/desk", ("pull", "9000"))) { }
        Assert.DoesNotContain("over the shop's limit", await PageAsync(shop, "/jobs/LQ-5001"), StringComparison.Ordinal);
        var program = await shop.WithKeyAsync(KeyScope.Read);
        using var takeoff = await program.AskAsync("/api/jobs/LQ-5001/takeoff");
        Assert.DoesNotContain("200 lb", await takeoff.TextAsync(), StringComparison.Ordinal);
        using var jobs = await program.AskAsync("/api/jobs");
        Assert.Contains("\"state\":\"received\"", await jobs.TextAsync(), StringComparison.Ordinal);
        await new JobRelease(shop.Database).CancelAsync("LQ-5001", "a reason", "test", Cancel);
        using var cancelled = await program.AskAsync("/api/jobs");
        Assert.Contains("\"state\":\"cancelled\"", await cancelled.TextAsync(), StringComparison.Ordinal);
    }

    private static async Task<string> PageAsync(RunningShop shop, string address)
    {
        using var answer = await shop.Client.AskAsync(WebUtility.HtmlDecode(address));
        Assert.Equal((address, HttpStatusCode.OK), (address, answer.StatusCode));
        return await answer.TextAsync();
    }

    private static async Task<string> WordsAsync(RunningShop shop, string address)
    {
        using var answer = await shop.Client.AskAsync(address);
        return Poppler.WordsOf(await answer.Content.ReadAsByteArrayAsync(Cancel));
    }
}
