using CutShop.Paper.Jobs;
using CutShop.Paper.Labels;
using CutShop.Paper.Sheets;
using CutShop.Paper.Tickets;
using CutShop.Paper.Words;
using CutShop.Shop.Benches;
using CutShop.Shop.Jobs;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CutShop.Web.Jobs;

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
        jobs.MapGet("/post-labels.pdf", PostLabels);
        routes.MapGet("/cut/{code}/ticket.pdf", CutTicketPdf);
        routes.MapGet("/drill/{job}/{post}/ticket.pdf", DrillTicketPdf);
        routes.MapGet("/drill/{job}/{post}/label.pdf", PostLabel);
    }

    /// <summary>The kind of paper by its word in an address, or null.</summary>
    public static PaperKind? KindOf(string word) => Kinds.TryGetValue(word, out var kind) ? kind : null;

    /// <summary>One cut ticket, also of a piece that is no longer wanted: then it says so.</summary>
    private static Results<FileContentHttpResult, NotFound> CutTicketPdf(string code, JobShelf jobs, HttpContext context)
    {
        var parsed = PieceCode.Parse(code);
        if (!parsed.IsGood || jobs.Ticket(parsed.Value) is not { Work: { } work } ticket)
            return TypedResults.NotFound();
        var settings = ReaderLanguage.PaperFor(context);
        return TicketPdf(CutTicket.Of(ticket.Head, work.Piece, settings, ticket.Stored.Code, JobPapers.PlaceOf(ticket.Stored)), ticket.Stored.State, NotReleased(jobs, ticket.Head.Number, "NotReleasedToCut"), settings);
    }

    /// <summary>One drill ticket, also of a post that is no longer wanted: then it says so.</summary>
    private static Results<FileContentHttpResult, NotFound> DrillTicketPdf(string job, string post, long? ticket, DrillBench bench, JobShelf jobs, SendingSettingsShelf sending, HttpContext context)
    {
        var all = bench.AllOf(job, post);
        if (all.FirstOrDefault(one => ticket is null || one.Id == ticket) is not { } found
            || bench.PostOf(found).Work is not { } work || jobs.Head(job) is not { } head)
            return TypedResults.NotFound();
        var settings = ReaderLanguage.PaperFor(context) with { IsForSalt = sending.Current.IsForSalt };
        return TicketPdf(DrillTicket.Of(head, work, settings), found.State, NotReleased(jobs, job, "NotReleasedToDrill"), settings);
    }

    private static string? NotReleased(JobShelf jobs, string number, string key) => jobs.IsReleased(number) ? null : key;

    private static FileContentHttpResult TicketPdf(Sheet sheet, string state, string? notReleased, PaperSettings settings)
    {
        var stamp = state switch
        {
            TicketStates.Cancelled => "TicketCancelled",
            TicketStates.Surplus => "TicketSurplus",
            _ => notReleased,
        };
        return TypedResults.File(PdfSheets.Write(sheet.Foot, [sheet with { Stamp = stamp is null ? null : settings.Text[stamp] }], settings), "application/pdf");
    }

    private static Results<FileContentHttpResult, NotFound> Pdf(string number, string kind, JobShelf jobs, HttpContext context)
    {
        if (KindOf(kind) is not { } paper || jobs.Find(number) is not { } job)
            return TypedResults.NotFound();
        return TypedResults.File(JobPapers.Of(job, ReaderLanguage.PaperFor(context)).Pdf(paper), "application/pdf");
    }

    private static Results<FileContentHttpResult, NotFound, ProblemHttpResult> Labels(
        string number, string? piece, JobShelf jobs, LabelAddress address, HttpContext context)
    {
        if (jobs.Find(number) is not { } job || (piece is not null && !job.Codes.Any(code => code.Plain == piece)))
            return TypedResults.NotFound();
        PieceCode? only = piece is null ? null : PieceCode.Parse(piece).OrThrow();
        return LabelsPdf(JobPapers.Of(job, ReaderLanguage.PaperFor(context)).Labels(address.Now, LabelStock.Default, only: only));
    }

    /// <summary>The labels of all posts of a job that the shop drills.</summary>
    private static Results<FileContentHttpResult, NotFound, ProblemHttpResult> PostLabels(string number, JobShelf jobs, LabelAddress address, HttpContext context) =>
        PostLabel(number, post: null, jobs, address, context);

    /// <summary>The label of one such post.</summary>
    private static Results<FileContentHttpResult, NotFound, ProblemHttpResult> PostLabel(string job, string? post, JobShelf jobs, LabelAddress address, HttpContext context) =>
        jobs.Find(job) is { } stored && JobPapers.Of(stored, ReaderLanguage.PaperFor(context)).PostLabels(address.Now, LabelStock.Default, post) is { } labels
            ? LabelsPdf(labels)
            : TypedResults.NotFound();

    private static Results<FileContentHttpResult, NotFound, ProblemHttpResult> LabelsPdf(Parsed<byte[]> labels) => labels.IsGood
        ? TypedResults.File(labels.Value, "application/pdf")
        : TypedResults.Problem(labels.Problem, statusCode: StatusCodes.Status422UnprocessableEntity);
}
