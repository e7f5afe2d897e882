using CutShop.Takeoff.JobFile;

namespace CutShop.Shop.Orders;

/// <summary>
/// A draft as a source of a job. It judges nothing: what was typed is given as it is. A field left empty is missing.
/// </summary>
internal static class DraftSource
{
    public static JobValue Of(DraftForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        return Job(form);
    }

    /// <summary>The treatments at single posts, as typed: mark and treatment, parted by commas or semicolons.</summary>
    public static IEnumerable<(string Mark, string Treatment)> Overrides(string typed)
    {
        foreach (var part in typed.Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var colon = part.IndexOf(':', StringComparison.Ordinal);
            var cut = colon >= 0 ? colon : part.IndexOf(' ', StringComparison.Ordinal);
            yield return cut < 0 ? (part, "") : (part[..cut].Trim(), part[(cut + 1)..].Trim());
        }
    }

    /// <summary>The field of the form that a place of the job was read from, or the group or part that holds it.</summary>
    public static JobPlace FieldOf(JobPlace place) => place switch
    {
        { Group: "at" } => place.Above,
        { Field: "clear" or "centres" } => place with { Field = "width" },
        { Field: "lines" or "posts" or "sections" or "rows" } => place.Above,
        _ => place,
    };

    private static JobValue Job(DraftForm form) => JobValue.OfFields(
        [
            Text("number", form.Number),
            Text("customer", form.Customer),
            Text("due", form.Due),
            new("rope", Rope(form.Rope)),
            new("oneLot", form.OneLot.Length > 0 ? JobValue.Yes : null),
            new("allowances", JobValue.OfFields(
                [
                    Text("shrink", TypedLength.IsBare(form.Allowances.Shrink.Trim()) ? form.Allowances.Shrink.Trim() + "%" : form.Allowances.Shrink),
                    Text("perPiece", form.Allowances.PerPiece),
                    Text("roundUp", form.Allowances.RoundUp),
                ])),
            new("lines", JobValue.OfList(form.Lines, Line)),
        ]);

    private static JobValue Line(DraftLine line) => JobValue.OfFields(
        [
            Text("mark", line.Mark),
            new("posts", JobValue.OfList(line.Posts, Post)),
            new("sections", JobValue.OfList(line.Sections, Section)),
            new("rows", JobValue.OfList(line.Rows, Row)),
        ]);

    private static JobValue Post(DraftPost post) => JobValue.OfFields(
        [
            Text("mark", post.Mark),
            Text("shape", post.Shape),
            Text("across", post.Across),
            Text("height", post.Height),
            Text("turn", post.Turn),
        ]);

    private static JobValue Section(DraftSection section) => JobValue.OfFields(
        [
            Text(section.Spacing == "centres" ? "centres" : "clear", section.Width),
            Text("rise", section.Rise),
            Text("sag", section.Sag),
            Text("slack", section.Slack),
        ]);

    private static JobValue Row(DraftRow row) => JobValue.OfFields(
        [
            Text("mark", row.Mark),
            Text("height", row.Height),
            Text("sag", row.Sag),
            Text("slack", row.Slack),
            Text("start", row.Start),
            Text("finish", row.Finish),
            Text("between", row.Between),
            new("at", string.IsNullOrWhiteSpace(row.At) ? null : JobValue.OfFields(Overrides(row.At).Select(at => new KeyValuePair<string, JobValue?>(at.Mark, JobValue.OfText(at.Treatment))))),
            new("rope", row.Rope.IsEmpty() ? null : Rope(row.Rope)),
        ]);

    private static JobValue Rope(DraftRope rope) => JobValue.OfFields([Text("material", rope.Material), Text("diameter", rope.Diameter), Text("measured", rope.Measured)]);

    private static KeyValuePair<string, JobValue?> Text(string name, string typed) => new(name, string.IsNullOrWhiteSpace(typed) ? null : JobValue.OfText(typed.Trim()));
}
