using System.Globalization;
using System.Text;
using CutShop.Shop;
using CutShop.Takeoff;

namespace CutShop.Web.Benches;

/// <summary>The board's figures as comma-separated text: one line a figure, so that every part has the same columns.</summary>
internal static class BoardCsv
{
    /// <summary>Columns: part, of what, figure, value, unit. Lengths are exact millimetres.</summary>
    public static string Of(BoardFigures board)
    {
        var csv = new StringBuilder("part,of,figure,value,unit\r\n");
        foreach (var job in board.Jobs)
        {
            foreach (var (figure, value) in new[]
            {
                ("pieces waiting", job.Waiting), ("pieces at the bench", job.AtTheBench), ("pieces cut", job.Cut), ("pieces packed", job.Packed),
                ("posts waiting", job.PostsWaiting), ("posts at the bench", job.PostsAtTheBench), ("posts drilled", job.Drilled),
            })
                Line(csv, "job", job.Job, figure, value.ToString(CultureInfo.InvariantCulture), "");
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
            Line(csv, "hour", hour.From.ToString("yyyy-MM-dd'T'HH:mm'Z'", CultureInfo.InvariantCulture), "pieces cut", hour.Pieces.ToString(CultureInfo.InvariantCulture), "");
        foreach (var mishap in board.ReCuts)
            Line(csv, "cut again", $"{mishap.Job} {mishap.What}", "reason", mishap.Reason, "");
        foreach (var mishap in board.Damages)
            Line(csv, "post spoiled", $"{mishap.Job} {mishap.What}", "reason", mishap.Reason, "");
        return csv.ToString();
    }

    private static string Millimetres(Length length) => (length.Nanometres / 1_000_000m).ToString(CultureInfo.InvariantCulture);

    private static void Line(StringBuilder csv, params string[] cells) => csv.Append(CsvLine.Of(cells)).Append("\r\n");
}
