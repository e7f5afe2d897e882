using CutShop.Paper.Sheets;
using CutShop.Paper.Words;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Tickets;

/// <summary>The posts of a job that the bench does not drill, because the installer bores them where they stand.</summary>
internal static class StandingPosts
{
    /// <summary>The list, so that nobody looks for their tickets.</summary>
    public static Sheet Of(JobHead job, IReadOnlyList<PostWork> posts, PaperSettings settings)
    {
        var text = settings.Text;
        return new(
            text["DrillTicket"],
            text["StandingPosts"],
            text.Foot(job.Number, text["StandingPosts"]),
            [
                new FieldsBlock([new(text["Job"], job.Number), new(text["Due"], CutTicket.DueOf(job.Due, text)), new(text["PostsLabel"], Figures.Count(posts.Count))]) { IsOneRow = true },
                new NoteBlock(text["NotDrilledInShop"]),
                new TableBlock(
                    text["StandingPosts"],
                    text.Parts("StandingPostColumns"),
                    [.. posts.GroupBy(work => work.Line).Select(line => (IReadOnlyList<string>)[line.Key, string.Join(", ", line.Select(work => work.Post.Mark))])]),
            ]);
    }
}
