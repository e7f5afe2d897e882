using CutShop.Takeoff;

namespace CutShop.Paper;

/// <summary>A line on a sheet: its pieces in the order to hang them, and what is bored at its posts.</summary>
internal static class LineSheet
{
    public static Sheet Of(JobTakeoff takeoff, Line line, IReadOnlyList<(Piece Piece, PieceCode Code)> pieces, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        var posts = PostWork.Of(takeoff).Where(work => work.Line.Mark == line.Mark);
        return new(
            text.Line,
            line.Mark,
            text.Foot(takeoff.Job.Number, text.LineName(line.Mark)),
            [
                new TableBlock(
                    text.PiecesInOrder,
                    text.LinePieceColumns,
                    [
                        .. pieces.Select(one => (IReadOnlyList<string>)
                        [
                            one.Piece.Run, one.Code.ToString(), text.FromPostToPost(one.Piece.From.Mark, one.Piece.To.Mark),
                            figures.Both(one.Piece.Row.Height), figures.LongBoth(one.Piece.Cut),
                        ]),
                    ]),
                .. Elevation.Of(takeoff, line, settings).Select(drawing => new DrawingBlock(drawing)),
                new TableBlock(text.PostsToBore, text.PostBoreColumns, [.. posts.SelectMany(work => work.Drillings().Select(drilling => Bored(work, drilling, settings)))]),
                new CautionsBlock(text.Cautions, text.DrillingCautions),
            ])
        {
            Anchor = $"line-{line.Mark}",
        };
    }

    private static IReadOnlyList<string> Bored(PostWork work, Drilling drilling, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        return
        [
            work.Post.Mark,
            drilling.Bore.Row.Mark,
            text.FaceName(drilling.Operation.Face),
            figures.Stacked(drilling.Mark),
            figures.Stacked(drilling.Bore.Bit),
            RakeText.Of(drilling.Bore, work, settings),
            figures.Stacked(drilling.Operation.Depth),
            figures.Stacked(drilling.Collar),
        ];
    }
}
