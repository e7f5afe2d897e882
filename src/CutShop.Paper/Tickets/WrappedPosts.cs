using CutShop.Paper.Sheets;
using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Tickets;

/// <summary>The posts of a job in which nothing is bored because the rope is wrapped round them: a line for each, to be ticked by itself.</summary>
internal static class WrappedPosts
{
    /// <summary>A place to tick by hand.</summary>
    internal const string Box = "☐";

    /// <summary>The list.</summary>
    public static Sheet Of(JobHead job, IReadOnlyList<PostWork> posts, PaperSettings settings)
    {
        var text = settings.Text;
        return new(
            text["DrillTicket"],
            text["WrappedPosts"],
            text.Foot(job.Number, text["WrappedPosts"]),
            [
                new FieldsBlock([new(text["Job"], job.Number), new(text["Due"], CutTicket.DueOf(job.Due, text)), new(text["PostsLabel"], Figures.Count(posts.Count))]) { IsOneRow = true },
                new NoteBlock(text["NothingToDrillInThem"]),
                new TableBlock(
                    text["ScrewsOnSite"],
                    text.Parts("WrappedPostColumns"),
                    [.. posts.SelectMany(work => PostWork.FromTheTop(work.Fixings).Select((fixing, i) => Row(work, fixing, isFirst: i == 0, settings)))]),
                new CautionsBlock(text["Cautions"], [text["TreatedTimber"]]),
            ])
        {
            SignBoxes = [text["DrilledBy"], text["CheckedBy"]],
        };
    }

    private static IReadOnlyList<string> Row(PostWork work, Fixing fixing, bool isFirst, PaperSettings settings)
    {
        var (screws, face, head, pilot) = ScrewCells.Of(fixing, work, settings);
        return
        [
            isFirst ? Box : "",
            work.Post.Mark,
            isFirst ? About(work, settings) : "",
            $"{fixing.Row}: {settings.Text.HeightOn(work.Post, work.Datum, fixing.Mark, settings.Figures.Both)}",
            $"{screws}\n{face}",
            head,
            pilot,
        ];
    }

    private static string About(PostWork work, PaperSettings settings)
    {
        var (text, figures, post) = (settings.Text, settings.Figures, work.Post);
        return string.Join(
            '\n',
            (string[])
            [
                text["LineName", work.Line],
                text.SizeOfPost(text.PostShape(post.Shape), figures.Both(post.Across)),
                text["HighPost", figures.Both(post.Height)],
                .. post.Turn is { } turn ? (string[])[text.TurnOf(turn.Degrees, turn.Side == TurnSide.Left)] : [],
            ]);
    }
}
