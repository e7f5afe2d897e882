using System.IO.Compression;
using System.Net;
using CutShop.Web.Tests.Benches;

namespace CutShop.Web.Tests.Site;

/// <summary>Pages for installers that are kept until something changes.</summary>
public sealed class CachedSitePagesTests
{
    private const string Installed = "name=\"state\" value=\"not-installed\"";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_kept_page_shows_a_change_at_once_whichever_program_made_it()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var page = new Uri($"/p/{job.Codes[0].Plain}", UriKind.Relative);
        var first = await shop.Stranger.GetStringAsync(page, Cancel);
        Assert.DoesNotContain(Installed, first, StringComparison.Ordinal);
        // The key of its form shows that it is the one that was kept.
        Assert.Equal(first, await shop.Stranger.GetStringAsync(page, Cancel));
        await shop.MarkAsync(job.Codes[0], InstalledState.Installed);
        Assert.Contains(Installed, await shop.Stranger.GetStringAsync(page, Cancel), StringComparison.Ordinal);

        using var other = shop.OpenAgain();
        await new InstalledMarks(other).MarkAsync(job.Codes[0], new(InstalledState.NotInstalled, InstalledState.Installed, At: null), "test", "k", Cancel);
        Assert.DoesNotContain(Installed, await shop.Stranger.GetStringAsync(page, Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_person_sees_is_not_kept_for_strangers_and_each_language_has_its_own()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var page = new Uri($"/p/{job.Codes[0].Plain}", UriKind.Relative);
        Assert.Contains("To the shop", await shop.Client.GetStringAsync(page, Cancel), StringComparison.Ordinal);
        Assert.DoesNotContain("To the shop", await shop.Stranger.GetStringAsync(page, Cancel), StringComparison.Ordinal);
        Assert.Contains("To the shop", await shop.Client.GetStringAsync(page, Cancel), StringComparison.Ordinal);
        var spanish = shop.NewClient();
        (await spanish.AskAsync("/language/es?back=/p")).Dispose();
        Assert.Contains("<html lang=\"es\">", await spanish.GetStringAsync(page, Cancel), StringComparison.Ordinal);
        Assert.Contains("<html lang=\"en\">", await shop.Stranger.GetStringAsync(page, Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Site_pages_come_compressed_and_pages_with_secrets_of_forms_do_not()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        shop.Stranger.DefaultRequestHeaders.AcceptEncoding.ParseAdd("br");
        for (var i = 0; i < 2; i++)
        {
            using var answer = await shop.Stranger.AskAsync($"/p/{job.Codes[0].Plain}");
            Assert.Equal(["br"], answer.Content.Headers.ContentEncoding);
            using var reader = new StreamReader(new BrotliStream(await answer.Content.ReadAsStreamAsync(Cancel), CompressionMode.Decompress));
            Assert.Contains(job.Codes[0].ToString(), await reader.ReadToEndAsync(Cancel), StringComparison.Ordinal);
        }
        using var form = await shop.Stranger.AskAsync("/sign-in");
        Assert.Equal(HttpStatusCode.OK, form.StatusCode);
        Assert.Empty(form.Content.Headers.ContentEncoding);
    }
}
