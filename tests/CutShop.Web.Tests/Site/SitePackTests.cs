using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using CutShop.Testing.Jobs;
using CutShop.Web.Tests.Benches;

namespace CutShop.Web.Tests.Site;

public sealed partial class SitePackTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_stored_page_is_the_page_that_a_stranger_gets_online()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var pack = await shop.PackOfAsync(job);
        var lines = await LinesAsync(shop.Client, pack);
        var pages = lines.Where(line => line.Html is not null).ToDictionary(line => line.Path!, line => line.Html!);
        foreach (var (path, html) in pages)
            Assert.Equal(WithoutKeys(await shop.Stranger.GetStringAsync(Path(path), Cancel)), WithoutKeys(html));
        Assert.All(job.Codes, code => Assert.Contains($"/p/{code.Plain}", pages.Keys));
        Assert.All(job.Codes, code => Assert.Contains($"/p/{code.Plain}/report", pages.Keys));
        Assert.All(job.Codes, code => Assert.Contains($"/p/{code.Plain}/line", lines.Select(line => line.Path)));
        Assert.All(lines.Where(line => line.Same is not null), line => Assert.Contains(line.Same!, pages.Keys));
        Assert.Equal(job.Pieces.Count, lines[^1].Pieces);
    }

    [Fact]
    public async Task A_pack_has_the_posts_to_bore_and_the_set_out_once_a_line_and_every_label_leads_to_them()
    {
        await using var shop = await RunningShop.StartAsync();
        await new JobIntake(shop.Database, ShopTables.Standard).TakeInAsync(SmallJobs.StandingArc("LQ-77"), "test", cancel: Cancel);
        var job = shop.Jobs.Find("LQ-77")!;
        var lines = await LinesAsync(shop.Client, await shop.PackOfAsync(job));
        foreach (var page in new[] { "bores", "set-out" })
        {
            Assert.Single(lines, line => line.Html is not null && line.Path == $"/p/{job.Codes[0].Plain}/{page}");
            Assert.Equal(job.Codes.Skip(1).Select(code => $"/p/{code.Plain}/{page}"), lines.Where(line => line.Same == $"/p/{job.Codes[0].Plain}/{page}").Select(line => line.Path));
            foreach (var (path, html) in lines.Where(line => line.Html is not null && line.Path!.EndsWith(page, StringComparison.Ordinal)).Select(line => (line.Path!, line.Html!)))
                Assert.Equal(WithoutKeys(await shop.Stranger.GetStringAsync(Path(path), Cancel)), WithoutKeys(html));
        }
    }

    [Fact]
    public async Task Stored_pages_speak_the_language_of_the_phone()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var pack = await shop.PackOfAsync(job);
        using var phone = shop.NewClient();
        (await phone.AskAsync("/language/es?back=/p")).Dispose();
        Assert.All((await LinesAsync(phone, pack)).Where(line => line.Html is not null), line => Assert.Contains("<html lang=\"es\">", line.Html, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_pack_shows_no_more_than_its_labels_do()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var pack = await shop.PackOfAsync(job);
        foreach (var address in new[] { $"/s/{pack.Plain}", $"/s/{pack.Plain}/pages", $"/s/{pack.Plain}/pack.html" })
        {
            var text = await shop.Stranger.GetStringAsync(Path(address), Cancel);
            Assert.Contains(job.Pieces[0].Run, text, StringComparison.Ordinal);
            Assert.DoesNotContain("Lantern Quay", text, StringComparison.Ordinal);
            Assert.DoesNotMatch(@"\b2027\b", text); // a key of a form may hold the digits by chance
        }
    }

    [Fact]
    public async Task A_revoked_pack_opens_nothing_and_the_new_code_opens_it()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var old = await shop.PackOfAsync(job);
        using var sent = await shop.Client.SendFormAsync("/jobs/LQ-1042/labels?handler=Pack", ("reason", "the list was lost"), ("key", SiteShop.NewKey()));
        var renewed = await shop.PackOfAsync(job);
        Assert.NotEqual(old, renewed);
        Assert.Contains($"{renewed}", await sent.TextAsync(), StringComparison.Ordinal);
        foreach (var address in new[] { "", "/pages", "/pack.html", "/pack.pdf" })
        {
            using var gone = await shop.Stranger.AskAsync($"/s/{old.Plain}{address}");
            Assert.Equal((address, HttpStatusCode.NotFound), (address, gone.StatusCode));
            using var good = await shop.Stranger.AskAsync($"/s/{renewed.Plain}{address}");
            Assert.Equal((address, HttpStatusCode.OK), (address, good.StatusCode));
        }
    }

    [Fact]
    public async Task The_file_stands_alone_and_its_contents_lead_to_every_piece()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var pack = await shop.PackOfAsync(job);
        using var answer = await shop.Stranger.AskAsync($"/s/{pack.Plain}/pack.html");
        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition!.DispositionType);
        var file = await answer.Content.ReadAsStringAsync(Cancel);
        Assert.All(job.Codes, code =>
        {
            Assert.Contains($"href=\"#{code.Plain}\"", file, StringComparison.Ordinal);
            Assert.Contains($"id=\"{code.Plain}\"", file, StringComparison.Ordinal);
        });
        Assert.Empty(FromOutside().Matches(file).Select(match => match.Value));
        var pdf = await shop.Stranger.GetByteArrayAsync(Path($"/s/{pack.Plain}/pack.pdf"), Cancel);
        Assert.Equal("%PDF"u8.ToArray(), pdf[..4]);
    }

    [Fact]
    public async Task A_job_has_one_pack_and_the_packing_list_and_the_job_lead_to_it()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        using var owner = await shop.SignInAsync(CutShop.Shop.People.Role.Desk, follow: false);
        using var led = await owner.AskAsync("/jobs/LQ-1042/site-pack");
        var pack = await shop.PackOfAsync(job);
        Assert.Equal($"/s/{pack.Plain}", led.Headers.Location!.OriginalString);
        var list = await owner.GetStringAsync(Path("/pack/LQ-1042/list"), Cancel);
        Assert.Contains($"HTTPS://SHOP.EXAMPLE/S/{pack.Plain}", list, StringComparison.Ordinal);
        using var none = await owner.AskAsync("/jobs/none/site-pack");
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    [Theory]
    [InlineData("br")]
    [InlineData("gzip")]
    [InlineData("identity")]
    public async Task A_phone_gets_the_pack_in_the_coding_that_it_takes(string coding)
    {
        await using var shop = await RunningShop.StartAsync();
        var pack = await shop.PackOfAsync(await shop.TakeInDemoAsync("lq-1043-beach-ramp.json"));
        using var phone = new HttpClient(new HttpClientHandler { AutomaticDecompression = DecompressionMethods.All }) { BaseAddress = shop.Address };
        phone.DefaultRequestHeaders.AcceptEncoding.ParseAdd(coding);
        Assert.NotNull((await LinesAsync(phone, pack))[^1].Pieces);
    }

    private static async Task<IReadOnlyList<PackLine>> LinesAsync(HttpClient phone, PieceCode pack) =>
    [
        .. (await phone.GetStringAsync(Path($"/s/{pack.Plain}/pages"), Cancel)).Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(line => JsonSerializer.Deserialize<PackLine>(line, JsonSerializerOptions.Web)!),
    ];

    private static Uri Path(string path) => new(path, UriKind.Relative);

    /// <summary>Each form has a key of its own each time it is shown.</summary>
    private static string WithoutKeys(string html) => Key().Replace(html, "key");

    private sealed record PackLine(string? Path, string? Html, string? Same, int? Pieces);

    [GeneratedRegex("name=\"key\" value=\"[0-9a-f]{32}\"", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Key();

    [GeneratedRegex("(src|href)=\"(?!#)[^\"]*\"|<script|url\\(", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex FromOutside();
}
