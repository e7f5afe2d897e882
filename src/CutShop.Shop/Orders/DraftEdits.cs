using System.Globalization;
using CutShop.Takeoff.Intake;

namespace CutShop.Shop.Orders;

/// <summary>What can be added to, doubled in and taken from a draft. A number that is not there changes nothing.</summary>
public static class DraftEdits
{
    /// <summary>Adds a post after another, like it and with the next free mark, and a section like the one before it.</summary>
    public static DraftForm AddPost(DraftForm form, int line, int after) => InLine(form, line, old =>
    {
        if (after < 0 || after >= old.Posts.Count || form.Posts() >= DraftForm.MostPosts)
            return old;
        var posts = Inserted(old.Posts, after + 1, old.Posts[after].Elsewhere(Marks.After(old.Posts[after].Mark, PostMarks(form))));
        if (old.Course == DraftLine.OnCurve)
            return old with { Posts = posts };
        var section = old.Sections.Count == 0 ? new DraftSection() : old.Sections[Math.Min(after, old.Sections.Count - 1)] with { ClearAt = "" };
        return old with { Posts = posts, Sections = Inserted(old.Sections, Math.Min(after, old.Sections.Count), section) };
    });

    /// <summary>Takes a post out, and the section after it, or before the last. Two posts stay, in a ring three.</summary>
    public static DraftForm RemovePost(DraftForm form, int line, int post) => InLine(form, line, old =>
    {
        if (post < 0 || post >= old.Posts.Count || old.Posts.Count <= (old.Course == DraftLine.Closed ? 3 : 2))
            return old;
        var section = Math.Min(post, old.Sections.Count - 1);
        return old with { Posts = Without(old.Posts, post), Sections = section < 0 ? old.Sections : Without(old.Sections, section) };
    });

    /// <summary>Adds a row like the last one, with a mark of its own and no height yet.</summary>
    public static DraftForm AddRow(DraftForm form, int line) => InLine(form, line, old =>
    {
        var marks = old.Rows.Select(row => row.Mark).ToHashSet();
        var mark = marks.Contains("low") || old.Rows.Count == 0 ? Marks.After("row ", marks) : "low";
        return old with { Rows = [.. old.Rows, (old.Rows.Count > 0 ? old.Rows[^1] : new DraftRow()) with { Mark = mark, Height = "", Heights = "" }] };
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
        var like = form.Lines.Count > 0 && form.Lines[^1].Posts.Count > 0 ? form.Lines[^1].Posts[0].Elsewhere(mark) : new DraftPost { Shape = "square" };
        var line = new DraftLine
        {
            Mark = mark,
            Posts = [like with { Mark = mark + "1" }, like with { Mark = mark + "2" }],
            Sections = [new DraftSection()],
            Rows = form.Lines.Count > 0 ? [.. form.Lines[^1].Rows.Select(row => row with { At = "", Heights = "" })] : [new DraftRow { Mark = "top", Between = "bored" }],
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
            At = OfNewMarks(row.At),
            Heights = OfNewMarks(row.Heights),
        };

        string OfNewMarks(string typed) => MarkedText.Of(MarkedText.Parts(typed).Select(part => (renamed.GetValueOrDefault(part.Mark, part.Mark), part.Text)));
    }

    /// <summary>Puts a line's posts on an arc: its sections and turns go, and the first width between centres becomes the chord.</summary>
    public static DraftForm PutOnCurve(DraftForm form, int line) => InLine(form, line, old => old.Course == DraftLine.OnCurve ? old : old with
    {
        Course = DraftLine.OnCurve,
        Curve = old.Sections is [{ Spacing: "centres" } first, ..] && old.Curve.Angle.Length == 0 ? old.Curve with { Chord = first.Width } : old.Curve,
        Posts = [.. old.Posts.Select(post => post with { Turn = "", Corner = "" })],
        Sections = [],
    });

    /// <summary>Closes a line to a ring: a section leads from its last post to its first. It has three posts or more.</summary>
    public static DraftForm CloseToRing(DraftForm form, int line) => InLine(form, line, old => old.Posts.Count < 3 ? old : old with
    {
        Course = DraftLine.Closed,
        Sections = Measured(old, old.Posts.Count),
    });

    /// <summary>Has a line measured section by section, from its first post to its last.</summary>
    public static DraftForm MeasureSections(DraftForm form, int line) => InLine(form, line, old => old with
    {
        Course = "",
        Sections = Measured(old, old.Posts.Count - 1),
    });

    /// <summary>So many sections: those that there are, then more like the last of them or as far apart as on the curve.</summary>
    private static List<DraftSection> Measured(DraftLine line, int count)
    {
        var like = line.Sections.Count > 0 ? line.Sections[^1] with { ClearAt = "" }
            : line.Curve.Chord.Length > 0 ? new DraftSection { Spacing = "centres", Width = line.Curve.Chord }
            : new DraftSection();
        return [.. line.Sections.Concat(Enumerable.Repeat(like, Math.Max(0, count - line.Sections.Count))).Take(count)];
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
