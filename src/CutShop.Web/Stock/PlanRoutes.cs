using CutShop.Paper.Drawings;
using CutShop.Paper.Sheets;
using CutShop.Paper.Tickets;
using CutShop.Paper.Words;
using CutShop.Shop.Stock;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CutShop.Web.Stock;

/// <summary>The addresses of a cut plan's paper and picture.</summary>
internal static class PlanRoutes
{
    public static void MapPlans(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/plans/{id:long}.pdf", Pdf);
        routes.MapGet("/plans/{id:long}.svg", Svg);
    }

    /// <summary>A stored plan as a sheet.</summary>
    public static Sheet SheetOf(StoredPlan plan, PaperSettings settings) => CutPlanSheet.Of(
        new(plan.Id, plan.Kind.ToString(), plan.State, plan.Proof),
        plan.Coils,
        plan.Pieces.ToDictionary(pair => pair.Key, pair => new PlanPieceName(pair.Value.Code.ToString(), pair.Value.Job, pair.Value.Run, pair.Value.IsCancelled, pair.Value.IsTakenOut)),
        settings);

    private static Results<FileContentHttpResult, NotFound> Pdf(long id, PlanShelf shelf, HttpContext context)
    {
        if (shelf.Find(id) is not { } plan)
            return TypedResults.NotFound();
        var settings = ReaderLanguage.PaperFor(context);
        var sheet = SheetOf(plan, settings);
        return TypedResults.File(PdfSheets.Write(sheet.Foot, [sheet], settings), "application/pdf");
    }

    private static Results<ContentHttpResult, NotFound> Svg(long id, PlanShelf shelf, HttpContext context) =>
        shelf.Find(id) is { } plan
            ? TypedResults.Content(SvgDrawing.Write(CutPlanPicture.Of(plan.Coils, ReaderLanguage.PaperFor(context))), "image/svg+xml")
            : TypedResults.NotFound();
}
