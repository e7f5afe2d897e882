using CutShop.Shop.Orders;
using CutShop.Takeoff.JobFile;

using static CutShop.Web.Orders.OrderWords;

namespace CutShop.Web.Orders;

/// <summary>Fields of a draft in the desk's words: <c>Line A, post A2, across</c>.</summary>
public static class FieldWords
{
    /// <summary>The keys of the words for fields whose name in the form would not do.</summary>
    private static readonly Dictionary<string, string> Names = new()
    {
        ["number"] = "FieldNumber",
        ["changes"] = "FieldChanges",
        ["customer"] = "FieldCustomer",
        ["due"] = "FieldDue",
        ["unit"] = "FieldUnit",
        ["oneLot"] = "FieldLots",
        ["datum"] = "FieldDatum",
        ["buried"] = "PartBuried",
        ["rope"] = "FieldRope",
        ["allowances"] = "FieldAllowances",
        ["material"] = "PartMaterial",
        ["diameter"] = "PartDiameter",
        ["measured"] = "PartMeasured",
        ["shrink"] = "PartShrinkage",
        ["perPiece"] = "PartExtra",
        ["roundUp"] = "PartRoundUp",
        ["width"] = "PartSpacing",
        ["at"] = "PartSinglePosts",
        ["bore"] = "PartBores",
        ["boring"] = "PartBoring",
        ["longest"] = "FieldLongest",
        ["wetting"] = "PartWetting",
        ["loses"] = "PartLoses",
        ["manner"] = "PartManner",
        ["course"] = "PartCourse",
        ["string"] = "PartString",
        ["middle"] = "PartMiddle",
        ["chord"] = "PartChord",
        ["turns"] = "PartTurns",
        ["holes"] = "PartHoles",
        ["clearAt"] = "PartClearAt",
        ["heights"] = "PartHeights",
        ["unbroken"] = "PartUnbroken",
        ["start"] = "PartStart",
        ["finish"] = "PartFinish",
        ["length"] = "PartThroat",
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
            field.Line is null ? null : T["LineOf", line?.Mark],
            field.Part switch
            {
                LinePart.Post => T["PartPost", MarkOf(field.Index)],
                LinePart.Section => T["PartSection", MarkOf(field.Index), MarkOf(field.Index + 1)],
                LinePart.Row => T["PartRow", line?.Rows.ElementAtOrDefault(field.Index)?.Mark],
                _ => null,
            },
            Name(field.Outer),
            Name(field.Group),
            Name(field.Field),
        ];
        return field == JobPlace.Job ? T["TheJob"] : string.Join(", ", words.Where(word => word is not null));

        string? MarkOf(int post) => line?.Posts.ElementAtOrDefault(post)?.Mark;
    }

    private static string? Name(string? field) => field is null ? null : T[Names.GetValueOrDefault(field, field)];
}
