using System.Text.Json;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.JobFile;

/// <summary>Reads what a row does at each post: start, finish, between, and the overrides under <c>at</c>.</summary>
internal static class TreatmentReader
{
    private const string AcceptedAtEnd = "stopped, knot or " + JobWords.AcceptedWrap;
    private const string AcceptedBetween = "bored or " + JobWords.AcceptedWrap;

    /// <summary>One treatment a post, null where it was missing or wrong and has been reported.</summary>
    public static Treatment?[] Read(JsonFields row, List<PostDraft> posts)
    {
        var start = ReadAs(row, "start", isEnd: true, required: true);
        var finish = ReadAs(row, "finish", isEnd: true, required: true);
        var between = row.Has("between") ? ReadAs(row, "between", isEnd: false, required: false) : Treatment.Bored;

        var treatments = new Treatment?[posts.Count];
        Array.Fill(treatments, between);
        if (posts.Count > 0)
            (treatments[0], treatments[^1]) = (start, finish);
        if (row.Has("at"))
            ReadOverrides(row, posts, treatments);
        return treatments;
    }

    private static Treatment? ReadAs(JsonFields row, string name, bool isEnd, bool required)
    {
        var accepted = isEnd ? AcceptedAtEnd : AcceptedBetween;
        return row.Value(name, text => ParseAs(text, isEnd), accepted, required);
    }

    private static Parsed<Treatment> ParseAs(string text, bool isEnd)
    {
        var parsed = JobWords.ParseTreatment(text);
        if (!parsed.IsGood)
            return Parsed.Bad<Treatment>($"accepted: {(isEnd ? AcceptedAtEnd : AcceptedBetween)}");
        if (parsed.Value.Kind == TreatmentKind.Wrap)
            return parsed;
        return (parsed.Value.Kind == TreatmentKind.Bored) != isEnd
            ? parsed
            : Parsed.Bad<Treatment>(isEnd
                ? $"a rope cannot end so; accepted at an end post: {AcceptedAtEnd}"
                : $"a rope cannot end between end posts; accepted: {AcceptedBetween}");
    }

    private static void ReadOverrides(JsonFields row, List<PostDraft> posts, Treatment?[] treatments)
    {
        var at = row.Find("at");
        var place = row.Place["at"];
        if (at.ValueKind != JsonValueKind.Object)
        {
            row.Problem("at", "accepted: an object with post marks and what is done there, such as { \"A4\": \"wrap 2\" }");
            return;
        }

        var indexes = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < posts.Count; i++)
        {
            if (posts[i].Mark is { } mark)
                indexes.TryAdd(mark, i);
        }

        var seen = new HashSet<int>();
        foreach (var property in at.EnumerateObject())
        {
            if (row.IsGivenUp)
                break;
            var mark = JsonFields.WholeText(() => property.Name) ?? "\uFFFD";
            if (!indexes.TryGetValue(mark, out var index))
                row.ProblemAt(place[mark], property.Value, $"this line has no post of that mark{row.HintFor(mark, indexes.Keys)}");
            else if (!seen.Add(index))
                row.ProblemAt(place[mark], property.Value, "given twice; each post may stand once");
            else
                treatments[index] = ReadOverride(row, place[mark], property.Value, isEnd: index == 0 || index == posts.Count - 1);
        }
    }

    private static Treatment? ReadOverride(JsonFields row, JsonPlace place, JsonElement value, bool isEnd)
    {
        var text = value.ValueKind == JsonValueKind.String ? JsonFields.WholeText(value.GetString) : null;
        var parsed = text is null
            ? Parsed.Bad<Treatment>($"accepted: {(isEnd ? AcceptedAtEnd : AcceptedBetween)}")
            : ParseAs(text, isEnd);
        if (parsed.IsGood)
            return parsed.Value;
        row.ProblemAt(place, value, parsed.Problem!);
        return null;
    }
}
