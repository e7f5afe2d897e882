using CutShop.CutPlan.Search;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Orders;

/// <summary>
/// What is wrong with the answers that a draft starts from. An answer goes to many posts, sections or rows, and what is wrong with it is
/// said once, at its question. What was left empty is no mistake: it can be filled in later.
/// </summary>
public static class QuestionMistakes
{
    private const int MostAQuestion = 3;

    private static readonly Dictionary<string, string> Questions = new()
    {
        ["number"] = "number",
        ["customer"] = "customer",
        ["due"] = "due",
        ["rope.material"] = "material",
        ["rope.diameter"] = "diameter",
        ["posts.shape"] = "shape",
        ["posts.across"] = "across",
        ["posts.height"] = "postHeight",
        ["sections.width"] = "width",
        ["rows.height"] = "rows",
        ["rows.sag"] = "sag",
        ["rows.start"] = "ends",
        ["rows.finish"] = "ends",
        ["rows.between"] = "between",
    };

    /// <summary>The mistakes by the name of their question; none where the draft can be made.</summary>
    /// <param name="form">The draft that the answers make.</param>
    /// <param name="tables">Rope weights, screws and bits.</param>
    public static IReadOnlyDictionary<string, IReadOnlyList<FieldNote>> Of(DraftForm form, ShopTables tables)
    {
        var typed = DraftFields.Of(form).ToDictionary();
        return DraftReading.Of(form, tables).Problems
            .Where(field => typed.TryGetValue(field.Key, out var text) && !string.IsNullOrWhiteSpace(text) && Questions.ContainsKey(Kind(field.Key)))
            .GroupBy(field => Questions[Kind(field.Key)], field => field.Value.Where(note => note.Kind == NoteKind.Error))
            .Select(question => (question.Key, Mistakes: question.SelectMany(notes => notes).Distinct().Take(MostAQuestion).ToList()))
            .Where(question => question.Mistakes.Count > 0)
            .ToDictionary(question => question.Key, question => (IReadOnlyList<FieldNote>)question.Mistakes);
    }

    /// <summary>A field without its place: <c>posts.across</c> for <c>lines[0].posts[3].across</c>.</summary>
    private static string Kind(string field)
    {
        const string line = "lines[0].";
        var (open, close) = (field.LastIndexOf('['), field.LastIndexOf(']'));
        return field.StartsWith(line, StringComparison.Ordinal) && open >= line.Length ? field[line.Length..open] + field[(close + 1)..] : field;
    }
}
