using System.Globalization;
using System.Text;
using CutShop.Paper.Sheets;
using CutShop.Shop.Benches;
using CutShop.Shop.Store;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Localization;

namespace CutShop.Web.Benches;

/// <summary>Addresses of the benches that are no pages: scans, the language, the board's figures and its news, packing lists.</summary>
internal static class BenchRoutes
{
    private static readonly TimeSpan LookForNews = TimeSpan.FromSeconds(1);

    public static void MapBenches(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/scan", Scan);
        routes.MapGet("/language/{tag}", Language).AllowAnonymous();
        routes.MapGet("/board.csv", Csv);
        routes.MapGet("/board/news", News);
        routes.MapGet("/pack/{job}/list.pdf", PackingPdf);
    }

    /// <summary>What a bench page needs.</summary>
    public static IServiceCollection AddBenches(this IServiceCollection services)
    {
        services.Configure<RequestLocalizationOptions>(options =>
        {
            // Only words change with the language; figures are written the same everywhere.
            options.DefaultRequestCulture = new RequestCulture(CultureInfo.InvariantCulture, new CultureInfo("en"));
            options.SupportedCultures = [CultureInfo.InvariantCulture];
            options.SupportedUICultures = [.. ReaderLanguage.All.Select(language => new CultureInfo(language.Tag))];
            options.RequestCultureProviders = [new CookieRequestCultureProvider()];
        });
        return services.AddSingleton<CutBench>()
            .AddSingleton<DrillBench>()
            .AddSingleton<PackingBench>()
            .AddSingleton<PackingPaper>()
            .AddSingleton<ReSettings>()
            .AddSingleton<SendingSettingsShelf>()
            .AddSingleton<ScanResolver>()
            .AddSingleton<StalePlans>()
            .AddSingleton<ShopBoard>()
            .AddSingleton<BenchSettingsShelf>();
    }

    private static RedirectHttpResult Scan(string? text, string? at, ScanResolver scans) => scans.Read(text ?? "").Found switch
    {
        { Code: { } code } found when at == "pack" => TypedResults.Redirect($"/pack/{Uri.EscapeDataString(found.Job)}?scan={code.Plain}"),
        { Code: { } code } => TypedResults.Redirect($"/cut/{code.Plain}"),
        { Coil: { } coil } => TypedResults.Redirect($"/stock/{coil.Mark}"),
        { Post: { } post } found => TypedResults.Redirect($"/drill/{DrillBench.AddressOf(found.Job, post)}"),
        _ => TypedResults.Redirect($"/{(at is "drill" or "pack" ? at : "cut")}?lost={Uri.EscapeDataString((text ?? "").Trim())}"),
    };

    private static RedirectHttpResult Language(string tag, string? back, HttpResponse response)
    {
        if (ReaderLanguage.All.Any(language => language.Tag == tag))
            response.Cookies.Append(
                CookieRequestCultureProvider.DefaultCookieName,
                $"c=|uic={tag}",
                new CookieOptions { MaxAge = TimeSpan.FromDays(365), HttpOnly = true, SameSite = SameSiteMode.Lax, Secure = response.HttpContext.Request.IsHttps, IsEssential = true });
        return TypedResults.Redirect(LocalAddress.Of(back, "/cut"));
    }

    private static FileContentHttpResult Csv(ShopBoard board) =>
        TypedResults.File(Encoding.UTF8.GetBytes(BoardCsv.Of(board.Now())), "text/csv", "board.csv");

    /// <summary>Sends a line whenever something changed in the shop, whoever changed it, until the reader leaves.</summary>
    private static async Task News(HttpContext context, ShopBoard board, TimeProvider time, IHostApplicationLifetime lifetime)
    {
        using var ended = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, lifetime.ApplicationStopping);
        context.Response.ContentType = "text/event-stream";
        context.Response.Headers.CacheControl = "no-store";
        long told = -1;
        try
        {
            while (true)
            {
                if (board.Stamp() is var now && now != told)
                {
                    told = now;
                    await context.Response.WriteAsync(string.Create(CultureInfo.InvariantCulture, $"data: {now}\n\n"), ended.Token);
                    await context.Response.Body.FlushAsync(ended.Token);
                }
                await Task.Delay(LookForNews, time, ended.Token);
            }
        }
        catch (OperationCanceledException) when (ended.IsCancellationRequested)
        {
            // The reader left, or the shop closes: nothing is owed.
        }
    }

    private static async Task<Results<FileContentHttpResult, NotFound>> PackingPdf(string job, PackingPaper packing, HttpContext context)
    {
        var paper = ReaderLanguage.PaperFor(context);
        return await packing.OfAsync(job, Who.Of(context.User), paper, context.RequestAborted) is { } sheet
            ? TypedResults.File(PdfSheets.Write(sheet.Foot, [sheet], paper), "application/pdf")
            : TypedResults.NotFound();
    }
}
