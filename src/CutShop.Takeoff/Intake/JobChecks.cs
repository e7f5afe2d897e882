using System.Globalization;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Intake;

/// <summary>What makes a job impossible although each of its fields is right: doubled marks, too many posts, bores that no post can hold.</summary>
/// <param name="job">Takes the problems.</param>
/// <param name="isStored">True for a job that was taken in, when corners that are not square were not looked at.</param>
internal sealed class JobChecks(FieldReader job, bool isStored)
{
    /// <summary>Reports every impossibility; fields already reported are null and left alone.</summary>
    public void Check(LineDraft[] lines, Rope? jobRope, Allowances allowances, Datum datum)
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
            if (datum == Datum.Foot)
                CheckBuried(line);
            CheckMarkedRows(line);
            CheckTurns(line);
            foreach (var row in line.Rows)
            {
                CheckHang(line, row);
                CheckEnds(line, row, row.HasOwnRope ? row.OwnRope : jobRope);
                CheckPosts(line, row, row.HasOwnRope ? row.OwnRope : jobRope, thick.Contains(row.HasOwnRope ? row : null));
            }
        }
        var ropes = lines.SelectMany(line => line.Rows).Select(row => row.HasOwnRope ? row.OwnRope : jobRope).ToList();
        if (allowances.Wetting is not null && ropes.Count > 0 && ropes.TrueForAll(rope => rope is { IsNatural: false }))
            job.ProblemAt(JobPlace.Job["allowances"]["wetting"], value: null, "WettingOfTrueRope");
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
        for (var i = 0; i < Math.Min(line.Sections.Length, line.IsClosed ? line.Posts.Length : line.Posts.Length - 1); i++)
        {
            if (line.Sections[i].Centres is not { } centres
                || line.Posts[i].Across is not { } before || line.At(i + 1).Across is not { } after)
                continue;
            var halves = (before + after) / 2;
            if (centres <= halves)
            {
                Problem(line.SectionAt(i), line.Curve is null ? "centres" : "chord", "PostsTouch", halves.ToString());
                if (line.Curve is not null)
                    return;
            }
        }
        if (!line.IsClosed || !line.HasItsSections || line.Sections.Any(section => section.Rise is null))
            return;
        var rises = line.Sections.Aggregate(Length.Zero, (sum, section) => sum + section.Rise!.Value);
        if (rises != Length.Zero)
            Problem(line.Part, "sections", "RingRises", LengthText.Inches(rises));
    }

    /// <summary>What a post or a section says of single rows must be of rows that there are.</summary>
    private void CheckMarkedRows(LineDraft line)
    {
        var marks = line.Rows.Select(row => row.Mark).OfType<string>().ToHashSet(StringComparer.Ordinal);
        for (var i = 0; i < line.Posts.Length; i++)
        {
            foreach (var mark in line.Posts[i].Post?.Holes?.ByRow.Keys.Where(mark => !marks.Contains(mark)) ?? [])
                job.ProblemAt(line.PostAt(i).Place["holes"][mark], value: null, "UnknownRow", job.HintFor(mark, marks));
        }
        for (var i = 0; i < line.Sections.Length && line.Curve is null; i++)
        {
            foreach (var mark in line.Sections[i].Section?.ClearAt?.Keys.Where(mark => !marks.Contains(mark)) ?? [])
                job.ProblemAt(line.SectionAt(i).Place["clearAt"][mark], value: null, "UnknownRow", job.HintFor(mark, marks));
        }
        var posts = line.Posts.Select(post => post.Mark).OfType<string>().ToHashSet(StringComparer.Ordinal);
        foreach (var row in line.Rows)
        {
            foreach (var mark in row.Heights?.Keys.Where(mark => !posts.Contains(mark)) ?? [])
                job.ProblemAt(row.Part.Place["heights"][mark], value: null, "UnknownPost", job.HintFor(mark, posts));
        }
    }

    private void CheckTurns(LineDraft line)
    {
        for (var i = 0; i < line.Posts.Length; i++)
        {
            if (line.Posts[i].Post is not { Turn: { } turn } post || (!line.IsClosed && (i == 0 || i == line.Posts.Length - 1)))
                continue;
            if (post.Corner == CornerKind.Through && line.Curve is null && (double)turn.Degrees > Curve.MostTurn)
                Problem(line.PostAt(i), "corner", "ThroughTooSharp", Curve.MostTurn);
            else if (!isStored && post.Corner == CornerKind.Ends && (double)turn.Degrees > Post.MostTurnInBores && line.Rows.Any(row => IsCorner(line, row, i)))
                Problem(line.PostAt(i), "turn", "CornerTooSharp", Post.MostTurnInBores);
        }
    }

    /// <summary>Eyes of a good size, and ends that a closed line can have.</summary>
    private void CheckEnds(LineDraft line, RowDraft row, Rope? rope)
    {
        foreach (var (name, end) in new[] { ("start", row.Treatments.FirstOrDefault()), ("finish", row.Treatments.LastOrDefault()) })
        {
            if (line.IsClosed && end is { Kind: TreatmentKind.Knot or TreatmentKind.Eye })
                Problem(row.Part, name, "EndInRing", JobWords.AcceptedWrap);
            if (end?.Eye is not { } eye || rope is null)
                continue;
            var place = row.Part.Place[name]["eye"];
            var least = Length.Max(eye.Pin, rope.Across) * 3;
            if (eye.Thimble is null && eye.Throat < least)
                job.ProblemAt(place["length"], value: null, "EyeTooShort", LengthText.Inches(least));
            if (eye.Tucks < Eye.LeastTucks(rope.IsNatural))
                job.ProblemAt(place["tucks"], value: null, "TooFewTucks", Rope.WordOf(rope.Material), Eye.LeastTucks(rope.IsNatural));
        }
    }

    /// <summary>Forgotten at one post or at all, it is one problem.</summary>
    private void CheckBuried(LineDraft line)
    {
        var missing = Enumerable.Range(0, line.Posts.Length).Where(i => !line.Posts[i].HasBuried && line.PostAt(i).HasFields).ToList();
        if (missing.Count > 0)
            Problem(line.PostAt(missing[0]), "buried", "MissingBuried", Names(line, missing));
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
            foreach (var across in lined.SelectMany(pair => pair.Line.Posts.Where((post, i) => IsBored(pair.Line, pair.Row, i) && HoleIn(post, pair.Row) is null).Select(post => post.Across)).OfType<Length>())
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
        for (var i = 0; i < line.Posts.Length; i++)
        {
            var isBored = IsBored(line, row, i);
            if (HoleIn(line.Posts[i], row) is { } hole)
                CheckHole(line, row, i, hole, isBored, rope);
            else if (isBored && line.Posts[i].Across is { } across && bit >= across)
                Problem(line.PostAt(i), "across", "PostTooNarrow", Name(row.Mark, row.Part), LengthText.Inches(bit));
            else if (!isStored && isBored && IsCorner(line, row, i) && line.Posts[i].Post is { SkewDegrees: > 0 and var skew } post && Math.Cos(skew * Math.PI / 180) is var cos
                && (post.Across.Inches * (cos - Math.Sin(skew * Math.PI / 180))) - bit.Inches <= 0)
                Problem(line.PostAt(i), "across", "CornerNarrow", Name(row.Mark, row.Part), skew.ToString("0.#", CultureInfo.InvariantCulture), LengthText.Inches(bit));
        }
    }

    private void CheckHole(LineDraft line, RowDraft row, int post, Hole hole, bool isBored, Rope rope)
    {
        var place = line.PostAt(post).Place["holes"][row.Mark!];
        if (!isBored)
            job.ProblemAt(place, value: null, "NoBoreHere");
        else if (hole.Across <= rope.Across)
            job.ProblemAt(place["across"], value: null, "HoleTooNarrow", LengthText.Inches(rope.Across));
        else if (line.Posts[post].Across is { } across && hole.Across >= across)
            job.ProblemAt(place["across"], value: null, "AtMost", LengthText.Millimetres(across), LengthText.Inches(across));
    }

    /// <summary>One mistyped height is one problem, however many posts it is wrong at.</summary>
    private void CheckHeight(LineDraft line, RowDraft row, Rope? rope)
    {
        if (row.Height is null)
            return;
        var low = Enumerable.Range(0, line.Posts.Length).Where(i => line.Posts[i].Height is { } top && row.HeightAt(line.Posts[i]) >= top).ToList();
        if (low.Count > 0)
            Problem(row.Part, "height", "NotBelowTheTop", Names(line, low), low.Min(i => line.Posts[i].Height!.Value).ToString());
        if (rope is null)
            return;
        var bit = RopeBit.DiameterFor(rope);
        var bored = Enumerable.Range(0, line.Posts.Length).Where(i => row.HeightAt(line.Posts[i]) <= bit / 2 && IsBored(line, row, i)).ToList();
        if (bored.Count > 0)
            Problem(row.Part, "height", "BoreInTheGround", LengthText.Inches(bit), Names(line, bored), (bit / 2).ToString());
    }

    private static Hole? HoleIn(PostDraft post, RowDraft row) => row.Mark is null ? null : post.Post?.Holes?.ByRow.GetValueOrDefault(row.Mark);

    private static bool IsBored(LineDraft line, RowDraft row, int post) =>
        row.Treatments[post] is { IsInBore: true } || (line.IsClosed && post == 0 && row.Treatments[^1] is { IsInBore: true });

    /// <summary>True where two runs of a row end and meet in a post.</summary>
    private static bool IsCorner(LineDraft line, RowDraft row, int post) => line.Posts[post].Post is { EndsRuns: true } && (line.IsClosed && post == 0
        ? row.Treatments[0] is { Kind: TreatmentKind.Stopped } && row.Treatments[^1] is { Kind: TreatmentKind.Stopped }
        : post > 0 && post < line.Posts.Length - (line.IsClosed ? 0 : 1) && row.Treatments[post] is { Kind: TreatmentKind.Bored });

    private void Problem(Part part, string name, string key, params IReadOnlyList<object?> values) =>
        job.ProblemAt(part.Place[name], part.Find(name), key, values);

    private static object Names(LineDraft line, List<int> posts)
    {
        var first = Name(line.Posts[posts[0]].Mark, line.PostAt(posts[0]));
        return posts.Count == 1 ? first : JobFileWords.Of("More", first, posts.Count - 1);
    }

    private static string Name(string? mark, Part part) => mark ?? part.Place.ToString();
}
