using CutShop.Paper;
using CutShop.Shop;
using CutShop.Takeoff;
using CutShop.Web.OnSite;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CutShop.Web;

/// <summary>The addresses of a job's printed paper.</summary>
public static class PaperRoutes
{
    private static readonly Dictionary<string, PaperKind> Kinds = new()
    {
        ["summary"] = PaperKind.Summary,
        ["cut-tickets"] = PaperKind.CutTickets,
        ["drill-tickets"] = PaperKind.DrillTickets,
    };

    internal static void MapPaper(this IEndpointRouteBuilder routes)
    {
        var jobs = routes.MapGroup("/jobs/{number}");
        jobs.MapGet("/{kind}.pdf", Pdf);
        jobs.MapGet("/labels.pdf", Labels);
    }

    /// <summary>The kind of paper by its word in an address, or null.</summary>
    public static PaperKind? KindOf(string word) => Kinds.TryGetValue(word, out var kind) ? kind : null;

    /// <summary>All paper of a stored job.</summary>
    public static JobPaper PaperOf(StoredJob job, PaperSettings settings)
    {
        var places = job.Pieces.Where(piece => piece.Place is not null).ToDictionary(
            piece => piece.Run,
            piece => new CutPlace($"{piece.Place!.Coil}, lot {piece.Place.Lot}", piece.Place.Position, piece.Place.From, piece.Place.To));
        return new(job.Takeoff, job.Codes, places, settings) { IsCancelled = job.CancelledAt is not null };
    }

    private static Results<FileContentHttpResult, NotFound> Pdf(string number, string kind, JobShelf jobs, HttpContext context)
    {
        if (KindOf(kind) is not { } paper || jobs.Find(number) is not { } job)
            return TypedResults.NotFound();
        return TypedResults.File(PaperOf(job, PersonUnits.PaperFor(context)).Pdf(paper), "application/pdf");
    }

    private static Results<FileContentHttpResult, NotFound, ProblemHttpResult> Labels(
        string number, string? piece, JobShelf jobs, LabelAddress address, HttpContext context)
    {
        if (jobs.Find(number) is not { } job || (piece is not null && !job.Codes.Any(code => code.Plain == piece)))
            return TypedResults.NotFound();
        PieceCode? only = piece is null ? null : PieceCode.Parse(piece).OrThrow();
        var labels = PaperOf(job, PersonUnits.PaperFor(context)).Labels(address.Now, LabelStock.Default, only: only);
        return labels.IsGood
            ? TypedResults.File(labels.Value, "application/pdf")
            : TypedResults.Problem(labels.Problem, statusCode: StatusCodes.Status422UnprocessableEntity);
    }
}
