using CutShop.Paper.Jobs;
using CutShop.Paper.Labels;
using CutShop.Paper.Sheets;
using CutShop.Paper.Words;
using CutShop.Shop.Jobs;
using CutShop.Shop.Store;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CutShop.Web.Api;

/// <summary>A cut ticket.</summary>
/// <param name="Run">The piece's run.</param>
/// <param name="Code">The piece's code.</param>
/// <param name="State">waiting, at the bench, cut, packed, cancelled or surplus.</param>
/// <param name="CutIn">Length to cut, in inches.</param>
/// <param name="Coil">The coil that the plan gives it, or null.</param>
/// <param name="Position">Its place among the cuts of that coil, from 1, or null.</param>
/// <param name="Construction">How the rope is laid that it is cut from, such as three-strand.</param>
/// <param name="Colour">The rope's colour; empty where it does not matter.</param>
/// <param name="Preshrunk">True where it is cut from natural rope that was soaked and dried.</param>
public sealed record CutTicketLine(
    string Run, string Code, string State, double CutIn, string? Coil, int? Position, string Construction, string Colour, bool Preshrunk);

/// <summary>A job's tickets.</summary>
/// <param name="Job">The job's number.</param>
/// <param name="Cut">Cut tickets, in the takeoff's order.</param>
/// <param name="Drill">Drill tickets, in the order of the posts.</param>
public sealed record TicketList(string Job, IReadOnlyList<CutTicketLine> Cut, IReadOnlyList<DrillState> Drill);

/// <summary>A label.</summary>
/// <param name="Run">The piece's run.</param>
/// <param name="Code">The piece's code.</param>
/// <param name="Address">The address that its square code holds.</param>
public sealed record LabelLine(string Run, string Code, string Address);

/// <summary>Tells of a job's tickets and labels: as JSON, or as PDF to who accepts it or asks for .pdf.</summary>
internal static class JobPaperApi
{
    private const string Pdf = "application/pdf";

    public static void MapJobPaper(this RouteGroupBuilder api)
    {
        var jobs = api.MapGroup("/jobs/{number}").WithTags("Paper");
        jobs.MapGet("/tickets", Tickets).WithName("getTickets").WithSummary(HostWords.Say("ApiTickets")).TellsPdf();
        jobs.MapGet("/tickets.pdf", TicketsPdf).WithName("getTicketsPdf").WithSummary(HostWords.Say("ApiTicketsPdf")).TellsPdf();
        jobs.MapGet("/labels", Labels).WithName("getLabels").WithSummary(HostWords.Say("ApiLabels")).TellsPdf();
        jobs.MapGet("/labels.pdf", LabelsPdf).WithName("getLabelsPdf").WithSummary(HostWords.Say("ApiLabelsPdf")).TellsPdf();
    }

    private static RouteHandlerBuilder TellsPdf(this RouteHandlerBuilder route) =>
        route.Produces<byte[]>(StatusCodes.Status200OK, Pdf).Tells(404, 422);

    private static Results<Ok<TicketList>, FileContentHttpResult, ProblemHttpResult> Tickets(
        string number, HttpRequest request, JobShelf shelf, JobFeed news, PaperSettings settings)
    {
        if (shelf.Find(number) is not { } job)
            return ApiProblem.NoJob(number);
        if (WantsPdf(request))
            return PrintTickets(job, settings);
        return TypedResults.Ok(new TicketList(
            job.Number,
            [.. job.Pieces.Zip(job.Takeoff.Pieces.Select(RopeKind.Of), (piece, rope) => new CutTicketLine(
                piece.Run,
                piece.Code.ToString(),
                piece.State,
                Math.Round(piece.Cut.Inches, 6),
                piece.Place?.Coil,
                piece.Place?.Position,
                rope.Construction,
                rope.Colour,
                rope.IsPreshrunk))],
            news.DrillTickets(number)));
    }

    private static Results<FileContentHttpResult, ProblemHttpResult> TicketsPdf(string number, JobShelf shelf, PaperSettings settings) =>
        shelf.Find(number) is { } job ? PrintTickets(job, settings) : ApiProblem.NoJob(number);

    private static FileContentHttpResult PrintTickets(StoredJob job, PaperSettings settings)
    {
        var paper = JobPapers.Of(job, settings);
        var sheets = paper.Sheets(PaperKind.CutTickets).Concat(paper.Sheets(PaperKind.DrillTickets));
        return TypedResults.File(PdfSheets.Write(HostWords.Say("TicketsOf", job.Number), sheets, settings), Pdf);
    }

    private static Results<Ok<IReadOnlyList<LabelLine>>, FileContentHttpResult, ProblemHttpResult> Labels(
        string number, HttpRequest request, JobShelf shelf, PaperSettings settings, LabelAddress address)
    {
        if (shelf.Find(number) is not { } job)
            return ApiProblem.NoJob(number);
        if (WantsPdf(request))
        {
            var pdf = JobPapers.Of(job, settings).Labels(address.Now, LabelStock.Default);
            return pdf.IsGood ? TypedResults.File(pdf.Value, Pdf) : NotPrintable(pdf.Problem!);
        }
        var labels = new List<LabelLine>(job.Pieces.Count);
        foreach (var piece in job.Pieces)
        {
            var page = PieceAddress.Of(address.Now.ToString(), piece.Code);
            if (!page.IsGood)
                return NotPrintable(page.Problem!);
            labels.Add(new(piece.Run, piece.Code.ToString(), page.Value));
        }
        return TypedResults.Ok<IReadOnlyList<LabelLine>>(labels);
    }

    private static Results<FileContentHttpResult, ProblemHttpResult> LabelsPdf(
        string number, JobShelf shelf, PaperSettings settings, LabelAddress address)
    {
        if (shelf.Find(number) is not { } job)
            return ApiProblem.NoJob(number);
        var pdf = JobPapers.Of(job, settings).Labels(address.Now, LabelStock.Default);
        return pdf.IsGood ? TypedResults.File(pdf.Value, Pdf) : NotPrintable(pdf.Problem!);
    }

    private static ProblemHttpResult NotPrintable(string problem) => ApiProblem.Of(StatusCodes.Status422UnprocessableEntity, problem);

    /// <summary>True where PDF is accepted, and JSON is not or is liked less.</summary>
    private static bool WantsPdf(HttpRequest request)
    {
        var accepted = request.GetTypedHeaders().Accept.ToLookup(
            range => range.MediaType.ToString(), range => range.Quality ?? 1, StringComparer.OrdinalIgnoreCase);
        return accepted[Pdf].DefaultIfEmpty(0).Max() > accepted["application/json"].DefaultIfEmpty(0).Max();
    }
}
