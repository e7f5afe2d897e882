using System.Globalization;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.JobFile;

/// <summary>What makes a job impossible although each of its fields is right: doubled marks, too many posts, bores that no post can hold.</summary>
internal static class JobChecks
{
    /// <summary>Reports every impossibility; fields already reported are null and left alone.</summary>
    public static void Check(IReadOnlyList<LineDraft> lines, Rope? jobRope, List<JobProblem> problems)
    {
        var posts = lines.Sum(line => (long)line.Posts.Count);
        if (posts > Job.MostPosts)
            problems.Add(new("$.lines", "", $"{posts} posts in all; accepted: at most {Job.MostPosts}"));

        CheckMarks(lines.Select(line => (line.Mark, line.Fields)), "line of this job");
        CheckMarks(lines.SelectMany(line => line.Posts).Select(post => (post.Mark, post.Fields)), "post of this job");
        foreach (var line in lines)
        {
            CheckMarks(line.Rows.Select(row => (row.Mark, row.Fields)), "row of this line");
            CheckSections(line);
            foreach (var row in line.Rows)
            {
                CheckHang(line, row);
                CheckPosts(line, row, row.HasOwnRope ? row.OwnRope : jobRope);
            }
        }
    }

    private static void CheckMarks(IEnumerable<(string? Mark, JsonFields Fields)> marked, string what)
    {
        var first = new Dictionary<string, JsonPlace>(StringComparer.Ordinal);
        foreach (var (mark, fields) in marked)
        {
            if (mark is not null && !first.TryAdd(mark, fields.Place))
                fields.Problem("mark", $"the mark of another {what} too, at {first[mark]}; accepted: each mark once");
        }
    }

    private static void CheckSections(LineDraft line)
    {
        for (var i = 0; i < Math.Min(line.Sections.Count, line.Posts.Count - 1); i++)
        {
            var section = line.Sections[i];
            if (section is not { Spacing: SpacingKind.Centres, Width: { } width }
                || line.Posts[i].Across is not { } before || line.Posts[i + 1].Across is not { } after)
                continue;
            var halves = (before + after) / 2;
            if (width <= halves)
                section.Fields.Problem("centres", $"the posts would touch; accepted: above {halves}, half of both posts");
        }
    }

    private static void CheckHang(LineDraft line, RowDraft row)
    {
        if (!row.Hang.IsGiven && row.Fields.IsObject && !line.Sections.All(section => section.Hang.IsGiven))
            row.Fields.Problem("sag", "missing; accepted: sag or slack, here or in every section of the line");
    }

    private static void CheckPosts(LineDraft line, RowDraft row, Rope? rope)
    {
        CheckHeight(line, row, rope);
        if (rope is null)
            return;
        var bit = RopeBit.DiameterFor(rope);
        foreach (var post in BoredPosts(line, row).Where(post => post.Across is { } across && bit >= across))
            post.Fields.Problem("across", $"row {Name(row.Mark, row.Fields)} needs a {LengthText.Inches(bit)} bit here; accepted: a post wider than the bit");
    }

    /// <summary>One mistyped height is one problem, however many posts it is wrong at.</summary>
    private static void CheckHeight(LineDraft line, RowDraft row, Rope? rope)
    {
        if (row.Height is not { } height)
            return;
        var low = line.Posts.Where(post => post.Height is { } top && height >= top).ToList();
        if (low.Count > 0)
            row.Fields.Problem("height", $"not below the top of post {Names(low)}; accepted: under {low.Min(post => post.Height!.Value)}");
        if (rope is null)
            return;
        var bit = RopeBit.DiameterFor(rope);
        var bored = BoredPosts(line, row).ToList();
        if (height <= bit / 2 && bored.Count > 0)
            row.Fields.Problem("height", $"the {LengthText.Inches(bit)} bore of post {Names(bored)} would cut into the ground; accepted: above {bit / 2}");
    }

    private static IEnumerable<PostDraft> BoredPosts(LineDraft line, RowDraft row) =>
        line.Posts.Where((_, i) => row.Treatments[i] is { Kind: not TreatmentKind.Wrap });

    private static string Names(List<PostDraft> posts)
    {
        var first = Name(posts[0].Mark, posts[0].Fields);
        return posts.Count == 1 ? first : string.Create(CultureInfo.InvariantCulture, $"{first} and {posts.Count - 1} more");
    }

    private static string Name(string? mark, JsonFields fields) => mark ?? fields.Place.ToString();
}
