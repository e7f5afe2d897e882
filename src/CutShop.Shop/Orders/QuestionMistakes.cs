using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Orders;

/// <summary>
/// What is wrong with the answers that a draft starts from. An answer goes to many posts, sections or rows, and what is wrong with it is
/// said once, at its question. What was left empty is no mistake: it can be filled in later.
/// </summary>
public static class QuestionMistakes
{
    private const int MostAQuestion = 3;

    private static readonly Dictionary<(LinePart Part, string? Group, string? Field), string> Questions = new()
    {
        [(LinePart.None, null, "number")] = "number",
        [(LinePart.None, null, "customer")] = "customer",
        [(LinePart.None, null, "due")] = "due",
        [(LinePart.None, null, "longest")] = "longest",
        [(LinePart.None, null, "drop")] = "drop",
        [(LinePart.None, "rope", "material")] = "material",
        [(LinePart.None, "rope", "diameter")] = "diameter",
        [(LinePart.None, "rope", "construction")] = "construction",
        [(LinePart.None, "rope", "colour")] = "colour",
        [(LinePart.None, "wetting", "loses")] = "wetting.loses",
        [(LinePart.None, "wetting", "manner")] = "wetting.manner",
        [(LinePart.None, "curve", "radius")] = "curve.radius",
        [(LinePart.None, "curve", "string")] = "curve.string",
        [(LinePart.None, "curve", "middle")] = "curve.middle",
        [(LinePart.None, "curve", "chord")] = "width",
        [(LinePart.None, "curve", "angle")] = "curve.angle",
        [(LinePart.None, "curve", "turns")] = "curve.turns",
        [(LinePart.Post, null, "shape")] = "shape",
        [(LinePart.Post, null, "across")] = "across",
        [(LinePart.Post, null, "girth")] = "girth",
        [(LinePart.Post, null, "height")] = "postHeight",
        [(LinePart.Post, null, "buried")] = "buried",
        [(LinePart.Post, null, "holes")] = "holes",
        [(LinePart.Post, null, "turn")] = "curve.turns",
        [(LinePart.Section, null, "width")] = "width",
        [(LinePart.Row, null, "height")] = "rows",
        [(LinePart.Row, null, "sag")] = "sag",
        [(LinePart.Row, null, "start")] = "ends",
        [(LinePart.Row, null, "finish")] = "ends",
        [(LinePart.Row, "eye", "pin")] = "eye.pin",
        [(LinePart.Row, "eye", "length")] = "eye.length",
        [(LinePart.Row, "eye", "reach")] = "eye.reach",
        [(LinePart.Row, "eye", "tucks")] = "eye.tucks",
        [(LinePart.Row, "eye", "thimble")] = "eye.thimble",
        [(LinePart.Row, null, "between")] = "between",
    };

    /// <summary>The mistakes by the name of their question; none where the draft can be made.</summary>
    /// <param name="form">The draft that the answers make.</param>
    /// <param name="tables">Rope weights, screws and bits.</param>
    public static IReadOnlyDictionary<string, IReadOnlyList<FieldNote>> Of(DraftForm form, ShopTables tables)
    {
        return DraftReading.Of(form, tables).Problems
            .Where(field => !string.IsNullOrWhiteSpace(DraftFields.TextAt(form, field.Key)) && Questions.ContainsKey(Kind(field.Key)))
            .GroupBy(field => Questions[Kind(field.Key)], field => field.Value.Where(note => note.Kind == NoteKind.Error))
            .Select(question => (question.Key, Mistakes: question.SelectMany(notes => notes).Distinct().Take(MostAQuestion).ToList()))
            .Where(question => question.Mistakes.Count > 0)
            .ToDictionary(question => question.Key, question => (IReadOnlyList<FieldNote>)question.Mistakes);
    }

    /// <summary>A field without the indexes of its place.</summary>
    private static (LinePart, string?, string?) Kind(JobPlace field) => (field.Part, field.Group, field.Field);
}
