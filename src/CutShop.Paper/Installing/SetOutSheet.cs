using CutShop.Paper.Drawings;
using CutShop.Paper.Sheets;
using CutShop.Paper.Words;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;

namespace CutShop.Paper.Installing;

/// <summary>How the posts of a curve or a ring are set out, on a sheet.</summary>
internal static class SetOutSheet
{
    public static Sheet Of(JobTakeoff takeoff, SetOut setOut, IReadOnlySet<string> bored, PaperSettings settings)
    {
        var (text, line) = (settings.Text, setOut.Line);
        return new(
            text["SetOutSheet"],
            line.Mark,
            text.Foot(takeoff.Job.Number, text["LineName", line.Mark]),
            [
                new StepsBlock(text["Steps"], SetOutWords.Steps(setOut, bored.Count > 0, settings)),
                new DrawingBlock(SetOutPlan.Of(setOut, settings)),
                .. setOut.IsByPosts ? (Block[])[] : [Points(setOut, settings)],
                new TableBlock(
                    text["SetOutPosts"],
                    text.Parts("SetOutColumns"),
                    [
                        .. setOut.Posts.Select(post => (IReadOnlyList<string>)
                        [
                            post.Post.Mark,
                            Lines(SetOutWords.Tape(setOut, post.First, settings)),
                            post.First is null ? "" : Lines(SetOutWords.Tape(setOut, post.Second, settings)),
                            Lines(SetOutWords.Along(post.Along, settings)),
                            Lines(SetOutWords.Off(post.Off, settings)),
                            Lines(SetOutWords.Next(post.ToNext, settings)),
                            SetOutWords.Bore(post, bored.Contains(post.Post.Mark), settings),
                        ]),
                    ]),
            ])
        {
            Anchor = $"set-out-{line.Mark}",
        };
    }

    private static TableBlock Points(SetOut setOut, PaperSettings settings) => new(
        settings.Text["FixedPoints"],
        settings.Text.Parts("FixedPointColumns"),
        [
            .. setOut.Points.Select((point, i) => (IReadOnlyList<string>)
            [
                point.Name,
                SetOutWords.Along(point.Along, settings),
                SetOutWords.Off(point.Off, settings),
                SetOutWords.Next(i + 1 < setOut.Points.Count ? setOut.Points[i + 1].Along - point.Along : null, settings),
            ]),
        ]);

    /// <summary>The second unit on a line of its own.</summary>
    private static string Lines(string figures) => figures.Replace(" (", "\n(", StringComparison.Ordinal);
}
