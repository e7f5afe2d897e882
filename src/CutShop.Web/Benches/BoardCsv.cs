using System.Globalization;
using CsvHelper;
using CutShop.Shop.Benches;
using CutShop.Shop.Maintenance;
using CutShop.Takeoff.Lengths;
using CutShop.Web.Shared;

namespace CutShop.Web.Benches;

/// <summary>The board's figures as comma-separated text: one line a figure, so that every part has the same columns.</summary>
internal static class BoardCsv
{
    /// <summary>Columns: part, of what, figure, value, unit. Lengths are exact millimetres.</summary>
    public static string Of(BoardFigures board)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var csv = CsvWriter.Create(text, SafeCsv.Options, leaveOpen: true))
            Write(csv, board);
        return text.ToString();
    }

    private static void Write(CsvWriter csv, BoardFigures board)
    {
        csv.WriteHeader(["part", "of", "figure", "value", "unit"]);
        foreach (var job in board.Jobs)
        {
            foreach (var (figure, value) in new[]
            {
                ("pieces waiting", job.Waiting), ("pieces at the bench", job.AtTheBench), ("pieces cut", job.Cut), ("pieces packed", job.Packed),
                ("posts waiting", job.PostsWaiting), ("posts at the bench", job.PostsAtTheBench), ("posts drilled", job.Drilled),
            })
                Line(csv, "job", job.Job, figure, value, "");
            Line(csv, "job", job.Job, "due", Show.Date(job.Due), "date");
            Line(csv, "job", job.Job, "late", job.IsLate ? "yes" : "no", "");
            Line(csv, "job", job.Job, "ready", job.IsReady ? "yes" : "no", "");
        }
        foreach (var lot in board.Lots)
        {
            Line(csv, "lot", $"{lot.Lot}, {lot.Rope}", "in pieces", Millimetres(lot.Pieces), "mm");
            Line(csv, "lot", $"{lot.Lot}, {lot.Rope}", "kerf, trim and scrap", Millimetres(lot.Lost), "mm");
            Line(csv, "lot", $"{lot.Lot}, {lot.Rope}", "scrap", Millimetres(lot.Scrap), "mm");
        }
        foreach (var hour in board.Hours)
            Line(csv, "hour", hour.From.ToString("yyyy-MM-dd'T'HH:mm'Z'", CultureInfo.InvariantCulture), "pieces cut", hour.Pieces, "");
        foreach (var mishap in board.ReCuts)
            Line(csv, "cut again", $"{mishap.Job} {mishap.What}", "reason", mishap.Reason, "");
        foreach (var mishap in board.Damages)
            Line(csv, "post spoiled", $"{mishap.Job} {mishap.What}", "reason", mishap.Reason, "");
    }

    private static decimal Millimetres(Length length) => length.Nanometres / 1_000_000m;

    private static void Line(CsvWriter csv, string part, string of, string figure, string value, string unit) =>
        csv.WriteRecord([part, of, figure, value, unit]);

    private static void Line(CsvWriter csv, string part, string of, string figure, decimal value, string unit)
    {
        csv.WriteField(part);
        csv.WriteField(of);
        csv.WriteField(figure);
        csv.WriteField(value, default, CultureInfo.InvariantCulture);
        csv.WriteField(unit);
        csv.EndRecord();
    }
}
