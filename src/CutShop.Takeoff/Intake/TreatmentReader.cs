using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Intake;

/// <summary>Reads what a row does at each post: start, finish, between, and the overrides under <c>at</c>.</summary>
internal static class TreatmentReader
{
    private static readonly string[] EndNames = ["eye"];
    private static readonly string[] EyeNames = ["pin", "length", "reach", "tucks", "thimble"];
    private static readonly Length Least = Length.FromNanometres(1);
    private static readonly Length Most = Length.Metre * 10;

    /// <summary>One treatment a station, null where it was missing or wrong and has been reported.</summary>
    public static Treatment?[] Read(FieldReader row, PostDraft[] posts, bool isClosed)
    {
        var (start, finish) = (ReadEnd(row, "start"), ReadEnd(row, "finish"));
        var between = row.Has("between") ? row.Value("between", JobWords.ParseBetween, JobWords.AcceptedBetween, required: false) : Treatment.Bored;

        var treatments = new Treatment?[posts.Length + (isClosed && posts.Length > 0 ? 1 : 0)];
        Array.Fill(treatments, between);
        if (posts.Length > 0)
            (treatments[0], treatments[^1]) = (start, finish);
        if (row["at"] is { Kind: JobValueKind.Fields } at)
            ReadOverrides(row, at, posts, treatments, isClosed);
        else if (row.Has("at"))
            row.Problem("at", "Accepted", JobFileWords.Of("Overrides"));
        return treatments;
    }

    private static Treatment? ReadEnd(FieldReader row, string name)
    {
        if (row[name] is not { Kind: JobValueKind.Fields })
            return row.Value(name, JobWords.ParseAtEnd, JobWords.AcceptedAtEnd, required: true);
        var end = row.FieldsOf(name, EndNames);
        if (!end.Has("eye"))
        {
            end.Problem("eye", "Missing", JobFileWords.Of("AnEye"));
            return null;
        }
        var fields = end.FieldsOf("eye", EyeNames);
        var pin = fields.Length("pin", Least, Most, required: true);
        var throat = fields.Length("length", Least, Most, required: true);
        var reach = fields.Length("reach", Length.Zero, Most, required: true);
        var thimble = fields.Length("thimble", Least, Most, required: false);
        var tucks = ReadTucks(fields);
        return pin is not null && throat is not null && reach is not null && fields.Has("thimble") == thimble is not null && fields.Has("tucks") == tucks is not null
            ? Treatment.InEye(new(pin.Value, throat.Value, reach.Value, tucks, thimble))
            : null;
    }

    /// <summary>A count: a text, or a number of the file.</summary>
    private static int? ReadTucks(FieldReader fields)
    {
        if (fields["tucks"] is not { } value)
            return null;
        var parsed = JobWords.ParseTucks(value.Kind == JobValueKind.Other ? value.Shown : value.Text ?? "");
        if (parsed.IsGood)
            return parsed.Value;
        fields.Problem("tucks", parsed.Reason!);
        return null;
    }

    private static void ReadOverrides(FieldReader row, JobValue at, PostDraft[] posts, Treatment?[] treatments, bool isClosed)
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
            else if (isClosed && index == 0)
                row.ProblemAt(place, value, "FirstOfRing");
            else
                treatments[index] = ReadOverride(row, place, value, isEnd: !isClosed && (index == 0 || index == posts.Length - 1));
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
