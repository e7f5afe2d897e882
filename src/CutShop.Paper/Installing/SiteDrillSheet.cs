using CutShop.Paper.Sheets;
using CutShop.Paper.Tickets;
using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Installing;

/// <summary>The posts of a line that are bored where they stand, on a sheet: which holes are there, and how the others are bored by hand.</summary>
public static class SiteDrillSheet
{
    internal static Sheet Of(JobTakeoff takeoff, Line line, IReadOnlyList<PostWork> posts, PaperSettings settings)
    {
        var text = settings.Text;
        return new(
            text["SiteDrillSheet"],
            line.Mark,
            text.Foot(takeoff.Job.Number, text["LineName", line.Mark]),
            [
                new NoteBlock(text["PostsStand"]),
                new SideBySideBlock(
                    new StepsBlock(text["Steps"], text.SiteDrillingSteps(posts)),
                    new CautionsBlock(text["Cautions"], text.SiteDrillingCautions)),
                .. posts.SelectMany(work => Tables(work, settings)),
            ])
        {
            Anchor = $"bores-{line.Mark}",
            SignBoxes = [text["DrilledBy"], text["CheckedBy"]],
        };
    }

    /// <summary>A post with its shape, its height and its turn.</summary>
    /// <param name="post">The post.</param>
    /// <param name="settings">Units and words.</param>
    public static string About(Post post, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(post);
        ArgumentNullException.ThrowIfNull(settings);
        var (text, figures) = (settings.Text, settings.Figures);
        return string.Join(
            ", ",
            (string[])
            [
                text.PostName(post.Mark),
                text.SizeOfPost(text.PostShape(post.Shape), figures.Both(post.Across)),
                text["HighPost", figures.Both(post.Height)],
                .. post.Turn is { } turn ? (string[])[text.TurnOf(turn.Degrees, turn.Side == TurnSide.Left)] : [],
            ]);
    }

    private static IEnumerable<Block> Tables(PostWork work, PaperSettings settings)
    {
        var text = settings.Text;
        yield return new TableBlock(
            About(work.Post, settings),
            text.Parts("SiteBoreColumns"),
            [
                .. SiteBore.Of(work, settings).Select(bore => (IReadOnlyList<string>)
                [
                    bore.Bore.IsExisting ? "" : WrappedPosts.Box,
                    bore.Name,
                    string.Join('\n', bore.Marks),
                    bore.Direction,
                    bore.Size,
                    bore.Depth,
                ]),
            ]);
        if (work.ScrewHoles.Count > 0)
        {
            yield return new TableBlock(
                text["ScrewHolesOf", work.Post.Mark],
                text.Parts("SiteScrewColumns"),
                [.. PostWork.FromTheTop(work.ScrewHoles).Select(fixing => Screws(work, fixing, settings))]);
        }
    }

    private static IReadOnlyList<string> Screws(PostWork work, Fixing fixing, PaperSettings settings)
    {
        var (screws, face, head, pilot) = ScrewCells.Of(fixing, work, settings);
        return [fixing.Row, settings.Text.HeightOn(work.Post, work.Datum, fixing.Mark, settings.Figures.Both), $"{screws}\n{face}", head, pilot];
    }
}
