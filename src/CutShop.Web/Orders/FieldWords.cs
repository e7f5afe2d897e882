using CutShop.Shop.Orders;
using CutShop.Takeoff.JobFile;

namespace CutShop.Web.Orders;

/// <summary>Fields of a draft in the desk's words: <c>Line A, post A2, across</c>.</summary>
public static class FieldWords
{
    private static readonly Dictionary<string, string> Names = new()
    {
        ["number"] = "Job number",
        ["customer"] = "Customer",
        ["due"] = "Due",
        ["unit"] = "Unit",
        ["oneLot"] = "Lots",
        ["rope"] = "Rope",
        ["allowances"] = "Allowances",
        ["material"] = "material",
        ["diameter"] = "diameter",
        ["measured"] = "measured",
        ["shrink"] = "shrinkage",
        ["perPiece"] = "extra a piece",
        ["roundUp"] = "round up to",
        ["width"] = "spacing",
        ["at"] = "single posts",
    };

    /// <summary>The name of a field or a group in words.</summary>
    public static string Of(DraftForm form, string field) => JobPlace.Find(field) is { } place ? Of(form, place) : field;

    /// <summary>The same of a place.</summary>
    public static string Of(DraftForm form, JobPlace field)
    {
        ArgumentNullException.ThrowIfNull(form);
        var line = field.Line is { } index ? form.Lines.ElementAtOrDefault(index) : null;
        string?[] words =
        [
            field.Line is null ? null : $"Line {line?.Mark}",
            field.Part switch
            {
                LinePart.Post => $"post {MarkOf(field.Index)}",
                LinePart.Section => $"section {MarkOf(field.Index)} – {MarkOf(field.Index + 1)}",
                LinePart.Row => $"row {line?.Rows.ElementAtOrDefault(field.Index)?.Mark}",
                _ => null,
            },
            Name(field.Group),
            Name(field.Field),
        ];
        return field == JobPlace.Job ? "The job" : string.Join(", ", words.Where(word => word is not null));

        string? MarkOf(int post) => line?.Posts.ElementAtOrDefault(post)?.Mark;
    }

    private static string? Name(string? field) => field is null ? null : Names.GetValueOrDefault(field, field);
}
