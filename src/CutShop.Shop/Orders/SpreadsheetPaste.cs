using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Orders;

/// <summary>
/// Takes posts and sections out of rows copied from a spreadsheet. A row is a post and the section that follows it; the first
/// row may name the columns, in any order.
/// </summary>
public static class SpreadsheetPaste
{
    private static readonly string[] Usual = ["mark", "shape", "across", "height", "turn", "clear", "rise"];
    private static readonly HashSet<string> Known = [.. Usual, "centres", "sag", "slack", "buried", "girth", "corner", "boring", "holes", "clear at", "drop"];

    /// <summary>What is accepted, for messages.</summary>
    public static Sentence Accepted { get; } = OrderReplies.Of("AcceptedPaste", DraftForm.MostPosts, string.Join(", ", Usual), string.Join(", ", Known.Except(Usual)));

    /// <summary>Puts the posts and sections in place of a line's own.</summary>
    /// <param name="form">The draft.</param>
    /// <param name="line">Which line.</param>
    /// <param name="text">What was pasted.</param>
    /// <returns>The draft, or what is accepted.</returns>
    public static Parsed<DraftForm> Into(DraftForm form, int line, string text)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(text);
        var rows = text.Split('\n').Select(row => row.TrimEnd('\r')).Where(row => row.Trim().Length > 0).Select(row => row.Split('\t', StringSplitOptions.TrimEntries)).ToList();
        if (rows.Count == 0 || line < 0 || line >= form.Lines.Count)
            return Parsed.Bad<DraftForm>(OrderReplies.Of("NothingPasted", Accepted));

        var first = rows[0].Select(cell => cell.ToLowerInvariant()).ToArray();
        var names = Usual;
        if (first.Contains("mark"))
        {
            if (first.FirstOrDefault(name => name.Length > 0 && !Known.Contains(name)) is { } unknown)
                return Parsed.Bad<DraftForm>(OrderReplies.Of("UnknownColumn", unknown, string.Join(", ", Known)));
            names = first;
            rows.RemoveAt(0);
        }
        if (rows.Count < 2 || form.Posts() - form.Lines[line].Posts.Count + rows.Count > DraftForm.MostPosts)
            return Parsed.Bad<DraftForm>(OrderReplies.Of("PostsPasted", rows.Count, Accepted));
        if (rows.FindIndex(row => row.Length > names.Length) is >= 0 and var wide)
            return Parsed.Bad<DraftForm>(OrderReplies.Of("TooManyCells", wide + 1, rows[wide].Length, names.Length, Accepted));

        var posts = rows.Select(row => new DraftPost
        {
            Mark = Cell(row, "mark"),
            Shape = Cell(row, "shape") is { Length: > 0 } shape ? shape.ToLowerInvariant() : "square",
            Across = Cell(row, "across"),
            Height = Cell(row, "height"),
            Turn = Cell(row, "turn"),
            Buried = Cell(row, "buried"),
            Girth = Cell(row, "girth"),
            Corner = Cell(row, "corner").ToLowerInvariant(),
            Boring = Cell(row, "boring").ToLowerInvariant(),
            Holes = Cell(row, "holes"),
        });
        var course = form.Lines[line].Course;
        var sections = rows.Take(course == DraftLine.OnCurve ? 0 : course == DraftLine.Closed ? rows.Count : rows.Count - 1).Select(row => new DraftSection
        {
            Spacing = Cell(row, "centres").Length > 0 ? "centres" : "clear",
            Width = Cell(row, "centres") is { Length: > 0 } centres ? centres : Cell(row, "clear"),
            Rise = Cell(row, "rise"),
            Sag = Cell(row, "sag"),
            Slack = Cell(row, "slack"),
            ClearAt = Cell(row, "clear at"),
            Drop = Cell(row, "drop"),
        });
        return Parsed.Good(DraftEdits.InLine(form, line, old => old with { Posts = [.. posts], Sections = [.. sections] }));

        string Cell(string[] row, string name)
        {
            var at = Array.IndexOf(names, name);
            return at >= 0 && at < row.Length ? row[at] : "";
        }
    }
}
