using System.Net;
using System.Net.Http.Headers;
using CutShop.Testing.Fuzz;
using CutShop.Web.Tests.Benches;
using CutShop.Web.Tests.Orders;
using CutShop.Web.Tests.Site;

namespace CutShop.Web.Tests.Fuzz;

public sealed class FormFuzzTests
{
    private const int Sheets = 150;
    private const int Photos = 100;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task No_form_of_the_site_crashes_on_what_is_put_into_it()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.PlanDemoAsync();
        await shop.KeepPricesAsync();
        await shop.QuoteAsync(await shop.DraftAsync());
        await shop.DraftAsync(form => form with { Number = "LQ-5002" });
        using (await shop.Client.SendFormAsync($"/cut/{job.Codes[0].Plain}?handler=Take", ("key", "take"))) { }

        var fuzz = new FormFuzz(shop.Client, seed: 20270301);
        await fuzz.RunAsync(timesAForm: 2, Cancel);
        Assert.Empty(fuzz.Found);
        Assert.True(fuzz is { Pages: > 25, Sent: > 100 }, $"{fuzz.Pages} pages, {fuzz.Sent} forms");
        // Refused by the form's own page, and done: neither was all there is.
        Assert.True(fuzz.Statuses.GetValueOrDefault(200) > fuzz.Sent / 4, string.Join(' ', fuzz.Statuses));
    }

    [Fact]
    public async Task No_sheet_however_broken_does_harm()
    {
        await using var shop = await RunningShop.StartAsync();
        using var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        var statuses = new HashSet<HttpStatusCode>();
        for (var seed = 1; seed <= Sheets; seed++)
        {
            using var sheet = new ByteArrayContent(SheetMutations.Make(seed));
            sheet.Headers.ContentType = new MediaTypeHeaderValue("text/csv");
            using var answer = await program.PostAsync(new Uri("/api/jobs/csv", UriKind.Relative), sheet, Cancel);
            Assert.True(answer.StatusCode < HttpStatusCode.InternalServerError, $"seed {seed}: {(int)answer.StatusCode}");
            statuses.Add(answer.StatusCode);
        }
        Assert.Contains(HttpStatusCode.Created, statuses);
        Assert.Contains(HttpStatusCode.BadRequest, statuses);
    }

    [Fact]
    public async Task No_photo_however_broken_does_harm()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync("lq-1042-north-walk.json");
        var statuses = new HashSet<HttpStatusCode>();
        for (var seed = 1; seed <= Photos; seed++)
        {
            // Each from elsewhere, so that no limit on photos counts.
            using var phone = shop.NewClient();
            phone.DefaultRequestHeaders.Add("X-Forwarded-For", $"198.51.100.{seed}");
            using var answer = await phone.TapAsync(
                $"/p/{job.Codes[seed % job.Codes.Count].Plain}/report", json: true, PhotoMutations.Make(seed), ("kind", "damaged"), ("key", SiteShop.NewKey()));
            Assert.True(answer.StatusCode < HttpStatusCode.InternalServerError, $"seed {seed}: {(int)answer.StatusCode}");
            statuses.Add(answer.StatusCode);
        }
        Assert.Contains(HttpStatusCode.OK, statuses);
        Assert.Contains(HttpStatusCode.UnprocessableEntity, statuses);
    }
}
