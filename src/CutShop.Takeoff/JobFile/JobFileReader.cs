using System.Runtime.InteropServices;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.JobFile;

/// <summary>
/// Reads a job file: JSON in UTF-8 as docs/job-file.md describes it. Never throws on bad input: every problem is
/// reported with its JSON path, the value and what is accepted.
/// </summary>
public static class JobFileReader
{
    /// <summary>The largest job file that is read, in bytes.</summary>
    public const int LargestFile = 64 * 1024 * 1024;

    private const int DeepestNesting = 16;

    /// <summary>Longest run of one section, tallest post and largest sag.</summary>
    private static readonly Length LongestOnSite = Length.Metre * 1000;

    /// <summary>Widest post and thickest rope.</summary>
    private static readonly Length WidestAcross = Length.Metre * 5;

    private static readonly Length Least = Length.FromNanometres(1);

    private static readonly string[] JobNames = ["number", "customer", "due", "rope", "oneLot", "allowances", "lines", "$schema"];
    private static readonly string[] RopeNames = ["material", "diameter", "measured"];
    private static readonly string[] AllowanceNames = ["shrink", "perPiece", "roundUp"];
    private static readonly string[] LineNames = ["mark", "posts", "sections", "rows"];
    private static readonly string[] PostNames = ["mark", "shape", "across", "height", "turn"];
    private static readonly string[] SectionNames = ["clear", "centres", "rise", "sag", "slack"];
    private static readonly string[] RowNames = ["mark", "height", "sag", "slack", "start", "finish", "between", "at", "rope"];

    /// <summary>Reads a job file.</summary>
    /// <param name="utf8">The file's bytes, with or without a byte order mark.</param>
    /// <param name="memory">What was read before of files much like this one, or null: it changes what the reading costs and nothing else.</param>
    /// <returns>The job, or every problem with the file.</returns>
    public static JobFileReading Read(ReadOnlyMemory<byte> utf8, JobFileMemory? memory = null)
    {
        if (utf8.Length > LargestFile)
            return Unreadable($"accepted: a file of at most {LargestFile / (1024 * 1024)} MiB");
        if (utf8.Span.StartsWith("\uFEFF"u8))
            utf8 = utf8[3..];
        if (!Utf8.IsValid(utf8.Span))
            return Unreadable("not in UTF-8; accepted: JSON in UTF-8");
        try
        {
            using var document = JsonDocument.Parse(utf8, new JsonDocumentOptions { MaxDepth = DeepestNesting });
            return Read(document.RootElement, memory);
        }
        catch (JsonException e)
        {
            return Unreadable($"not JSON at line {e.LineNumber + 1}, byte {e.BytePositionInLine + 1}; accepted: a JSON object nested at most {DeepestNesting} deep");
        }
    }

    /// <summary>The job of a text that was stored; null where it is no job file by the rules of today.</summary>
    public static Job? Find(string text) => Read(Encoding.UTF8.GetBytes(text)).Job;

    private static JobFileReading Unreadable(string text) => new(Job: null, [new("$", "", text)]);

    private static JobFileReading Read(JsonElement root, JobFileMemory? memory)
    {
        var problems = new List<JobProblem>();
        var fields = new JsonFields(root, JsonPlace.Root, problems, JobNames);
        var number = ReadName(fields, "number", JobWords.AcceptedNumber, JobWords.ProblemWithNumber);
        var customer = fields.Text("customer", "a text", required: false) ?? "";
        if (customer.Length > 200)
            fields.Problem("customer", "accepted: at most 200 characters");
        var due = fields.Value("due", JobWords.ParseDate, "a date as year-month-day", required: false);
        var rope = ReadRope(fields, required: true);
        var oneLot = fields.YesOrNo("oneLot") ?? false;
        var allowances = ReadAllowances(fields);
        var crossings = 0L;
        var lines = ReadAll(fields, "lines", LineNames, problems, line => ReadLine(line, problems, memory, ref crossings), least: 1);

        if (fields.IsGivenUp)
            problems.Add(new("$", "", $"{JsonFields.MostProblems} problems up to here, the rest of the file was not read; accepted: a job file"));
        else
            JobChecks.Check(lines, rope, problems);
        return problems.Count > 0
            ? new(Job: null, problems)
            : new(new Job(number!, customer, due, rope!, allowances, [.. lines.Select(Finished)], oneLot), []);
    }

