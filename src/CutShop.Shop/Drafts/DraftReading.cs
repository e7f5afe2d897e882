using CutShop.Takeoff;

namespace CutShop.Shop;

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
/// <param name="Takeoff">The job's takeoff, or null where there is any error.</param>
/// <param name="Notes">Notes by field. A note on a group has the group's name, such as <c>lines[0].rows[1]</c>; the job's own is empty.</param>
/// <param name="Errors">How many errors.</param>
public sealed record DraftReading(JobTakeoff? Takeoff, IReadOnlyDictionary<string, IReadOnlyList<FieldNote>> Notes, int Errors)
{
    /// <summary>Beside a field there is room for a few examples, and a bare number may have the draft's unit.</summary>
    private const string AcceptedLength = "a length such as 6' 2 3/8, 74 3/8 in or 1890 mm";

    private static readonly HashSet<string>.AlternateLookup<ReadOnlySpan<char>> Lengths =
        new HashSet<string> { "diameter", "measured", "perPiece", "roundUp", "across", "height", "width", "rise", "sag", "slack" }.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>Reads a draft the way a job file is read, and puts each problem and warning at its field.</summary>
    public static DraftReading Of(DraftForm form, ShopTables tables)
    {
        ArgumentNullException.ThrowIfNull(form);
        var reading = JobFileReader.Read(DraftJobFile.Write(form));
        var takeoff = reading.Job is { } job ? JobTakeoff.Of(job, tables) : null;
        var fields = DraftFields.Of(form);
        var places = new Lazy<NotePlaces>(() => new(fields.Select(field => field.Key)));
        var notes = new Dictionary<string, List<FieldNote>>();
        foreach (var problem in reading.Problems)
            Add(places.Value.Of(problem.Path), new(NoteKind.Error, Capital(problem.Text.Replace(LengthText.Accepted, AcceptedLength, StringComparison.Ordinal))));
        foreach (var same in (takeoff?.Warnings ?? []).GroupBy(warning => (places.Value.Of(warning.Path), warning.Text)))
            Add(same.Key.Item1, new(NoteKind.Warning, $"{same.Key.Text} ({Warning.Places(same)})"));
        var echoes = new Dictionary<string, FieldNote>();
        foreach (var (name, typed) in fields)
        {
            if (typed.Length > 0 && Lengths.Contains(name.AsSpan(name.LastIndexOf('.') + 1)) && EchoOf(typed) is { Text.Length: > 0 } echo)
                Add(name, echo);
        }
        return new(takeoff, notes.ToDictionary(pair => pair.Key, pair => (IReadOnlyList<FieldNote>)pair.Value), reading.Problems.Count);

        // Posts and sections are mostly alike.
        FieldNote EchoOf(string typed)
        {
            if (!echoes.TryGetValue(typed, out var echo))
                echoes[typed] = echo = new(NoteKind.Echo, TypedLength.Echo(typed, form.Unit));
            return echo;
        }

        void Add(string field, FieldNote note)
        {
            if (notes.TryGetValue(field, out var there))
                there.Add(note);
            else
                notes.Add(field, [note]);
        }
    }

    /// <summary>The notes of a field; none where there are none.</summary>
    public IReadOnlyList<FieldNote> At(string field) => Notes.TryGetValue(field, out var notes) ? notes : [];

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
