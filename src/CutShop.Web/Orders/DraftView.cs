using CutShop.Paper.Words;
using CutShop.Shop.Jobs;
using CutShop.Shop.Orders;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Web.Shared;

using static CutShop.Web.Orders.OrderWords;

namespace CutShop.Web.Orders;

/// <summary>A draft with all that its page shows of it.</summary>
/// <param name="Preview">What was typed, what was understood, and the shop's prices.</param>
/// <param name="Paper">Units and words of drawings.</param>
/// <param name="Changed">The fields that were typed in since the page has them; empty for the page itself.</param>
/// <param name="At">The field that somebody types in or has chosen to look at; null for none.</param>
public sealed record DraftView(DraftPreview Preview, PaperSettings Paper, IReadOnlySet<string> Changed, string? At)
{
    /// <summary>What was typed.</summary>
    public DraftForm Form => Preview.Form;

    /// <summary>What was understood.</summary>
    public DraftReading Reading => Preview.Reading;

    /// <summary>The price by today's list; null where there is no list or no readable job.</summary>
    public Priced? Priced { get; } = Preview.Reading.Takeoff is { } takeoff && Preview.Prices is { } prices ? Pricing.Of(takeoff, prices) : null;

    /// <summary>The notes of a field.</summary>
    public IReadOnlyList<FieldNote> NotesAt(string field) =>
        JobPlace.Find(field) is { } place && Preview.DeskNotes.TryGetValue(place, out var notes) ? [.. notes, .. Reading.At(field)] : Reading.At(field);

    /// <summary>True where a part that is folded away has something filled in or an error, so that it must be seen.</summary>
    /// <param name="part">What the fields' names begin with, such as <c>lines[0].posts[1].</c>.</param>
    /// <param name="fields">The fields that are folded away.</param>
    public bool IsUsed(string part, params ReadOnlySpan<string> fields)
    {
        foreach (var field in fields)
        {
            if (JobPlace.Find(part + field) is { } place
                && (DraftFields.TextAt(Form, place) is { Length: > 0 } || Reading.Problems.GetValueOrDefault(place, []).Any(note => note.Kind == NoteKind.Error)))
                return true;
        }
        return false;
    }

    /// <summary>The stretches of its lines, which are drawn one at a time; none while there is an error.</summary>
    public IReadOnlyList<DraftStretch> Stretches { get; } = Preview.Reading.Takeoff is { } drawn ? DraftStretch.Of(drawn.Job) : [];

    /// <summary>Errors and warnings with their fields, the errors first.</summary>
    public IReadOnlyList<(JobPlace Field, FieldNote Note)> Problems { get; } =
        [.. Preview.DeskNotes.Concat(Preview.Reading.Problems).SelectMany(pair => pair.Value.Where(note => note.Kind != NoteKind.Echo).Select(note => (pair.Key, note))).OrderByDescending(pair => pair.note.Kind)];

    /// <summary>
    /// The notes that the page's script puts beside their fields: every error and warning, and what was understood of the fields that
    /// changed. A bare number is understood otherwise once the unit changes.
    /// </summary>
    public IEnumerable<(string Field, IReadOnlyList<FieldNote> Notes)> NotesToPut =>
        (Changed.Contains("unit") ? DraftFields.Of(Form).Select(typed => typed.Key) : Changed)
        .Union(Reading.Problems.Keys.Select(place => place.Name))
        .Union(Preview.DeskNotes.Keys.Select(place => place.Name))
        .Select(name => (Field: name, Notes: NotesAt(name)))
        .Where(noted => noted.Notes.Count > 0)
        .Concat(Changed.Contains("allowances.wetting.loses") && !Preview.DeskNotes.ContainsKey(DraftPreview.MannerField) && Reading.At(DraftPreview.MannerField).Count == 0
            ? [(DraftPreview.MannerField.Name, [])]
            : []);

    /// <summary>The rope of all pieces; none while there is an error.</summary>
    public Length Rope { get; } = (Preview.Reading.Takeoff?.Pieces ?? []).Aggregate(Length.Zero, (sum, piece) => sum + piece.Cut);

    /// <summary>Its weight in pounds, or null where it is not known.</summary>
    public double? WeightLb { get; } = Preview.Reading.Takeoff is { } weighed && weighed.Pieces.All(piece => piece.WeightLb is not null) ? weighed.Pieces.Sum(piece => piece.WeightLb) : null;

    /// <summary>The job's totals on one line, which breaks between the figures.</summary>
    public string Totals => string.Join(
        " ",
        new[]
        {
            T["RopeTotal", Show.Lead(Rope, Paper.Units)],
            Counted(Reading.Takeoff?.Pieces.Count ?? 0, "OnePiece", "SomePieces"),
            Counted(Reading.Takeoff?.Bores.Count ?? 0, "OneBore", "SomeBores"),
            WeightLb is null ? T["WeightNotKnown"] : Show.Pounds(WeightLb),
        }.Select((figure, i) => (i == 0 ? "" : "· ") + figure).Select(figure => figure.Replace(' ', '\u00A0')));

    /// <summary>Whether the draft is ready, on one line.</summary>
    public string Standing => Preview.IsCancelled ? T[JobChanging.WasCancelled(Form.Number.Trim())] : Errors switch
    {
        0 => Problems.Count == 0 ? T["Ready"] : Counted(Problems.Count, "ReadyOneWarning", "ReadySomeWarnings"),
        var errors => Counted(errors, "DraftOneError", "DraftSomeErrors"),
    };

    /// <summary>How many errors it has, the desk's own among them.</summary>
    public int Errors => Problems.Count(problem => problem.Note.Kind == NoteKind.Error);

    private static string Counted(int count, string one, string some) => T[count == 1 ? one : some, count];
}
