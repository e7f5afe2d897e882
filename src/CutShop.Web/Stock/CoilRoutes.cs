using CutShop.Paper.Labels;
using CutShop.Shop.Stock;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CutShop.Web.Stock;

/// <summary>The addresses of the labels of coils.</summary>
internal static class CoilRoutes
{
    public static void MapCoils(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/stock/labels.pdf", All);
        routes.MapGet("/stock/{mark}/label.pdf", One);
    }

    private static Results<FileContentHttpResult, NotFound, ProblemHttpResult> All(CoilShelf stock, LabelAddress address, HttpContext context) =>
        Pdf(stock.InHand(), address, context);

    private static Results<FileContentHttpResult, NotFound, ProblemHttpResult> One(string mark, CoilShelf stock, LabelAddress address, HttpContext context) =>
        Pdf(stock.Find(mark) is { } coil ? [coil] : [], address, context);

    private static Results<FileContentHttpResult, NotFound, ProblemHttpResult> Pdf(IReadOnlyList<StockCoil> coils, LabelAddress address, HttpContext context)
    {
        if (coils.Count == 0)
            return TypedResults.NotFound();
        var labels = new List<CoilLabel>(coils.Count);
        foreach (var coil in coils)
        {
            var page = PieceAddress.OfCoil(address.Now.ToString(), coil.Mark);
            if (!page.IsGood)
                return TypedResults.Problem(page.Problem, statusCode: StatusCodes.Status422UnprocessableEntity);
            labels.Add(new(page.Value, coil.Mark, coil.Kind, coil.Lot, coil.Whole - coil.Shrunk, coil.From));
        }
        var pdf = LabelPdf.Write(StockWords.T["CoilLabels"], labels, LabelStock.Default, ReaderLanguage.PaperFor(context));
        return pdf.IsGood
            ? TypedResults.File(pdf.Value, "application/pdf")
            : TypedResults.Problem(pdf.Problem, statusCode: StatusCodes.Status422UnprocessableEntity);
    }
}
