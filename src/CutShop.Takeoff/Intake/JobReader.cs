using System.Globalization;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Rules;
using CutShop.Takeoff.Tables;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Intake;

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

    private static readonly string[] JobNames = ["number", "customer", "due", "rope", "oneLot", "bore", "boring", "longest", "datum", "allowances", "lines", "$schema"];
    private static readonly string[] RopeNames = ["material", "diameter", "measured", "construction", "colour"];
    private static readonly string[] AllowanceNames = ["shrink", "wetting", "perPiece", "roundUp"];
    private static readonly string[] WettingNames = ["loses", "manner"];
    private static readonly string[] LineNames = ["mark", "posts", "sections", "curve", "closed", "drop", "boring", "rows"];
    private static readonly string[] CurveNames = ["radius", "string", "middle", "chord", "angle", "turns", "rise", "sag", "slack"];
    private static readonly string[] PostNames = ["mark", "shape", "across", "girth", "height", "turn", "corner", "buried", "boring", "holes"];
    private static readonly string[] HoleNames = ["height", "across", "bore"];
    private static readonly string[] SectionNames = ["clear", "centres", "clearAt", "rise", "sag", "slack", "drop"];
    private static readonly string[] RowNames = ["mark", "height", "heights", "sag", "slack", "start", "finish", "between", "at", "bore", "unbroken", "rope"];

    /// <summary>Reads a job.</summary>
    /// <param name="job">The job's values.</param>
    /// <param name="bareUnit">The unit of a length that has none, or null where it must have one, as in a file.</param>
    /// <param name="isStored">True for a job that was taken in: what rules of today would not take in any more is read as it is.</param>
    /// <returns>The job, or every problem with it.</returns>
    public static JobFileReading Read(JobValue job, Length? bareUnit = null, bool isStored = false)
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
        var bore = fields.Word("bore", JobWords.Slopes, required: false) ?? BoreSlope.Raked;
        var boring = fields.Word("boring", JobWords.Borers, required: false) ?? BoredBy.Shop;
        var longest = fields.Length("longest", Least, LongestOnSite * 100, required: false);
        var datum = fields.Word("datum", JobWords.Datums, required: false) ?? Datum.Ground;
        var allowances = ReadAllowances(fields);
        var crossings = 0L;
        var lines = fields.All("lines", LineNames, least: 1, line => ReadLine(line, ref crossings));

        if (fields.IsGivenUp)
            fields.ProblemAt(JobPlace.Job, value: null, "GivenUp", FieldReader.MostProblems);
        else
            new JobChecks(fields, isStored).Check(lines, rope, allowances, datum);
        if (problems.Count > 0)
            return new(Job: null, problems);
        var read = new Job(number!, customer, due, rope!, allowances, [.. lines.Select(Finished)], oneLot, datum) { Bore = bore, Boring = boring, Longest = longest };
        if (!isStored)
            ImpossibleRuns.Report(read, (place, key, values) => fields.ProblemAt(place, value: null, key, values));
        return problems.Count > 0 ? new(Job: null, problems) : new(read, []);
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
        var (construction, colour) = (ReadOwnWord(fields, "construction"), ReadOwnWord(fields, "colour"));
        var isBad = material is null || diameter is null || (measured is null && fields.Has("measured"));
        return isBad ? null : new Rope(material!.Value, diameter!.Value, measured) { Construction = construction, Colour = colour };
    }

    /// <summary>A word of the shop's own lists.</summary>
    private static string? ReadOwnWord(FieldReader fields, string name)
    {
        if (fields.Text(name, JobWords.AcceptedMark, required: false) is not { } text || JobWords.IsMark(text))
            return fields.Has(name) ? fields[name]?.Text : null;
        fields.Problem(name, "Accepted", JobWords.AcceptedMark);
        return null;
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
        return new(fields.Has("wetting") ? Share.None : shrink, perPiece, roundUp) { Wetting = ReadWetting(fields) };
    }

    private static Wetting? ReadWetting(FieldReader parent)
    {
        if (!parent.Has("wetting"))
            return null;
        if (parent.Has("shrink"))
            parent.Problem("wetting", "ShrinkAndWetting");
        var fields = parent.FieldsOf("wetting", WettingNames);
        var loses = fields.Value("loses", Share.Parse, Share.Accepted, required: true);
        var manner = fields.Word("manner", JobWords.Manners, required: true);
        if (loses?.Millionths >= Wetting.Most.Millionths)
            fields.Problem("loses", "LosesLess", Wetting.Most.ToString());
        return loses is { } share && manner is { } given ? new(share, given) : null;
    }

    private static LineDraft ReadLine(FieldReader fields, ref long crossings)
    {
        var mark = ReadMark(fields);
        var isClosed = fields.YesOrNo("closed") ?? false;
        var posts = fields.All("posts", PostNames, least: isClosed ? 3 : 2, ReadPost);
        var (curve, sections) = fields.Has("curve") ? ReadCurve(fields, posts, isClosed) : (null, fields.All("sections", SectionNames, least: 1, ReadSection));
        var drop = fields.Length("drop", Length.Zero, LongestOnSite, required: false);
        var boring = fields.Word("boring", JobWords.Borers, required: false);
        RowDraft[] rows = HasTooManyRows(fields, posts.Length, ref crossings)
            ? []
            : fields.All("rows", RowNames, least: 1, row => ReadRow(row, posts, isClosed));
        var line = new LineDraft(fields.Part, mark, posts, sections, rows, isClosed, curve, drop, boring);
        if (posts.Length >= 2 && sections.Length >= 1 && !fields.Has("curve") && !line.HasItsSections && !fields.IsGivenUp)
        {
            if (isClosed)
                fields.Problem("sections", "SectionsForRing", sections.Length, posts.Length);
            else
                fields.Problem("sections", "SectionsForPosts", sections.Length, posts.Length, posts.Length - 1);
        }
        return line;
    }

    /// <summary>Reads an arc, and gives the posts on it their turns.</summary>
    private static (Curve?, SectionDraft[]) ReadCurve(FieldReader line, PostDraft[] posts, bool isClosed)
    {
        if (line.Has("sections"))
            line.Problem("curve", "CurveAndSections");
        if (isClosed)
            line.Problem("closed", "CurveAndClosed");
        var fields = line.FieldsOf("curve", CurveNames);
        var radius = fields.Length("radius", Least, LongestOnSite * 100, required: false);
        var taut = fields.Length("string", Least, LongestOnSite, required: false);
        var middle = fields.Length("middle", Least, LongestOnSite, required: fields.Has("string"));
        var chord = fields.Length("chord", Least, LongestOnSite, required: false);
        var angle = fields.Value("angle", JobWords.ParseAngle, JobWords.AcceptedAngle, required: false);
        var turns = fields.Word("turns", JobWords.Sides, required: true);
        var rise = fields.Length("rise", -LongestOnSite, LongestOnSite, required: false);
        var hang = ReadHang(fields);
        if (fields.Has("radius") && fields.Has("string"))
            fields.Problem("string", "RadiusAndString");
        else if (!fields.Has("radius") && !fields.Has("string") && fields.HasFields)
            fields.Problem("radius", "MissingRadius");
        if (fields.Has("middle") && !fields.Has("string"))
            fields.Problem("middle", "MiddleWithoutString");
        if (fields.Has("chord") && fields.Has("angle"))
            fields.Problem("angle", "ChordAndAngle");
        else if (!fields.Has("chord") && !fields.Has("angle") && fields.HasFields)
            fields.Problem("chord", "MissingChord");
        for (var i = 0; i < posts.Length; i++)
        {
            if (posts[i].Post is { Turn: not null })
                line.ProblemAt(line.Part.Place["posts"][i]["turn"], value: null, "TurnOnCurve");
        }

        var isGood = (radius is not null || (taut is not null && middle is not null)) && (chord is null) != (angle is null) && turns is not null
            && (!fields.Has("rise") || rise is not null) && hang.IsGiven == hang.Value is not null && !(fields.Has("radius") && fields.Has("string"));
        if (!isGood || posts.Length < 2)
            return (null, []);
        var curve = new Curve(fields.Has("radius") ? radius : null, taut, middle, chord, angle, turns!.Value, rise ?? Length.Zero, hang.Value);
        var sections = posts.Length - 1;
        var turn = curve.TurnDegrees(sections);
        if (double.IsNaN(turn) || curve.ChordOf(sections).Inches >= 2 * curve.RadiusInches)
            fields.Problem(chord is not null ? "chord" : "angle", "ChordOverArc", LengthText.Inches(Length.RoundedFromInches(2 * curve.RadiusInches), 16));
        else if (turn > Curve.MostTurn && sections > 1)
            fields.Problem(chord is not null ? "chord" : "angle", "TurnsTooSharply", turn.ToString("0.##", CultureInfo.InvariantCulture), Curve.MostTurn);
        else
            StandOn(curve, posts, turn);
        var section = new Section(SpacingKind.Centres, curve.ChordOf(sections), curve.Rise, curve.Hang);
        return (curve, [.. Enumerable.Repeat(new SectionDraft(fields.PartValue, section.Width, hang.IsGiven, section), sections)]);
    }

    /// <summary>Gives the inner posts of an arc their turn, through which the rope goes on.</summary>
    private static void StandOn(Curve curve, PostDraft[] posts, double degrees)
    {
        var turn = new Turn((decimal)degrees, curve.Turns);
        for (var i = 1; i < posts.Length - 1; i++)
        {
            if (posts[i].Post is { } post)
                posts[i] = posts[i] with { Post = post with { Turn = turn, Corner = CornerKind.Through } };
        }
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
        var across = fields.Length("across", Least, WidestAcross, required: !fields.Has("girth"));
        var girth = fields.Length("girth", Least, WidestAcross * 4, required: false);
        var height = fields.Length("height", Least, LongestOnSite, required: true);
        var turn = fields.Value("turn", JobWords.ParseTurn, JobWords.AcceptedTurn, required: false);
        var corner = fields.Word("corner", JobWords.Corners, required: false);
        var boring = fields.Word("boring", JobWords.Borers, required: false);
        if (fields.Has("girth") && fields.Has("across"))
            fields.Problem("girth", "GirthAndAcross");
        else if (fields.Has("girth") && shape == PostShape.Square)
            fields.Problem("girth", "GirthOfSquare");
        else if (girth is { } tape)
            across = Length.RoundedFromInches(tape.Inches / Math.PI);
        if (fields.Has("corner") && !fields.Has("turn"))
            fields.Problem("corner", "CornerWithoutTurn");
        var buried = fields.Length("buried", Length.Zero, LongestOnSite, required: false);
        var holes = ReadHoles(fields);
        var isGood = mark is not null && shape is not null && across is not null && height is not null
            && fields.Has("turn") == turn is not null && fields.Has("buried") == buried is not null;
        return new(
            fields.PartValue,
            mark,
            across,
            height,
            fields.Has("buried"),
            isGood ? new Post(mark!, shape!.Value, across!.Value, height!.Value, turn, buried) { Corner = corner ?? CornerKind.Ends, Girth = girth, Boring = boring, Holes = holes } : null);
    }

    private static PostHoles? ReadHoles(FieldReader post)
    {
        if (!post.Has("holes"))
            return null;
        var holes = post.ByMark("holes", "Holes", (value, place) =>
        {
            var fields = post.Inner(value, place, HoleNames);
            var height = fields.Length("height", Least, LongestOnSite, required: false);
            var across = fields.Length("across", Least, WidestAcross, required: true);
            var bore = fields.Word("bore", JobWords.Slopes, required: false);
            return across is { } wide && (height is not null || !fields.Has("height")) ? new Hole(height, wide, bore) : null;
        });
        return holes.Count == 0 ? null : new PostHoles(holes);
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
        var clearAt = ReadLengthsAt(fields, "clearAt", "ClearsAtRows");
        var drop = fields.Length("drop", Length.Zero, LongestOnSite, required: false);
        if (!fields.Has("rise"))
            rise = Length.Zero;
        var width = hasClear ? clear : centres;
        var isGood = hasClear != hasCentres && width is not null && rise is not null && hang.IsGiven == hang.Value is not null;
        return new(
            fields.PartValue,
            hasClear ? null : centres,
            hang.IsGiven,
            isGood ? new Section(hasClear ? SpacingKind.Clear : SpacingKind.Centres, width!.Value, rise!.Value, hang.Value) { ClearAt = clearAt, Drop = drop } : null);
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

    private static RowDraft ReadRow(FieldReader fields, PostDraft[] posts, bool isClosed) => new(
        fields.Part,
        ReadMark(fields),
        fields.Length("height", Least, LongestOnSite, required: true),
        ReadHang(fields),
        TreatmentReader.Read(fields, posts, isClosed),
        ReadRope(fields, required: false),
        fields.Has("rope"),
        ReadLengthsAt(fields, "heights", "HeightsAtPosts"),
        fields.Word("bore", JobWords.Slopes, required: false),
        fields.YesOrNo("unbroken") ?? false);

    /// <summary>Lengths by the marks of posts or rows; null where there are none.</summary>
    private static Dictionary<string, Length>? ReadLengthsAt(FieldReader fields, string name, string accepted)
    {
        if (!fields.Has(name))
            return null;
        var lengths = fields.ByMark(name, accepted, (value, place) => fields.LengthOf(value, place, Least, LongestOnSite) is { } length ? (object)length : null);
        return lengths.Count == 0 ? null : lengths.ToDictionary(at => at.Key, at => (Length)at.Value);
    }

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
        [.. line.Rows.Select(r => new Row(r.Mark!, r.Height!.Value, r.Hang.Value, [.. r.Treatments.Select(t => t!.Value)], r.OwnRope)
        {
            Heights = r.Heights,
            Bore = r.Bore,
            IsUnbroken = r.IsUnbroken,
        })])
    {
        IsClosed = line.IsClosed,
        Curve = line.Curve,
        Drop = line.Drop,
        Boring = line.Boring,
    };
}
