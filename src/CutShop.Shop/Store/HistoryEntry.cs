using System.Text.Json;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Store;

/// <summary>A line of the history as it is stored.</summary>
/// <param name="At">When, UTC.</param>
/// <param name="Who">The name of who did it, as of now.</param>
/// <param name="From">The name of whom it was taken from, as of now; empty elsewhere.</param>
/// <param name="Code">The code of what happened.</param>
/// <param name="Before">The state before, or what was there before, such as the number of a job or the code of a label; or empty.</param>
/// <param name="After">The same after.</param>
/// <param name="BeforeLength">The length before, or null.</param>
/// <param name="AfterLength">The length after, or null.</param>
/// <param name="Details">What else belongs to it, as a JSON object of whole numbers and codes.</param>
/// <param name="Cause">The code of why the program did it, or empty.</param>
/// <param name="Reason">Why, as a person typed it, or empty.</param>
internal record HistoryEntry(
    DateTimeOffset At,
    string Who,
    string From,
    string Code,
    string Before,
    string After,
    Length? BeforeLength,
    Length? AfterLength,
    string Details,
    string Cause,
    string Reason)
{
    /// <summary>The columns of an entry, in its order.</summary>
    public static readonly string Columns =
        $"""
        history.at, {Actors.NameOf("actor_id")} AS who, coalesce({Actors.NameOf("from_actor_id")}, '') AS "from", what AS code,
        before, after, before_nm AS before_length, after_nm AS after_length, details, cause, reason
        """;

    /// <summary>A whole number of the details.</summary>
    public long Number(string name) => Detail(name, value => value.GetInt64());

    /// <summary>A code of the details, such as a coil's mark.</summary>
    public string Text(string name) => Detail(name, value => value.GetString()!);

    /// <summary>A length of the details, which are kept in nanometres.</summary>
    public Length LengthOf(string name) => Length.FromNanometres(Number(name));

    /// <summary>The line in words.</summary>
    public HistoryLine InWords()
    {
        var code = HistoryCodes.Find(Code);
        return new(At, Who, code.What(this), code.Before(this), code.After(this), Cause.Length > 0 ? HistoryCause.Find(Cause).Words(this) : Reason);
    }

    private T Detail<T>(string name, Func<JsonElement, T> read)
    {
        using var json = JsonDocument.Parse(Details);
        return read(json.RootElement.GetProperty(name));
    }
}
