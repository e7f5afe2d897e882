using CutShop.Takeoff.Intake;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;
using CutShop.Takeoff.Tables;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Orders;

/// <summary>How weighty a note beside a field is.</summary>
public enum NoteKind
{
    /// <summary>What was understood.</summary>
    Echo,

    /// <summary>It can be built but is unwise.</summary>
    Warning,

    /// <summary>It is wrong or missing.</summary>
    Error,
}

/// <summary>A note beside a field.</summary>
/// <param name="Kind">How weighty it is.</param>
/// <param name="Text">The note in words.</param>
public sealed record FieldNote(NoteKind Kind, string Text);

/// <summary>What was understood of a draft.</summary>
public sealed class DraftReading
{
    /// <summary>Beside a field there is room for a few examples, and a bare number may have the draft's unit.</summary>
    private static readonly Sentence AcceptedLength = OrderReplies.Of("AcceptedLength");

    private static readonly HashSet<string> Lengths =
    [
        "diameter", "measured", "perPiece", "roundUp", "longest", "across", "girth", "height", "buried", "width", "rise", "sag", "slack", "drop",
        "radius", "string", "middle", "chord", "pin", "length", "reach", "thimble",
    ];

    private const int MostEchoed = 12;

    private readonly DraftForm _form;
    private readonly Dictionary<string, FieldNote?> _echoes = []; // by what was typed: posts and sections are mostly alike

    private DraftReading(DraftForm form, JobTakeoff? takeoff, IReadOnlyDictionary<JobPlace, IReadOnlyList<FieldNote>> problems, int errors)
    {
        _form = form;
        Takeoff = takeoff;
        Problems = problems;
        Errors = errors;
    }

    /// <summary>The job's takeoff, or null where there is any error.</summary>
    public JobTakeoff? Takeoff { get; }

    /// <summary>Errors and warnings by field of the form; a note on a group of fields has the group's place.</summary>
    public IReadOnlyDictionary<JobPlace, IReadOnlyList<FieldNote>> Problems { get; }

    /// <summary>How many errors.</summary>
    public int Errors { get; }

    /// <summary>The job that a draft reads as, or null where there is any error.</summary>
    internal static Job? JobOf(DraftForm form) => Read(form, isStored: true).Job;

    /// <summary>Reads a draft the way a job file is read, and puts each problem and warning at its field.</summary>
    public static DraftReading Of(DraftForm form, ShopTables tables)
    {
        ArgumentNullException.ThrowIfNull(form);
        var reading = Read(form, isStored: false);
        var takeoff = reading.Job is { } job ? JobTakeoff.Of(job, tables) : null;
        var errors = reading.Problems.Select(problem => (
            Field: DraftSource.FieldOf(form, problem.Place),
            Note: new FieldNote(NoteKind.Error, Said(problem))));
        var warnings = (takeoff?.Warnings ?? [])
            .GroupBy(warning => (Field: DraftSource.FieldOf(form, JobPlace.Find(warning.Path) ?? JobPlace.Job), warning.Says))
            .Select(same => (same.Key.Field, Note: new FieldNote(NoteKind.Warning, $"{same.Key.Says} ({Warning.Places(same)})")));
        var problems = errors.Concat(warnings)
            .GroupBy(problem => problem.Field, problem => problem.Note)
            .ToDictionary(field => field.Key, IReadOnlyList<FieldNote> (field) => OncePerField(field.Key, [.. field]));
        return new(form, takeoff, problems, problems.Values.Sum(notes => notes.Count(note => note.Kind == NoteKind.Error)));
    }

    /// <summary>All notes of a field, with what was understood of a length; none where there are none.</summary>
    /// <param name="field">The field's name, such as <c>lines[0].posts[1].across</c>, or a group's; the job's own is empty.</param>
    public IReadOnlyList<FieldNote> At(string field) => JobPlace.Find(field) is { } place ? At(place) : [];

    /// <summary>The same of a place.</summary>
    public IReadOnlyList<FieldNote> At(JobPlace field)
    {
        var problems = Problems.GetValueOrDefault(field, []);
        return EchoAt(field) is { } echo ? [.. problems, echo] : problems;
    }

    private static JobFileReading Read(DraftForm form, bool isStored)
    {
        var reading = JobReader.Read(DraftSource.Of(form), TypedLength.UnitOf(form.Unit), isStored);
        var own = DraftSource.Contradictions(form).ToList();
        return own.Count == 0 ? reading : new(Job: null, [.. own, .. reading.Problems]);
    }

    private FieldNote? EchoAt(JobPlace field)
    {
        var isOfMany = field.Field is "heights" or "clearAt";
        if ((!isOfMany && !Lengths.Contains(field.Field ?? "")) || DraftFields.TextAt(_form, field) is not { Length: > 0 } typed)
            return null;
        if (!_echoes.TryGetValue(typed, out var echo))
            _echoes[typed] = echo = (isOfMany ? EchoOfMany(typed) : TypedLength.Echo(typed, _form.Unit)) is { Length: > 0 } text ? new(NoteKind.Echo, text) : null;
        return echo;
    }

    /// <summary>What was understood of lengths by their marks; of the first few, since the others are typed alike.</summary>
    private string EchoOfMany(string typed) => string.Join("; ", MarkedText.Parts(typed)
        .Select(part => (part.Mark, Echo: TypedLength.Echo(part.Text, _form.Unit)))
        .Where(part => part.Echo.Length > 0)
        .Take(MostEchoed)
        .Select(part => $"{part.Mark}: {part.Echo}"));

    /// <summary>What follows from the first error of a field is not shown beside it. In the field of single posts, and in a whole part, each is of its own.</summary>
    private static IReadOnlyList<FieldNote> OncePerField(JobPlace field, IReadOnlyList<FieldNote> notes) =>
        field.Field is null or "at" or "heights" or "clearAt" or "holes" || notes[0].Kind != NoteKind.Error ? notes : [notes[0]];

    /// <summary>A problem as its field says it; one that speaks of many posts or rows says of which.</summary>
    private static string Said(JobProblem problem)
    {
        var text = problem.Sentence.Replacing(LengthText.Accepted, AcceptedLength).ToString();
        return DraftSource.MarkIn(problem.Place) is { } mark ? $"{mark}: {text}" : Capital(text);
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
