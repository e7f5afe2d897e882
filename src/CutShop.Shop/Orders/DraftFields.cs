using System.Globalization;
using System.Text.Json;
using CutShop.Takeoff.JobFile;

namespace CutShop.Shop.Orders;

/// <summary>A draft as a flat list of fields and back: <c>lines[0].posts[1].across</c> and the text typed there.</summary>
public static class DraftFields
{
    private const int LongestText = 500;

    private static readonly FieldsOf<DraftForm> Job = new(
        new("number", form => form.Number, (form, text) => form with { Number = text }),
        new("changes", form => form.Changes, (form, text) => form with { Changes = text }),
        new("customer", form => form.Customer, (form, text) => form with { Customer = text }),
        new("due", form => form.Due, (form, text) => form with { Due = text }),
        new("unit", form => form.Unit, (form, text) => form with { Unit = text }),
        new("oneLot", form => form.OneLot, (form, text) => form with { OneLot = text }),
        new("rope.material", form => form.Rope.Material, (form, text) => form with { Rope = form.Rope with { Material = text } }),
        new("rope.diameter", form => form.Rope.Diameter, (form, text) => form with { Rope = form.Rope with { Diameter = text } }),
        new("rope.measured", form => form.Rope.Measured, (form, text) => form with { Rope = form.Rope with { Measured = text } }),
        new("allowances.shrink", form => form.Allowances.Shrink, (form, text) => form with { Allowances = form.Allowances with { Shrink = text } }),
        new("allowances.perPiece", form => form.Allowances.PerPiece, (form, text) => form with { Allowances = form.Allowances with { PerPiece = text } }),
        new("allowances.roundUp", form => form.Allowances.RoundUp, (form, text) => form with { Allowances = form.Allowances with { RoundUp = text } }));

    private static readonly FieldsOf<DraftLine> Line = new(
        new TextField<DraftLine>("mark", line => line.Mark, (line, text) => line with { Mark = text }));

    private static readonly FieldsOf<DraftPost> Post = new(
        new("mark", post => post.Mark, (post, text) => post with { Mark = text }),
        new("shape", post => post.Shape, (post, text) => post with { Shape = text }),
        new("across", post => post.Across, (post, text) => post with { Across = text }),
        new("height", post => post.Height, (post, text) => post with { Height = text }),
        new("turn", post => post.Turn, (post, text) => post with { Turn = text }));

    private static readonly FieldsOf<DraftSection> Section = new(
        new("spacing", section => section.Spacing, (section, text) => section with { Spacing = text }),
        new("width", section => section.Width, (section, text) => section with { Width = text }),
        new("rise", section => section.Rise, (section, text) => section with { Rise = text }),
        new("sag", section => section.Sag, (section, text) => section with { Sag = text }),
        new("slack", section => section.Slack, (section, text) => section with { Slack = text }));

    private static readonly FieldsOf<DraftRow> Row = new(
        new("mark", row => row.Mark, (row, text) => row with { Mark = text }),
        new("height", row => row.Height, (row, text) => row with { Height = text }),
        new("sag", row => row.Sag, (row, text) => row with { Sag = text }),
        new("slack", row => row.Slack, (row, text) => row with { Slack = text }),
        new("start", row => row.Start, (row, text) => row with { Start = text }),
        new("finish", row => row.Finish, (row, text) => row with { Finish = text }),
        new("between", row => row.Between, (row, text) => row with { Between = text }),
        new("at", row => row.At, (row, text) => row with { At = text }),
        new("rope.material", row => row.Rope.Material, (row, text) => row with { Rope = row.Rope with { Material = text } }),
        new("rope.diameter", row => row.Rope.Diameter, (row, text) => row with { Rope = row.Rope with { Diameter = text } }),
        new("rope.measured", row => row.Rope.Measured, (row, text) => row with { Rope = row.Rope with { Measured = text } }));

    /// <summary>The draft as JSON text, as it is stored.</summary>
    public static string ToJson(DraftForm form) => JsonSerializer.Serialize(form, JsonSerializerOptions.Web);

    /// <summary>The draft from its stored text.</summary>
    public static DraftForm FromJson(string json) => JsonSerializer.Deserialize<DraftForm>(json, JsonSerializerOptions.Web)!;

    /// <summary>Every field with its text, in the order of the form.</summary>
    public static IReadOnlyList<KeyValuePair<string, string>> Of(DraftForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        return [.. Job.Of(form, ""), .. form.Lines.SelectMany((line, i) => OfLine(line, string.Create(CultureInfo.InvariantCulture, $"lines[{i}].")))];
    }

