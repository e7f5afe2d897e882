namespace CutShop.Takeoff.JobFile;

/// <summary>Reads what a row does at each post: start, finish, between, and the overrides under <c>at</c>.</summary>
internal static class TreatmentReader
{
    /// <summary>One treatment a post, null where it was missing or wrong and has been reported.</summary>
    public static Treatment?[] Read(FieldReader row, PostDraft[] posts)
    {
        var start = row.Value("start", JobWords.ParseAtEnd, JobWords.AcceptedAtEnd, required: true);
        var finish = row.Value("finish", JobWords.ParseAtEnd, JobWords.AcceptedAtEnd, required: true);
        var between = row.Has("between") ? row.Value("between", JobWords.ParseBetween, JobWords.AcceptedBetween, required: false) : Treatment.Bored;

        var treatments = new Treatment?[posts.Length];
        Array.Fill(treatments, between);
        if (posts.Length > 0)
            (treatments[0], treatments[^1]) = (start, finish);
        if (row["at"] is { Kind: JobValueKind.Fields } at)
            ReadOverrides(row, at, posts, treatments);
        else if (row.Has("at"))
            row.Problem("at", "Accepted", JobFileWords.Of("Overrides"));
        return treatments;
    }

    private static void ReadOverrides(FieldReader row, JobValue at, PostDraft[] posts, Treatment?[] treatments)
    {
        var indexes = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < posts.Length; i++)
        {
            if (posts[i].Mark is { } mark)
                indexes.TryAdd(mark, i);
        }

        var seen = new HashSet<int>();
        foreach (var field in at.Fields)
        {
            if (row.IsGivenUp)
                break;
            var (mark, value) = (field.Name, field.Value);
            var place = row.Part.Place["at"][mark];
            if (!indexes.TryGetValue(mark, out var index))
                row.ProblemAt(place, value, "UnknownPost", row.HintFor(mark, indexes.Keys));
            else if (!seen.Add(index))
                row.ProblemAt(place, value, "PostAgain");
            else
                treatments[index] = ReadOverride(row, place, value, isEnd: index == 0 || index == posts.Length - 1);
        }
    }

    private static Treatment? ReadOverride(FieldReader row, JobPlace place, JobValue value, bool isEnd)
    {
        var text = value.Text ?? "";
        var parsed = isEnd ? JobWords.ParseAtEnd(text) : JobWords.ParseBetween(text);
        if (parsed.IsGood)
            return parsed.Value;
        row.ProblemAt(place, value, parsed.Reason!);
        return null;
    }
}
