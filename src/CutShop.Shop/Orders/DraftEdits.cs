using System.Globalization;

namespace CutShop.Shop.Orders;

/// <summary>What can be added to, doubled in and taken from a draft. A number that is not there changes nothing.</summary>
public static class DraftEdits
{
    /// <summary>Adds a post after another, like it and with the next free mark, and a section like the one before it.</summary>
    public static DraftForm AddPost(DraftForm form, int line, int after) => InLine(form, line, old =>
    {
        if (after < 0 || after >= old.Posts.Count || form.Posts() >= DraftForm.MostPosts)
            return old;
        var post = old.Posts[after] with { Mark = Marks.After(old.Posts[after].Mark, PostMarks(form)), Turn = "" };
        var section = old.Sections.Count == 0 ? new DraftSection() : old.Sections[Math.Min(after, old.Sections.Count - 1)];
        return old with { Posts = Inserted(old.Posts, after + 1, post), Sections = Inserted(old.Sections, Math.Min(after, old.Sections.Count), section) };
    });

    /// <summary>Takes a post out, and the section after it, or before the last. Two posts stay.</summary>
    public static DraftForm RemovePost(DraftForm form, int line, int post) => InLine(form, line, old =>
    {
        if (post < 0 || post >= old.Posts.Count || old.Posts.Count <= 2)
            return old;
        var section = Math.Min(post, old.Sections.Count - 1);
        return old with { Posts = Without(old.Posts, post), Sections = section < 0 ? old.Sections : Without(old.Sections, section) };
    });

    /// <summary>Adds a row like the last one, with a mark of its own and no height yet.</summary>
    public static DraftForm AddRow(DraftForm form, int line) => InLine(form, line, old =>
    {
        var marks = old.Rows.Select(row => row.Mark).ToHashSet();
        var mark = marks.Contains("low") || old.Rows.Count == 0 ? Marks.After("row ", marks) : "low";
        return old with { Rows = [.. old.Rows, (old.Rows.Count > 0 ? old.Rows[^1] : new DraftRow()) with { Mark = mark, Height = "" }] };
    });

    /// <summary>Takes a row out. One stays.</summary>
    public static DraftForm RemoveRow(DraftForm form, int line, int row) => InLine(form, line, old =>
        row >= 0 && row < old.Rows.Count && old.Rows.Count > 1 ? old with { Rows = Without(old.Rows, row) } : old);

    /// <summary>Adds an empty line of two posts, of the sizes of the last line.</summary>
    public static DraftForm AddLine(DraftForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        if (form.Posts() + 2 > DraftForm.MostPosts)
            return form;
        var mark = Marks.NewLine(LineMarks(form));
        var like = form.Lines.Count > 0 && form.Lines[^1].Posts.Count > 0 ? form.Lines[^1].Posts[0] with { Turn = "" } : new DraftPost { Shape = "square" };
        var line = new DraftLine
        {
            Mark = mark,
            Posts = [like with { Mark = mark + "1" }, like with { Mark = mark + "2" }],
            Sections = [new DraftSection()],
            Rows = form.Lines.Count > 0 ? [.. form.Lines[^1].Rows.Select(row => row with { At = "" })] : [new DraftRow { Mark = "top", Between = "bored" }],
        };
        return form with { Lines = [.. form.Lines, line] };
    }

    /// <summary>Adds a line like another, with new marks for it and its posts.</summary>
    public static DraftForm DuplicateLine(DraftForm form, int line)
    {
        ArgumentNullException.ThrowIfNull(form);
        if (line < 0 || line >= form.Lines.Count || form.Posts() + form.Lines[line].Posts.Count > DraftForm.MostPosts)
            return form;
        var old = form.Lines[line];
        var mark = Marks.NewLine(LineMarks(form));
        var taken = PostMarks(form);
        var renamed = new Dictionary<string, string>();
        var posts = new List<DraftPost>();
        foreach (var (i, post) in old.Posts.Index())
        {
            var wanted = old.Mark.Length > 0 && post.Mark.StartsWith(old.Mark, StringComparison.Ordinal)
                ? mark + post.Mark[old.Mark.Length..]
                : string.Create(CultureInfo.InvariantCulture, $"{mark}{i + 1}");
            var next = taken.Contains(wanted) ? Marks.After(wanted, taken) : wanted;
            taken.Add(next);
            renamed.TryAdd(post.Mark, next);
            posts.Add(post with { Mark = next });
        }
        return form with { Lines = [.. form.Lines, old with { Mark = mark, Posts = posts, Rows = [.. old.Rows.Select(Renamed)] }] };

        DraftRow Renamed(DraftRow row) => row with
        {
            At = string.Join(", ", DraftSource.Overrides(row.At).Select(at => $"{renamed.GetValueOrDefault(at.Mark, at.Mark)}: {at.Treatment}")),
        };
    }

    /// <summary>Takes a line out. One stays.</summary>
    public static DraftForm RemoveLine(DraftForm form, int line)
    {
        ArgumentNullException.ThrowIfNull(form);
        return line >= 0 && line < form.Lines.Count && form.Lines.Count > 1 ? form with { Lines = Without(form.Lines, line) } : form;
    }

    internal static DraftForm InLine(DraftForm form, int line, Func<DraftLine, DraftLine> change)
    {
        ArgumentNullException.ThrowIfNull(form);
        return line < 0 || line >= form.Lines.Count
            ? form
            : form with { Lines = [.. form.Lines.Select((old, i) => i == line ? change(old) : old)] };
    }

    private static HashSet<string> PostMarks(DraftForm form) => [.. form.Lines.SelectMany(line => line.Posts).Select(post => post.Mark)];

    private static HashSet<string> LineMarks(DraftForm form) => [.. form.Lines.Select(line => line.Mark)];

    private static List<T> Inserted<T>(IReadOnlyList<T> all, int at, T one) => [.. all.Take(at), one, .. all.Skip(at)];

    private static List<T> Without<T>(IReadOnlyList<T> all, int at) => [.. all.Where((_, i) => i != at)];
}
