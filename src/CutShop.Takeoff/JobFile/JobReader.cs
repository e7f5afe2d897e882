using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.JobFile;

/// <summary>
/// Reads a job from the values of any source. Never throws on bad input: every problem is reported with its place, the value and what
/// is accepted.
/// </summary>
public static class JobReader
{
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

    /// <summary>Reads a job.</summary>
    /// <param name="job">The job's values.</param>
    /// <param name="bareUnit">The unit of a length that has none, or null where it must have one, as in a file.</param>
    /// <returns>The job, or every problem with it.</returns>
    public static JobFileReading Read(JobValue job, Length? bareUnit = null)
    {
        var problems = new List<JobProblem>();
        var fields = new FieldReader(problems, JobNames, bareUnit).At(job, JobPlace.Job);
        var number = ReadName(fields, "number", JobWords.AcceptedNumber, JobWords.IsNumber);
        var customer = fields.Text("customer", JobWords.AcceptedText, required: false) ?? "";
        if (customer.Length > Job.LongestCustomer)
            fields.Problem("customer", "AtMostCharacters", Job.LongestCustomer);
        var due = fields.Value("due", JobWords.ParseDate, JobWords.AcceptedDate, required: false);
        var rope = ReadRope(fields, required: true);
        var oneLot = fields.YesOrNo("oneLot") ?? false;
        var allowances = ReadAllowances(fields);
        var crossings = 0L;
        var lines = fields.All("lines", LineNames, least: 1, line => ReadLine(line, ref crossings));

        if (fields.IsGivenUp)
            fields.ProblemAt(JobPlace.Job, value: null, "GivenUp", FieldReader.MostProblems);
        else
            new JobChecks(fields).Check(lines, rope);
        return problems.Count > 0
            ? new(Job: null, problems)
            : new(new Job(number!, customer, due, rope!, allowances, [.. lines.Select(Finished)], oneLot), []);
    }

    private static Rope? ReadRope(FieldReader parent, bool required)
    {
        if (!parent.Has("rope"))
        {
            if (required && parent.HasFields)
                parent.Problem("rope", "Missing", JobFileWords.Of("ARope"));
            return null;
        }
        var fields = parent.FieldsOf("rope", RopeNames);
        var material = fields.Word("material", JobWords.Materials, required: true);
        var diameter = fields.Length("diameter", Least, WidestAcross, required: true);
        var measured = fields.Length("measured", Least, WidestAcross, required: false);
        var isBad = material is null || diameter is null || (measured is null && fields.Has("measured"));
        return isBad ? null : new Rope(material!.Value, diameter!.Value, measured);
    }

    private static Allowances ReadAllowances(FieldReader parent)
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

    private static LineDraft ReadLine(FieldReader fields, ref long crossings)
    {
        var mark = ReadMark(fields);
        var posts = fields.All("posts", PostNames, least: 2, ReadPost);
        var sections = fields.All("sections", SectionNames, least: 1, ReadSection);
        RowDraft[] rows = HasTooManyRows(fields, posts.Length, ref crossings)
            ? []
            : fields.All("rows", RowNames, least: 1, row => ReadRow(row, posts));
        if (posts.Length >= 2 && sections.Length >= 1 && sections.Length != posts.Length - 1 && !fields.IsGivenUp)
            fields.Problem("sections", "SectionsForPosts", sections.Length, posts.Length, posts.Length - 1);
        return new(fields.Part, mark, posts, sections, rows);
    }

    /// <summary>Counted before the rows are read: each of them takes room for every post.</summary>
    private static bool HasTooManyRows(FieldReader fields, int posts, ref long crossings)
    {
        var rows = fields["rows"] is { Kind: JobValueKind.List } list ? list.Count : 0;
        crossings += (long)posts * rows;
        if (rows > Job.MostRows)
            fields.Problem("rows", "TooManyRows", rows, Job.MostRows);
        else if (crossings > Job.MostCrossings)
            fields.Problem("rows", "TooManyCrossings", crossings, Job.MostCrossings);
        return rows > Job.MostRows || crossings > Job.MostCrossings;
    }

    private static PostDraft ReadPost(FieldReader fields)
    {
        var mark = ReadMark(fields);
        var shape = fields.Word("shape", JobWords.Shapes, required: true);
        var across = fields.Length("across", Least, WidestAcross, required: true);
        var height = fields.Length("height", Least, LongestOnSite, required: true);
        var turn = fields.Value("turn", JobWords.ParseTurn, JobWords.AcceptedTurn, required: false);
        var isGood = mark is not null && shape is not null && across is not null && height is not null && fields.Has("turn") == turn is not null;
        return new(fields.PartValue, mark, across, height, isGood ? new Post(mark!, shape!.Value, across!.Value, height!.Value, turn) : null);
    }

    private static SectionDraft ReadSection(FieldReader fields)
    {
        var (hasClear, hasCentres) = (fields.Has("clear"), fields.Has("centres"));
        if (hasClear && hasCentres)
            fields.Problem("centres", "ClearAndCentres");
        else if (!hasClear && !hasCentres && fields.HasFields)
            fields.Problem("clear", "MissingSpacing");

        var clear = fields.Length("clear", Least, LongestOnSite, required: false);
        var centres = fields.Length("centres", Least, LongestOnSite, required: false);
        var rise = fields.Length("rise", -LongestOnSite, LongestOnSite, required: false);
        var hang = ReadHang(fields);
        if (!fields.Has("rise"))
            rise = Length.Zero;
        var width = hasClear ? clear : centres;
        var isGood = hasClear != hasCentres && width is not null && rise is not null && hang.IsGiven == hang.Value is not null;
        return new(
            fields.PartValue,
            hasClear ? null : centres,
            hang.IsGiven,
            isGood ? new Section(hasClear ? SpacingKind.Clear : SpacingKind.Centres, width!.Value, rise!.Value, hang.Value) : null);
    }

    private static HangDraft ReadHang(FieldReader fields)
    {
        var (hasSag, hasSlack) = (fields.Has("sag"), fields.Has("slack"));
        if (hasSag && hasSlack)
            fields.Problem("slack", "SagAndSlack");
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

    private static RowDraft ReadRow(FieldReader fields, PostDraft[] posts) => new(
        fields.Part,
        ReadMark(fields),
        fields.Length("height", Least, LongestOnSite, required: true),
        ReadHang(fields),
        TreatmentReader.Read(fields, posts),
        ReadRope(fields, required: false),
        fields.Has("rope"));

    private static string? ReadMark(FieldReader fields) => ReadName(fields, "mark", JobWords.AcceptedMark, JobWords.IsMark);

    private static string? ReadName(FieldReader fields, string name, Sentence accepted, Func<string, bool> isGood)
    {
        if (fields.Text(name, accepted, required: true) is not { } text)
            return null;
        if (isGood(text))
            return text;
        fields.Problem(name, "Accepted", accepted);
        return null;
    }

    // From here on nothing is null: there were no problems.

    private static Line Finished(LineDraft line) => new(
        line.Mark!,
        [.. line.Posts.Select(post => post.Post!)],
        [.. line.Sections.Select(section => section.Section!)],
        [.. line.Rows.Select(r => new Row(r.Mark!, r.Height!.Value, r.Hang.Value, [.. r.Treatments.Select(t => t!.Value)], r.OwnRope))]);
}
