namespace CutShop.Takeoff;

/// <summary>What makes a job impossible although each of its fields is right: doubled marks, too many posts, bores that no post can hold.</summary>
internal static class JobChecks
{
    /// <summary>Reports every impossibility; fields already reported are null and left alone.</summary>
    public static void Check(IReadOnlyList<LineDraft> lines, Rope? jobRope, List<JobProblem> problems)
    {
        var posts = lines.Sum(line => (long)line.Posts.Count);
        if (posts > Job.MostPosts)
            problems.Add(new("$.lines", "", $"{posts} posts in all; accepted: at most {Job.MostPosts}"));

        CheckMarks(lines.Select(line => (line.Mark, line.Place)), "line of this job", problems);
        CheckMarks(lines.SelectMany(line => line.Posts).Select(post => (post.Mark, post.Place)), "post of this job", problems);
        foreach (var line in lines)
        {
            CheckMarks(line.Rows.Select(row => (row.Mark, row.Place)), "row of this line", problems);
            CheckSections(line, problems);
            foreach (var row in line.Rows)
            {
                CheckHang(line, row, problems);
                CheckPosts(line, row, row.HasOwnRope ? row.OwnRope : jobRope, problems);
            }
        }
    }

    private static void CheckMarks(IEnumerable<(string? Mark, JsonPlace Place)> marked, string what, List<JobProblem> problems)
    {
        var first = new Dictionary<string, JsonPlace>(StringComparer.Ordinal);
        foreach (var (mark, place) in marked)
        {
            if (mark is not null && !first.TryAdd(mark, place))
                problems.Add(new(place["mark"].ToString(), $"\"{mark}\"", $"the mark of another {what} too, at {first[mark]}; accepted: each mark once"));
        }
    }

    private static void CheckSections(LineDraft line, List<JobProblem> problems)
    {
        for (var i = 0; i < Math.Min(line.Sections.Count, line.Posts.Count - 1); i++)
        {
            var section = line.Sections[i];
            if (section is not { Spacing: SpacingKind.Centres, Width: { } width }
                || line.Posts[i].Across is not { } before || line.Posts[i + 1].Across is not { } after)
                continue;
            var halves = (before + after) / 2;
            if (width <= halves)
                problems.Add(new(section.Place["centres"].ToString(), $"\"{width}\"", $"the posts would touch; accepted: above {halves}, half of both posts"));
        }
    }

    private static void CheckHang(LineDraft line, RowDraft row, List<JobProblem> problems)
    {
        if (!row.Hang.IsGiven && !line.Sections.All(section => section.Hang.IsGiven))
            problems.Add(new(row.Place["sag"].ToString(), "", "missing; accepted: sag or slack, here or in every section of the line"));
    }

    private static void CheckPosts(LineDraft line, RowDraft row, Rope? rope, List<JobProblem> problems)
    {
        for (var i = 0; i < line.Posts.Count; i++)
        {
            var post = line.Posts[i];
            if (row.Height is { } height && post.Height is { } top && height >= top)
            {
                problems.Add(new(
                    row.Place["height"].ToString(),
                    $"\"{height}\"",
                    $"not below the top of post {post.Mark ?? post.Place.ToString()}; accepted: under {top}"));
            }
            if (rope is null || row.Treatments[i] is not { Kind: not TreatmentKind.Wrap })
                continue;
            var bit = RopeBit.DiameterFor(rope);
            if (post.Across is { } across && bit >= across)
            {
                problems.Add(new(
                    post.Place["across"].ToString(),
                    $"\"{across}\"",
                    $"row {row.Mark ?? row.Place.ToString()} needs a {LengthText.Inches(bit)} bit here; accepted: a post wider than the bit"));
            }
            if (row.Height is { } centre && centre <= bit / 2)
            {
                problems.Add(new(
                    row.Place["height"].ToString(),
                    $"\"{centre}\"",
                    $"the {LengthText.Inches(bit)} bore of post {post.Mark ?? post.Place.ToString()} would cut into the ground; accepted: above {bit / 2}"));
            }
        }
    }
}