    private static Rope? ReadRope(JsonFields parent, bool required)
    {
        if (!parent.Has("rope"))
        {
            if (required && parent.IsObject)
                parent.Problem("rope", "missing; accepted: an object with material and diameter");
            return null;
        }
        var fields = parent.FieldsOf("rope", RopeNames);
        var material = fields.Word("material", Rope.Materials, required: true);
        var diameter = fields.Length("diameter", Least, WidestAcross, required: true);
        var measured = fields.Length("measured", Least, WidestAcross, required: false);
        var isBad = material is null || diameter is null || (measured is null && fields.Has("measured"));
        return isBad ? null : new Rope(material!.Value, diameter!.Value, measured);
    }

    private static Allowances ReadAllowances(JsonFields parent)
    {
        var standard = Allowances.Default;
        if (!parent.Has("allowances"))
            return standard;
        var fields = parent.FieldsOf("allowances", AllowanceNames);
        var shrink = fields.Value("shrink", Share.Parse, Share.Accepted, required: false) ?? standard.Shrink;
        var perPiece = fields.Length("perPiece", Length.Zero, LongestOnSite, required: false) ?? standard.PerPiece;
        var roundUp = fields.Length("roundUp", Least, LongestOnSite, required: false) ?? standard.RoundUp;
        return new(shrink, perPiece, roundUp);
    }

    private static LineDraft ReadLine(JsonFields fields, List<JobProblem> problems, JobFileMemory? memory, ref long crossings)
    {
        var mark = ReadMark(fields, "mark");
        var posts = ReadAll(fields, "posts", PostNames, problems, ReadPost, least: 2, memory, (post, place) => post with { Fields = place });
        var sections = ReadAll(fields, "sections", SectionNames, problems, ReadSection, least: 1, memory, (section, place) => section with { Fields = place });
        List<RowDraft> rows = HasTooManyRows(fields, posts.Count, ref crossings)
            ? []
            : ReadAll(fields, "rows", RowNames, problems, row => ReadRow(row, posts), least: 1);
        if (posts.Count >= 2 && sections.Count >= 1 && sections.Count != posts.Count - 1 && !fields.IsGivenUp)
            fields.ProblemAt(fields.Place["sections"], fields.Find("sections"), $"{sections.Count} sections for {posts.Count} posts; accepted: one fewer than the posts, here {posts.Count - 1}");
        return new(fields, mark, posts, sections, rows);
    }

    /// <summary>Counted before the rows are read: each of them takes room for every post.</summary>
    private static bool HasTooManyRows(JsonFields fields, int posts, ref long crossings)
    {
        var given = fields.Find("rows");
        var rows = given.ValueKind == JsonValueKind.Array ? given.GetArrayLength() : 0;
        crossings += (long)posts * rows;
        if (rows > Job.MostRows)
            fields.Problem("rows", $"{rows} rows; accepted: at most {Job.MostRows} in a line");
        else if (crossings > Job.MostCrossings)
            fields.Problem("rows", $"with this line rows meet posts at {crossings} places; accepted: at most {Job.MostCrossings} in a job");
        return rows > Job.MostRows || crossings > Job.MostCrossings;
    }

    private static List<T> ReadAll<T>(
        JsonFields parent,
        string name,
        string[] names,
        List<JobProblem> problems,
        Func<JsonFields, T> read,
        int least,
        JobFileMemory? memory = null,
        Func<T, JsonFields, T>? at = null)
        where T : class
    {
        var elements = parent.Elements(name, name);
        if (elements is not null && elements.Length < least)
            parent.Problem(name, $"{elements.Length} given; accepted: at least {least}");
        var place = parent.Place[name];
        var all = new List<T>(elements?.Length ?? 0);
        for (var i = 0; i < (elements?.Length ?? 0) && !parent.IsGivenUp; i++)
            all.Add(memory is null || at is null ? read(new JsonFields(elements![i], place[i], problems, names)) : Recall(elements![i], place[i]));
        return all;

        T Recall(JsonElement element, JsonPlace here)
        {
            var text = JsonMarshal.GetRawUtf8Value(element);
            if (memory.Find<T>(text) is { } before)
                return at(before, JsonFields.OfRight(element, here, problems, names));
            var (found, one) = (problems.Count, read(new JsonFields(element, here, problems, names)));
            if (problems.Count == found)
                memory.Keep(text, at(one, JsonFields.None));
            return one;
        }
    }

