using CutShop.Paper;
using CutShop.Shop;

namespace CutShop.Web;

/// <summary>A draft with all that its page shows of it.</summary>
/// <param name="Form">What was typed.</param>
/// <param name="Reading">What was understood.</param>
/// <param name="Prices">The prices that count today, or null.</param>
/// <param name="Currency">The sign before amounts.</param>
/// <param name="Paper">Units and words of drawings.</param>
public sealed record DraftView(DraftForm Form, DraftReading Reading, PriceList? Prices, string Currency, PaperSettings Paper)
{
    /// <summary>The price by today's list; null where there is no list or no readable job.</summary>
    public Priced? Priced { get; } = Reading.Takeoff is { } takeoff && Prices is not null ? Pricing.Of(takeoff, Prices) : null;

    /// <summary>The notes of a field.</summary>
    public IReadOnlyList<FieldNote> At(string field) => Reading.At(field);

    /// <summary>Errors and warnings with their fields, the errors first.</summary>
    public IReadOnlyList<(string Field, FieldNote Note)> Problems { get; } =
        [.. Reading.Notes.SelectMany(pair => pair.Value.Select(note => (pair.Key, note))).Where(pair => pair.note.Kind != NoteKind.Echo).OrderByDescending(pair => pair.note.Kind)];

    /// <summary>One line that says how the draft stands.</summary>
    public string Standing => Reading.Errors switch
    {
        0 => Problems.Count == 0 ? "Ready" : $"Ready, {Problems.Count} to think twice about",
        1 => "1 thing to put right",
        var many => $"{many} things to put right",
    };
}
