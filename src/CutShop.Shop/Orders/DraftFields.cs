using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using CutShop.Takeoff.JobFile;

namespace CutShop.Shop.Orders;

/// <summary>A draft as a flat list of fields and back: <c>lines[0].posts[1].across</c> and the text typed there.</summary>
public static class DraftFields
{
    private const int LongestText = 500;

    /// <summary>The longest text of a field that speaks of many posts or rows.</summary>
    private const int LongestOfMany = 65_536;

    private static readonly JsonSerializerOptions Stored = new(JsonSerializerDefaults.Web)
    {
        TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { LeaveOutUntyped } },
    };

    private static readonly FieldsOf<DraftRope> Rope = new(
        [
            new("material", rope => rope.Material, (rope, text) => rope with { Material = text }),
            new("diameter", rope => rope.Diameter, (rope, text) => rope with { Diameter = text }),
            new("measured", rope => rope.Measured, (rope, text) => rope with { Measured = text }),
            new("construction", rope => rope.Construction, (rope, text) => rope with { Construction = text }),
            new("colour", rope => rope.Colour, (rope, text) => rope with { Colour = text }),
        ]);

    private static readonly FieldsOf<DraftWetting> Wetting = new(
        [
            new("loses", wetting => wetting.Loses, (wetting, text) => wetting with { Loses = text }),
            new("manner", wetting => wetting.Manner, (wetting, text) => wetting with { Manner = text }),
        ]);

    private static readonly FieldsOf<DraftAllowances> Allowances = new(
        [
            new("shrink", allowances => allowances.Shrink, (allowances, text) => allowances with { Shrink = text }),
            .. Wetting.In<DraftAllowances>("wetting", allowances => allowances.Wetting, (allowances, wetting) => allowances with { Wetting = wetting }),
            new("perPiece", allowances => allowances.PerPiece, (allowances, text) => allowances with { PerPiece = text }),
            new("roundUp", allowances => allowances.RoundUp, (allowances, text) => allowances with { RoundUp = text }),
        ]);

    private static readonly FieldsOf<DraftForm> Job = new(
        [
            new("number", form => form.Number, (form, text) => form with { Number = text }),
            new("changes", form => form.Changes, (form, text) => form with { Changes = text }),
            new("customer", form => form.Customer, (form, text) => form with { Customer = text }),
            new("due", form => form.Due, (form, text) => form with { Due = text }),
            new("unit", form => form.Unit, (form, text) => form with { Unit = text }),
            new("oneLot", form => form.OneLot, (form, text) => form with { OneLot = text }),
            new("datum", form => form.Datum, (form, text) => form with { Datum = text }),
            new("bore", form => form.Bore, (form, text) => form with { Bore = text }),
            new("boring", form => form.Boring, (form, text) => form with { Boring = text }),
            new("longest", form => form.Longest, (form, text) => form with { Longest = text }),
            .. Rope.In<DraftForm>("rope", form => form.Rope, (form, rope) => form with { Rope = rope }),
            .. Allowances.In<DraftForm>("allowances", form => form.Allowances, (form, allowances) => form with { Allowances = allowances }),
        ]);

    private static readonly FieldsOf<DraftCurve> Curve = new(
        [
            new("radius", curve => curve.Radius, (curve, text) => curve with { Radius = text }),
            new("string", curve => curve.Taut, (curve, text) => curve with { Taut = text }),
            new("middle", curve => curve.Middle, (curve, text) => curve with { Middle = text }),
            new("chord", curve => curve.Chord, (curve, text) => curve with { Chord = text }),
            new("angle", curve => curve.Angle, (curve, text) => curve with { Angle = text }),
            new("turns", curve => curve.Turns, (curve, text) => curve with { Turns = text }),
            new("rise", curve => curve.Rise, (curve, text) => curve with { Rise = text }),
            new("sag", curve => curve.Sag, (curve, text) => curve with { Sag = text }),
            new("slack", curve => curve.Slack, (curve, text) => curve with { Slack = text }),
        ]);

    private static readonly FieldsOf<DraftLine> Line = new(
        [
            new("mark", line => line.Mark, (line, text) => line with { Mark = text }),
            new("course", line => line.Course, (line, text) => line with { Course = text }),
            new("drop", line => line.Drop, (line, text) => line with { Drop = text }),
            new("boring", line => line.Boring, (line, text) => line with { Boring = text }),
            .. Curve.In<DraftLine>("curve", line => line.Curve, (line, curve) => line with { Curve = curve }),
        ]);

    private static readonly FieldsOf<DraftPost> Post = new(
        [
            new("mark", post => post.Mark, (post, text) => post with { Mark = text }),
            new("shape", post => post.Shape, (post, text) => post with { Shape = text }),
            new("across", post => post.Across, (post, text) => post with { Across = text }),
            new("height", post => post.Height, (post, text) => post with { Height = text }),
            new("turn", post => post.Turn, (post, text) => post with { Turn = text }),
            new("buried", post => post.Buried, (post, text) => post with { Buried = text }),
            new("girth", post => post.Girth, (post, text) => post with { Girth = text }),
            new("corner", post => post.Corner, (post, text) => post with { Corner = text }),
            new("boring", post => post.Boring, (post, text) => post with { Boring = text }),
            new("holes", post => post.Holes, (post, text) => post with { Holes = text }),
        ]);

    private static readonly FieldsOf<DraftSection> Section = new(
        [
            new("spacing", section => section.Spacing, (section, text) => section with { Spacing = text }),
            new("width", section => section.Width, (section, text) => section with { Width = text }),
            new("rise", section => section.Rise, (section, text) => section with { Rise = text }),
            new("sag", section => section.Sag, (section, text) => section with { Sag = text }),
            new("slack", section => section.Slack, (section, text) => section with { Slack = text }),
            new("clearAt", section => section.ClearAt, (section, text) => section with { ClearAt = text }),
            new("drop", section => section.Drop, (section, text) => section with { Drop = text }),
        ]);

    private static readonly FieldsOf<DraftEye> Eye = new(
        [
            new("pin", eye => eye.Pin, (eye, text) => eye with { Pin = text }),
            new("length", eye => eye.Length, (eye, text) => eye with { Length = text }),
            new("reach", eye => eye.Reach, (eye, text) => eye with { Reach = text }),
            new("tucks", eye => eye.Tucks, (eye, text) => eye with { Tucks = text }),
            new("thimble", eye => eye.Thimble, (eye, text) => eye with { Thimble = text }),
        ]);

    private static readonly FieldsOf<DraftRow> Row = new(
        [
            new("mark", row => row.Mark, (row, text) => row with { Mark = text }),
            new("height", row => row.Height, (row, text) => row with { Height = text }),
            new("heights", row => row.Heights, (row, text) => row with { Heights = text }),
            new("sag", row => row.Sag, (row, text) => row with { Sag = text }),
            new("slack", row => row.Slack, (row, text) => row with { Slack = text }),
            new("start", row => row.Start, (row, text) => row with { Start = text }),
            .. Eye.In<DraftRow>("start.eye", row => row.StartEye, (row, eye) => row with { StartEye = eye }),
            new("finish", row => row.Finish, (row, text) => row with { Finish = text }),
            .. Eye.In<DraftRow>("finish.eye", row => row.FinishEye, (row, eye) => row with { FinishEye = eye }),
            new("between", row => row.Between, (row, text) => row with { Between = text }),
            new("at", row => row.At, (row, text) => row with { At = text }),
            new("bore", row => row.Bore, (row, text) => row with { Bore = text }),
            new("unbroken", row => row.Unbroken, (row, text) => row with { Unbroken = text }),
            .. Rope.In<DraftRow>("rope", row => row.Rope, (row, rope) => row with { Rope = rope }),
        ]);

    /// <summary>The draft as JSON text, as it is stored: what nobody typed is left out.</summary>
    public static string ToJson(DraftForm form) => JsonSerializer.Serialize(form, Stored);

    /// <summary>The draft from its stored text.</summary>
    public static DraftForm FromJson(string json) => JsonSerializer.Deserialize<DraftForm>(json, Stored)!;

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
        var typed = fields
            .Select(field => (Place: JobPlace.Find(field.Key) ?? default, field.Value))
            .Where(field => field.Place.Field is not null)
            .ToLookup(field => field.Place.Line, field => (field.Place, Text: Kept(field.Place, field.Value)));
        return Filled(Job, typed[null]) with { Lines = [.. typed.Where(line => line.Key is not null).OrderBy(line => line.Key).Select(ReadLine)] };
    }

    /// <summary>A draft with other text in some of its fields. Names that are no field of it are passed over.</summary>
    public static DraftForm With(DraftForm form, IEnumerable<KeyValuePair<string, string>> texts)
    {
        ArgumentNullException.ThrowIfNull(texts);
        return texts.Aggregate(form, (changed, field) => JobPlace.Find(field.Key) is { } place ? With(changed, place, Kept(place, field.Value)) : changed);
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
    private static string NameIn(JobPlace place) => place switch
    {
        { Group: null } => place.Field ?? "",
        { Outer: null } => $"{place.Group}.{place.Field}",
        _ => $"{place.Outer}.{place.Group}.{place.Field}",
    };

    private static string Kept(JobPlace place, string text)
    {
        var longest = place.Field is "at" or "heights" or "holes" or "clearAt" ? LongestOfMany : LongestText;
        return text.Length <= longest ? text : text[..longest];
    }

    private static void LeaveOutUntyped(JsonTypeInfo type)
    {
        var untyped = type.Kind == JsonTypeInfoKind.Object ? type.CreateObject?.Invoke() : null;
        foreach (var property in type.Properties.Where(property => untyped is not null && property is { Get: not null } && property.PropertyType == typeof(string)))
        {
            var text = (string?)property.Get!(untyped!);
            property.ShouldSerialize = (_, value) => (string?)value != text;
        }
    }
}
