using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.JobFile;

/// <summary>What makes a job impossible although each of its fields is right: doubled marks, too many posts, bores that no post can hold.</summary>
/// <param name="job">Takes the problems.</param>
internal sealed class JobChecks(FieldReader job)
{
    /// <summary>Reports every impossibility; fields already reported are null and left alone.</summary>
    public void Check(LineDraft[] lines, Rope? jobRope)
    {
        var thick = ThickRopes(lines, jobRope);
        var posts = lines.Sum(line => (long)line.Posts.Length);
        if (posts > Job.MostPosts)
            job.ProblemAt(JobPlace.Job["lines"], value: null, "TooManyPosts", posts, Job.MostPosts);

        CheckMarks(lines.Length, lines.Select((line, i) => (line.Mark, i, 0)), (line, _) => lines[line].Part, "SameMarkOfLine");
        CheckMarks((int)posts, lines.SelectMany((line, i) => line.Posts.Select((post, p) => (post.Mark, i, p))), (line, post) => lines[line].PostAt(post), "SameMarkOfPost");
        foreach (var line in lines)
        {
            CheckMarks(line.Rows.Length, line.Rows.Select((row, i) => (row.Mark, 0, i)), (_, row) => line.Rows[row].Part, "SameMarkOfRow");
            CheckSections(line);
            foreach (var row in line.Rows)
            {
                CheckHang(line, row);
                CheckPosts(line, row, row.HasOwnRope ? row.OwnRope : jobRope, thick.Contains(row.HasOwnRope ? row : null));
            }
        }
    }

    private void CheckMarks(int count, IEnumerable<(string? Mark, int Line, int Index)> marked, Func<int, int, Part> partAt, string problem)
    {
        var first = new Dictionary<string, (int Line, int Index)>(count, StringComparer.Ordinal);
        foreach (var (mark, line, index) in marked)
        {
            if (mark is not null && !first.TryAdd(mark, (line, index)))
                Problem(partAt(line, index), "mark", problem, partAt(first[mark].Line, first[mark].Index).Place.ToString());
        }
    }

    private void CheckSections(LineDraft line)
    {
        for (var i = 0; i < Math.Min(line.Sections.Length, line.Posts.Length - 1); i++)
        {
            if (line.Sections[i].Centres is not { } centres
                || line.Posts[i].Across is not { } before || line.Posts[i + 1].Across is not { } after)
                continue;
            var halves = (before + after) / 2;
            if (centres <= halves)
                Problem(line.SectionAt(i), "centres", "PostsTouch", halves.ToString());
        }
    }

    private void CheckHang(LineDraft line, RowDraft row)
    {
        if (!row.Hang.IsGiven && row.Part.HasFields && !line.Sections.All(section => section.HasHang))
            Problem(row.Part, "sag", "MissingHang");
    }

    /// <summary>
    /// Reports each rope that is too thick for every post it is bored through: then the rope is what is wrong, once, and not each of the posts.
    /// </summary>
    /// <returns>The rows with such a rope of their own, and null for the job's rope.</returns>
    private HashSet<RowDraft?> ThickRopes(LineDraft[] lines, Rope? jobRope)
    {
        var thick = new HashSet<RowDraft?>(ReferenceEqualityComparer.Instance);
        var byRope = lines.SelectMany(line => line.Rows.Select(row => (Line: line, Row: row)))
            .ToLookup(pair => pair.Row.HasOwnRope ? pair.Row : null, ReferenceEqualityComparer.Instance);
        foreach (var lined in byRope)
        {
            var row = (RowDraft?)lined.Key;
            if ((row is null ? jobRope : row.OwnRope) is not { } rope)
                continue;
            var bit = RopeBit.DiameterFor(rope);
            var (posts, widest) = (0, Length.Zero);
            foreach (var across in lined.SelectMany(pair => BoredPosts(pair.Line, pair.Row).Select(i => pair.Line.Posts[i].Across)).OfType<Length>())
                (posts, widest) = (posts + 1, Length.Max(widest, across));
            if (posts < 2 || widest > bit || !thick.Add(row))
                continue;
            var place = (row is null ? JobPlace.Job : row.Part.Place)["rope"];
            var value = row is null ? job["rope"] : row.Part.Find("rope");
            Problem(new(value!.Value, place), rope.Measured is null ? "diameter" : "measured", "RopeTooThick", LengthText.Inches(bit), widest.ToString());
        }
        return thick;
    }

    private void CheckPosts(LineDraft line, RowDraft row, Rope? rope, bool isTooThick)
    {
        CheckHeight(line, row, isTooThick ? null : rope);
        if (rope is null || isTooThick)
            return;
        var bit = RopeBit.DiameterFor(rope);
        foreach (var i in BoredPosts(line, row))
        {
            if (line.Posts[i].Across is { } across && bit >= across)
                Problem(line.PostAt(i), "across", "PostTooNarrow", Name(row.Mark, row.Part), LengthText.Inches(bit));
        }
    }

    /// <summary>One mistyped height is one problem, however many posts it is wrong at.</summary>
    private void CheckHeight(LineDraft line, RowDraft row, Rope? rope)
    {
        if (row.Height is not { } height)
            return;
        var low = Enumerable.Range(0, line.Posts.Length).Where(i => line.Posts[i].Height is { } top && height >= top).ToList();
        if (low.Count > 0)
            Problem(row.Part, "height", "NotBelowTheTop", Names(line, low), low.Min(i => line.Posts[i].Height!.Value).ToString());
        if (rope is null)
            return;
        var bit = RopeBit.DiameterFor(rope);
        if (height <= bit / 2 && BoredPosts(line, row).ToList() is { Count: > 0 } bored)
            Problem(row.Part, "height", "BoreInTheGround", LengthText.Inches(bit), Names(line, bored), (bit / 2).ToString());
    }

    private void Problem(Part part, string name, string key, params IReadOnlyList<object?> values) =>
        job.ProblemAt(part.Place[name], part.Find(name), key, values);

    private static IEnumerable<int> BoredPosts(LineDraft line, RowDraft row) =>
        Enumerable.Range(0, line.Posts.Length).Where(i => row.Treatments[i] is { Kind: not TreatmentKind.Wrap });

    private static object Names(LineDraft line, List<int> posts)
    {
        var first = Name(line.Posts[posts[0]].Mark, line.PostAt(posts[0]));
        return posts.Count == 1 ? first : JobFileWords.Of("More", first, posts.Count - 1);
    }

    private static string Name(string? mark, Part part) => mark ?? part.Place.ToString();
}
