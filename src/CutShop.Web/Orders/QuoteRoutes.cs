using CutShop.Paper.Quotes;
using CutShop.Paper.Sheets;
using CutShop.Paper.Words;
using CutShop.Shop.Orders;
using CutShop.Shop.Store;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CutShop.Web.Orders;

/// <summary>The address of a quote's printed paper.</summary>
internal static class QuoteRoutes
{
    public static void MapQuotes(this IEndpointRouteBuilder routes) => routes.MapGet("/quotes/{id:long}.pdf", Pdf).RequireAuthorization(Rights.SeePrices);

    /// <summary>A quote as a sheet of paper.</summary>
    public static Sheet SheetOf(Quote quote, Letterhead head, PaperSettings settings)
    {
        var lines = quote.Lines.Select(line => new QuotedLine(line.What, line.Quantity, $"{line.Price.With(quote.Currency)} {line.Unit}", line.Amount.With(quote.Currency)));
        return QuoteSheet.Of(
            head.Name,
            head.Address,
            new(quote.Id, quote.MadeOn, quote.ValidUntil, [.. lines], quote.Net.With(quote.Currency), quote.TaxShare.ToString(), quote.Tax.With(quote.Currency), quote.Total.With(quote.Currency)),
            quote.Takeoff,
            settings);
    }

    private static Results<FileContentHttpResult, NotFound> Pdf(long id, QuoteDesk quotes, LetterheadShelf heads, SendingSettingsShelf sending, HttpContext context)
    {
        if (quotes.Find(id) is not { } quote)
            return TypedResults.NotFound();
        var settings = ReaderLanguage.PaperFor(context) with { IsForSalt = sending.Current.IsForSalt };
        var sheet = SheetOf(quote, heads.Current, settings);
        return TypedResults.File(PdfSheets.Write(settings.Text["QuoteName", quote.Id], [sheet], settings), "application/pdf");
    }
}
