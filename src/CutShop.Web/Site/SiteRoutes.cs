using System.IO.Compression;
using CutShop.Paper.Installing;
using CutShop.Shop.Site;
using CutShop.Takeoff.Result;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CutShop.Web.Site;

/// <summary>Addresses of the site that are no pages: what a phone stores of a site pack, its files, and the worker that answers without a network.</summary>
internal static class SiteRoutes
{
    // Pages of a pack are alike: a large window finds that, and more effort than this gains little.
    private static readonly BrotliCompressionOptions Brotli = new() { Quality = 5 };

    public static void MapOnSite(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/worker.js", Worker).AllowAnonymous();
        routes.MapGet("/jobs/{number}/site-pack", OfJob);
        var pack = routes.MapGroup("/s/{code}").AllowAnonymous().RequireRateLimiting(GuessLimits.Codes);
        pack.MapGet("/pages", Pages);
        pack.MapGet("/codes", Codes);
        pack.MapGet("/pack.html", Html);
        pack.MapGet("/pack.pdf", Pdf);
    }

    /// <summary>Leads from a job to its pack.</summary>
    private static async Task<Results<RedirectHttpResult, NotFound>> OfJob(string number, HttpContext context, SitePackShelf packs) =>
        await packs.CodeOfAsync(number, Who.Of(context.User), context.RequestAborted) is { } code
            ? TypedResults.Redirect(SitePaths.Pack(code))
            : TypedResults.NotFound();

    /// <summary>The worker's script stands at the root, so that it may answer for every page. It is small and asked for anew each time.</summary>
    private static ContentHttpResult Worker(HttpResponse response)
    {
        response.Headers["Service-Worker-Allowed"] = "/";
        return TypedResults.Content($"importScripts(\"{Assets.Address("outbox.js")}\");\n{Assets.Text("worker.js")}", "text/javascript; charset=utf-8");
    }

    private static async Task<Results<EmptyHttpResult, NotFound>> Pages(HttpContext context, string code, string? piece, SitePackShelf packs, SitePackPages pages)
    {
        if (Find(code, packs) is not { } pack)
            return TypedResults.NotFound();
        var response = context.Response;
        response.ContentType = SitePackPages.ContentType;
        response.Headers.Vary = "Accept-Encoding, Cookie";
        var only = piece is not null && PieceCode.Parse(piece) is { IsGood: true } parsed ? parsed.Value : (PieceCode?)null;
        await using var body = Compressed(context);
        await pages.WriteAsync(context, pack, only, body);
        return TypedResults.Empty;
    }

    /// <summary>The codes whose labels count, for a phone that has stored the pack.</summary>
    private static Results<JsonHttpResult<PackCodes>, NotFound> Codes(string code, SitePackShelf packs) =>
        Find(code, packs) is { } pack
            ? TypedResults.Json(new PackCodes([.. pack.Pieces.Select(piece => piece.Code.Plain)]))
            : TypedResults.NotFound();

    private static Stream Compressed(HttpContext context)
    {
        var accepted = context.Request.Headers.AcceptEncoding.ToString();
        if (accepted.Contains("br", StringComparison.OrdinalIgnoreCase))
        {
            context.Response.Headers.ContentEncoding = "br";
            return new BrotliStream(context.Response.Body, Brotli, leaveOpen: true);
        }
        if (accepted.Contains("gzip", StringComparison.OrdinalIgnoreCase))
        {
            context.Response.Headers.ContentEncoding = "gzip";
            return new GZipStream(context.Response.Body, CompressionLevel.Optimal, leaveOpen: true);
        }
        return context.Response.Body;
    }

    private static Results<FileContentHttpResult, NotFound> Html(HttpContext context, string code, SitePackShelf packs) =>
        Find(code, packs) is { } pack
            ? TypedResults.File(System.Text.Encoding.UTF8.GetBytes(PaperOf(pack, context).Html()), "text/html; charset=utf-8", $"{FileName(pack)}.html")
            : TypedResults.NotFound();

    private static Results<FileContentHttpResult, NotFound> Pdf(HttpContext context, string code, SitePackShelf packs) =>
        Find(code, packs) is { } pack
            ? TypedResults.File(PaperOf(pack, context).Pdf(), "application/pdf", $"{FileName(pack)}.pdf")
            : TypedResults.NotFound();

    private static SitePaper PaperOf(SitePack pack, HttpContext context) =>
        new(pack.Takeoff, [.. pack.Pieces.Select(piece => piece.Code)], pack.Drilled, ReaderLanguage.PaperFor(context));

    private static string FileName(SitePack pack) => $"{pack.Job} site pack";

    private static SitePack? Find(string code, SitePackShelf packs) =>
        PieceCode.Parse(code) is { IsGood: true } parsed ? packs.Find(parsed.Value) : null;

    /// <summary>What a phone asks a pack.</summary>
    /// <param name="Codes">The codes of its pieces, without dashes.</param>
    private sealed record PackCodes(IReadOnlyList<string> Codes);
}
