using System.Globalization;
using CsvHelper;
using CutShop.Shop.Jobs;
using CutShop.Shop.Maintenance;
using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CutShop.Web.Api;

/// <summary>Gives a job's pieces, bores and screws as tables for a spreadsheet (RFC 4180), as docs/csv.md describes them.</summary>
internal static class JobTablesApi
{
    private const string ContentType = "text/csv; charset=utf-8; header=present";
    private const string Inches = "F6";

    public static void MapJobTables(this RouteGroupBuilder api)
    {
        var jobs = api.MapGroup("/jobs/{number}").WithTags("Tables");
        jobs.MapGet("/pieces.csv", (string number, JobShelf shelf) => Table(number, shelf, WritePieces))
            .WithName("getPiecesTable").WithSummary(HostWords.Say("ApiPieces")).TellsCsv();
        jobs.MapGet("/bores.csv", (string number, JobShelf shelf) => Table(number, shelf, WriteBores))
            .WithName("getBoresTable").WithSummary(HostWords.Say("ApiBores")).TellsCsv();
        jobs.MapGet("/fixings.csv", (string number, JobShelf shelf) => Table(number, shelf, WriteFixings))
            .WithName("getFixingsTable").WithSummary(HostWords.Say("ApiFixings")).TellsCsv();
    }

    private static RouteHandlerBuilder TellsCsv(this RouteHandlerBuilder route) =>
        route.Produces<string>(StatusCodes.Status200OK, "text/csv").Tells(404);

    private static Results<FileContentHttpResult, ProblemHttpResult> Table(string number, JobShelf shelf, Action<CsvWriter, StoredJob> write)
    {
        if (shelf.Find(number) is not { } job)
            return ApiProblem.NoJob(number);
        using var bytes = new MemoryStream();
        using (var csv = CsvWriter.Create(bytes, SafeCsv.Options, leaveOpen: true))
            write(csv, job);
        return TypedResults.Bytes(bytes.ToArray(), ContentType);
    }

    private static void WritePieces(CsvWriter csv, StoredJob job)
    {
        csv.WriteHeader(["job", "run", "code", "line", "row", "from", "to", "material", "diameter in", "net in", "cut in", "cut", "cut mm", "weight lb", "coil", "ticket", "construction", "colour", "preshrunk", "trim in"]);
        foreach (var (piece, stored) in job.Takeoff.Pieces.Zip(job.Pieces))
        {
            csv.WriteField(job.Number);
            csv.WriteField(piece.Run);
            csv.WriteField(stored.Code.ToString());
            csv.WriteField(piece.Line);
            csv.WriteField(piece.Row);
            csv.WriteField(piece.From.Mark);
            csv.WriteField(piece.To.Mark);
            csv.WriteField(piece.Rope.MaterialName);
            WriteInches(csv, piece.Rope.Diameter);
            WriteInches(csv, piece.Net);
            WriteInches(csv, piece.Cut);
            csv.WriteField(LengthText.FeetInches(piece.Cut));
            csv.WriteField(LengthText.Millimetres(piece.Cut));
            csv.WriteField(piece.WeightLb, "F3");
            csv.WriteField(stored.Place?.Coil ?? "");
            csv.WriteField(stored.State);
            var rope = RopeKind.Of(piece);
            csv.WriteField(rope.Construction);
            csv.WriteField(rope.Colour);
            csv.WriteField(rope.IsPreshrunk ? "yes" : "no");
            WriteInches(csv, piece.Trim);
            csv.EndRecord();
        }
    }

    private static void WriteBores(CsvWriter csv, StoredJob job)
    {
        csv.WriteHeader(["job", "post", "row", "run", "kind", "bit in", "bit", "bit kind", "height in", "height", "wall in", "rake degrees", "drilling", "face", "depth in", "depth"]);
        foreach (var bore in job.Takeoff.Bores)
        {
            foreach (var (index, operation) in bore.Operations.Index())
            {
                csv.WriteField(job.Number);
                csv.WriteField(bore.Post.Mark);
                csv.WriteField(bore.Row);
                csv.WriteField(bore.Run);
                csv.WriteField(TakeoffJson.Word(bore.Kind));
                WriteInches(csv, bore.Bit);
                csv.WriteField(LengthText.Inches(bore.Bit));
                csv.WriteField(TakeoffJson.Word(bore.BitChoice.Kind));
                WriteInches(csv, bore.Height);
                csv.WriteField(LengthText.Inches(bore.Height));
                WriteInches(csv, bore.Wall);
                csv.WriteField(bore.RakeDegrees, Inches, CultureInfo.InvariantCulture);
                csv.WriteField(index + 1, default, CultureInfo.InvariantCulture);
                csv.WriteField(operation.Face.ToString());
                WriteInches(csv, operation.Depth);
                csv.WriteField(LengthText.Inches(operation.Depth));
                csv.EndRecord();
            }
        }
    }

    private static void WriteFixings(CsvWriter csv, StoredJob job)
    {
        csv.WriteHeader(["job", "post", "row", "run", "purpose", "screw", "length in", "count", "face", "pilot in", "shank hole in", "counterbore in", "counterbore depth in"]);
        foreach (var fixing in job.Takeoff.Fixings)
        {
            csv.WriteField(job.Number);
            csv.WriteField(fixing.Post.Mark);
            csv.WriteField(fixing.Row);
            csv.WriteField(fixing.Run);
            csv.WriteField(TakeoffJson.Word(fixing.Purpose));
            csv.WriteField(fixing.Screw?.ToString() ?? "");
            WriteInches(csv, fixing.Length);
            csv.WriteField(fixing.Count, default, CultureInfo.InvariantCulture);
            csv.WriteField(fixing.Face.ToString());
            WriteInches(csv, fixing.Pilot);
            WriteInches(csv, fixing.ShankHole);
            WriteInches(csv, fixing.Counterbore);
            WriteInches(csv, fixing.CounterboreDepth);
            csv.EndRecord();
        }
    }

    private static void WriteInches(CsvWriter csv, Length length) => csv.WriteField(length.Inches, Inches, CultureInfo.InvariantCulture);
}
