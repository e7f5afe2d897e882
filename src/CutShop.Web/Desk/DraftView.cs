using System.Globalization;
using CutShop.Paper;
using CutShop.Shop;
using CutShop.Takeoff;

namespace CutShop.Web;

/// <summary>A draft with all that its page shows of it.</summary>
/// <param name="Form">What was typed.</param>
/// <param name="Reading">What was understood.</param>
/// <param name="Prices">The prices that count today, or null.</param>
/// <param name="Currency">The sign before amounts.</param>
/// <param name="Paper">Units and words of drawings.</param>
/// <param name="IsCancelled">True where the job of its number was cancelled, so that nothing can come of it.</param>
/// <param name="Changed">The fields that were typed in since the page has them; empty for the page itself.</param>
public sealed record DraftView(
    DraftForm Form, DraftReading Reading, PriceList? Prices, string Currency, PaperSettings Paper, bool IsCancelled, IReadOnlySet<string> Changed)
{
    /// <summary>The price by today's list; null where there is no list or no readable job.</summary>
    public Priced? Priced { get; } = Reading.Takeoff is { } takeoff && Prices is not null ? Pricing.Of(takeoff, Prices) : null;

    /// <summary>The notes of a field.</summary>
    public IReadOnlyList<FieldNote> At(string field) => Reading.At(field);

    /// <summary>Errors and warnings with their fields, the errors first.</summary>
    public IReadOnlyList<(string Field, FieldNote Note)> Problems { get; } =
        [.. Reading.Notes.SelectMany(pair => pair.Value.Select(note => (pair.Key, note))).Where(pair => pair.note.Kind != NoteKind.Echo).OrderByDescending(pair => pair.note.Kind)];

    /// <summary>
    /// The notes that the page's script puts beside their fields: every error and warning, and what was understood of the fields that
    /// changed. A bare number is understood otherwise once the unit changes.
    /// </summary>
    public IEnumerable<KeyValuePair<string, IReadOnlyList<FieldNote>>> NotesToPut => Changed.Contains("unit")
        ? Reading.Notes
        : Reading.Notes.Where(pair => Changed.Contains(pair.Key) || pair.Value.Any(note => note.Kind != NoteKind.Echo));

    /// <summary>The rope of all pieces; none while there is an error.</summary>
    public Length Rope { get; } = (Reading.Takeoff?.Pieces ?? []).Aggregate(Length.Zero, (sum, piece) => sum + piece.Cut);

    /// <summary>Its weight in pounds, or null where it is not known.</summary>
    public double? WeightLb { get; } = Reading.Takeoff is { } weighed && weighed.Pieces.All(piece => piece.WeightLb is not null) ? weighed.Pieces.Sum(piece => piece.WeightLb) : null;

    /// <summary>What the job comes to in one line, which breaks between the figures.</summary>
    public string Totals => string.Join(
        " ",
        new[]
        {
            $"{Show.Lead(Rope, Paper.Units)} of rope",
            Counted(Reading.Takeoff?.Pieces.Count ?? 0, "piece"),
            Counted(Reading.Takeoff?.Bores.Count ?? 0, "bore"),
            WeightLb is null ? "weight not known" : Show.Pounds(WeightLb),
        }.Select((figure, i) => (i == 0 ? "" : "· ") + figure).Select(figure => figure.Replace(' ', '\u00A0')));

    /// <summary>One line that says how the draft stands.</summary>
    public string Standing => IsCancelled ? JobChanging.WasCancelled(Form.Number.Trim()) : Reading.Errors switch
    {
        0 => Problems.Count == 0 ? "Ready" : $"Ready, {Problems.Count} to think twice about",
        1 => "1 thing to put right",
        var many => $"{many} things to put right",
    };

    private static string Counted(int count, string of) => string.Create(CultureInfo.InvariantCulture, $"{count} {of}{(count == 1 ? "" : "s")}");
}