    /// <summary>The draft that a form's fields make. Names that are no field of a draft are passed over; gaps in a list close up.</summary>
    public static DraftForm Read(IEnumerable<KeyValuePair<string, string>> fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        var typed = fields.Select(field => (Place: JobPlace.Find(field.Key) ?? default, Text: Kept(field.Value))).Where(field => field.Place.Field is not null).ToLookup(field => field.Place.Line);
        return Filled(Job, typed[null]) with { Lines = [.. typed.Where(line => line.Key is not null).OrderBy(line => line.Key).Select(ReadLine)] };
    }

    /// <summary>A draft with other text in some of its fields. Names that are no field of it are passed over.</summary>
    public static DraftForm With(DraftForm form, IEnumerable<KeyValuePair<string, string>> texts)
    {
        ArgumentNullException.ThrowIfNull(texts);
        return texts.Aggregate(form, (changed, field) => JobPlace.Find(field.Key) is { } place ? With(changed, place, Kept(field.Value)) : changed);
    }

    /// <summary>The text of one field; null where the draft has no such field.</summary>
    public static string? TextAt(DraftForm form, JobPlace place)
    {
        ArgumentNullException.ThrowIfNull(form);
        if (place.Line is not { } index)
            return Job.TextAt(form, NameIn(place));
        if (form.Lines.ElementAtOrDefault(index) is not { } line)
            return null;
        return place.Part switch
        {
            LinePart.Post => TextAt(Post, line.Posts, place),
            LinePart.Section => TextAt(Section, line.Sections, place),
            LinePart.Row => TextAt(Row, line.Rows, place),
            _ => Line.TextAt(line, NameIn(place)),
        };
    }

    private static DraftForm With(DraftForm form, JobPlace place, string text)
    {
        if (place.Line is not { } index)
            return Job.With(form, NameIn(place), text);
        if (TextAt(form, place) is not { } old || old == text)
            return form;
        return DraftEdits.InLine(form, index, line => place.Part switch
        {
            LinePart.Post => line with { Posts = With(Post, line.Posts, place, text) },
            LinePart.Section => line with { Sections = With(Section, line.Sections, place, text) },
            LinePart.Row => line with { Rows = With(Row, line.Rows, place, text) },
            _ => Line.With(line, NameIn(place), text),
        });
    }

    private static IEnumerable<KeyValuePair<string, string>> OfLine(DraftLine line, string prefix) =>
        [.. Line.Of(line, prefix), .. OfAll(Post, line.Posts, prefix + "posts"), .. OfAll(Section, line.Sections, prefix + "sections"), .. OfAll(Row, line.Rows, prefix + "rows")];

    private static IEnumerable<KeyValuePair<string, string>> OfAll<T>(FieldsOf<T> fields, IReadOnlyList<T> parts, string list)
        where T : class, new() => parts.SelectMany((part, i) => fields.Of(part, string.Create(CultureInfo.InvariantCulture, $"{list}[{i}].")));

    private static DraftLine ReadLine(IEnumerable<(JobPlace Place, string Text)> typed)
    {
        var parts = typed.ToLookup(field => field.Place.Part);
        return Filled(Line, parts[LinePart.None]) with
        {
            Posts = ReadAll(Post, parts[LinePart.Post]),
            Sections = ReadAll(Section, parts[LinePart.Section]),
            Rows = ReadAll(Row, parts[LinePart.Row]),
        };
    }

    private static List<T> ReadAll<T>(FieldsOf<T> fields, IEnumerable<(JobPlace Place, string Text)> typed)
        where T : class, new() => [.. typed.GroupBy(field => field.Place.Index).OrderBy(part => part.Key).Select(part => Filled(fields, part))];

    private static T Filled<T>(FieldsOf<T> fields, IEnumerable<(JobPlace Place, string Text)> typed)
        where T : class, new() => fields.Filled(typed.Select(field => (NameIn(field.Place), field.Text)));

    private static string? TextAt<T>(FieldsOf<T> fields, IReadOnlyList<T> parts, JobPlace place)
        where T : class, new() => parts.ElementAtOrDefault(place.Index) is { } part ? fields.TextAt(part, NameIn(place)) : null;

    private static List<T> With<T>(FieldsOf<T> fields, IReadOnlyList<T> parts, JobPlace place, string text)
        where T : class, new() => [.. parts.Select((part, i) => i == place.Index ? fields.With(part, NameIn(place), text) : part)];

    /// <summary>A field's name in its part.</summary>
    private static string NameIn(JobPlace place) => place.Group is null ? place.Field ?? "" : $"{place.Group}.{place.Field}";

    private static string Kept(string text) => text.Length <= LongestText ? text : text[..LongestText];
}
