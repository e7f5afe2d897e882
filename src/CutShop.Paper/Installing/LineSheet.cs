using CutShop.Paper.Allowed;
using CutShop.Paper.Drawings;
using CutShop.Paper.Sheets;
using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Installing;

/// <summary>A line on a sheet: its pieces in the order to hang them, and what is bored at its posts.</summary>
internal static class LineSheet
{
    public static Sheet Of(JobTakeoff takeoff, Line line, IReadOnlyList<(Piece Piece, PieceCode Code)> pieces, IReadOnlySet<string> drilled, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        var posts = PostWork.Of(takeoff).Where(work => work.Line == line.Mark && work.DrillingsInShop > 0).ToList();
        var bored = posts.Where(work => !drilled.Contains(work.Post.Mark)).ToList();
        return new(
            text["Line"],
            line.Mark,
            text.Foot(takeoff.Job.Number, text["LineName", line.Mark]),
            [
                new TableBlock(
                    text["PiecesInOrder"],
                    text.Parts("LinePieceColumns"),
                    [
                        .. pieces.Select(one => (IReadOnlyList<string>)
                        [
                            one.Piece.Run, one.Code.ToString(), text.FromPostToPost(one.Piece.From.Mark, one.Piece.To.Mark),
                            figures.Both(one.Piece.Height), figures.LongBoth(one.Piece.Cut),
                        ]),
                    ]),
                .. Elevation.Of(takeoff, line, settings).Select(drawing => new DrawingBlock(drawing)),
                .. bored.Count == 0
                    ? (Block[])[]
                    :
                    [
                        new CautionsBlock(text["Cautions"], text.DrillingCautions),
                        new NoteBlock(text.BrushTheCut),
                        new TableBlock(text["PostsOfShop"], text.Parts("PostBoreColumns"), [.. bored.SelectMany(work => Bored(work, settings))]),
                    ],
                .. bored.Count == posts.Count
                    ? (Block[])[]
                    : [new TableBlock(text["DrilledInTheShop"], text.Parts("PostBoreColumns"), [.. posts.Except(bored).SelectMany(work => Bored(work, settings))])],
                new CautionsBlock(text["Cautions"], [.. AllowedHere.Guards([line], settings), .. text.RailingCautions]),
                .. AllowedHere.Of(takeoff, [line], settings),
            ])
        {
            Anchor = $"line-{line.Mark}",
        };
    }

    /// <summary>A post's drillings, a line of the table for those of a face that are set up alike.</summary>
    private static IEnumerable<IReadOnlyList<string>> Bored(PostWork work, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        return work.Drillings()
            .GroupBy(d => (d.Operation.Face, d.Bore.Bit, d.Bore.RakeDegrees, d.Operation.Depth))
            .Select(alike => (IReadOnlyList<string>)
            [
                work.Post.Mark,
                text.FaceName(alike.Key.Face),
                string.Join('\n', alike.Select(d => $"{d.Bore.Row}: {text.HeightOn(work.Post, work.Datum, d.Mark, figures.Both)}")),
                figures.Stacked(alike.Key.Bit),
                RakeText.Of(alike.First().Bore, work, settings),
                figures.Stacked(alike.Key.Depth),
                figures.Stacked(alike.First().Collar),
            ]);
    }
}