    private static PostDraft ReadPost(JsonFields fields) => new(
        fields,
        ReadMark(fields, "mark"),
        fields.Word("shape", JobWords.Shapes, required: true),
        fields.Length("across", Least, WidestAcross, required: true),
        fields.Length("height", Least, LongestOnSite, required: true),
        fields.Value("turn", JobWords.ParseTurn, JobWords.AcceptedTurn, required: false));

    private static SectionDraft ReadSection(JsonFields fields)
    {
        var (hasClear, hasCentres) = (fields.Has("clear"), fields.Has("centres"));
        if (hasClear && hasCentres)
            fields.Problem("centres", "clear is given too; accepted: one of clear and centres");
        else if (!hasClear && !hasCentres && fields.IsObject)
            fields.Problem("clear", "missing; accepted: clear (face to face) or centres (centre to centre)");

        var clear = fields.Length("clear", Least, LongestOnSite, required: false);
        var centres = fields.Length("centres", Least, LongestOnSite, required: false);
        var rise = fields.Length("rise", -LongestOnSite, LongestOnSite, required: false);
        SpacingKind? spacing = hasClear == hasCentres ? null : hasClear ? SpacingKind.Clear : SpacingKind.Centres;
        return new(
            fields,
            spacing,
            spacing == SpacingKind.Clear ? clear : centres,
            fields.Has("rise") ? rise : Length.Zero,
            ReadHang(fields));
    }

    private static HangDraft ReadHang(JsonFields fields)
    {
        var (hasSag, hasSlack) = (fields.Has("sag"), fields.Has("slack"));
        if (hasSag && hasSlack)
            fields.Problem("slack", "sag is given too; accepted: one of sag and slack");
        var sag = fields.Length("sag", Length.Zero, LongestOnSite, required: false);
        var slack = fields.Length("slack", Length.Zero, LongestOnSite, required: false);
        return new(
            hasSag || hasSlack,
            (hasSag, hasSlack, sag, slack) switch
            {
                (true, false, { } amount, _) => new Hang(HangKind.Sag, amount),
                (false, true, _, { } amount) => new Hang(HangKind.Slack, amount),
                _ => null,
            });
    }

    private static RowDraft ReadRow(JsonFields fields, List<PostDraft> posts) => new(
        fields,
        ReadMark(fields, "mark"),
        fields.Length("height", Least, LongestOnSite, required: true),
        ReadHang(fields),
        TreatmentReader.Read(fields, posts),
        ReadRope(fields, required: false),
        fields.Has("rope"));

    private static string? ReadMark(JsonFields fields, string name) =>
        ReadName(fields, name, JobWords.AcceptedMark, JobWords.ProblemWithMark);

    private static string? ReadName(JsonFields fields, string name, string accepted, Func<string, string?> problemWith)
    {
        if (fields.Text(name, accepted, required: true) is not { } text)
            return null;
        if (problemWith(text) is not { } problem)
            return text;
        fields.Problem(name, problem);
        return null;
    }

    // From here on nothing is null: there were no problems.

    private static Line Finished(LineDraft line) => new(
        line.Mark!,
        [.. line.Posts.Select(p => new Post(p.Mark!, p.Shape!.Value, p.Across!.Value, p.Height!.Value, p.Turn))],
        [.. line.Sections.Select(s => new Section(s.Spacing!.Value, s.Width!.Value, s.Rise!.Value, s.Hang.Value))],
        [.. line.Rows.Select(r => new Row(r.Mark!, r.Height!.Value, r.Hang.Value, [.. r.Treatments.Select(t => t!.Value)], r.OwnRope))]);
}
