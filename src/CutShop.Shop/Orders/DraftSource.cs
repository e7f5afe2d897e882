using CutShop.Takeoff.JobFile;

namespace CutShop.Shop.Orders;

/// <summary>
/// A draft as a source of a job. It judges nothing: what was typed is given as it is, with its unit where the draft supplies one. A
/// field left empty is missing.
/// </summary>
internal sealed class DraftSource
{
    private readonly string _unit;

    private DraftSource(string unit) => _unit = unit;

    public static JobValue Of(DraftForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        return new DraftSource(form.Unit).Job(form);
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

    private JobValue Job(DraftForm form) => JobValue.OfFields(
        [
            Text("number", form.Number),
            Text("customer", form.Customer),
            Text("due", form.Due),
            new("rope", Rope(form.Rope)),
            new("oneLot", form.OneLot.Length > 0 ? JobValue.Yes : null),
            Text("datum", form.Datum),
            new("allowances", JobValue.OfFields(
                [
                    Text("shrink", TypedLength.IsBare(form.Allowances.Shrink.Trim()) ? form.Allowances.Shrink.Trim() + "%" : form.Allowances.Shrink),
                    Length("perPiece", form.Allowances.PerPiece),
                    Length("roundUp", form.Allowances.RoundUp),
                ])),
            new("lines", JobValue.OfList(form.Lines, Line)),
        ]);

    private JobValue Line(DraftLine line) => JobValue.OfFields(
        [
            Text("mark", line.Mark),
            new("posts", JobValue.OfList(line.Posts, Post)),
            new("sections", JobValue.OfList(line.Sections, Section)),
            new("rows", JobValue.OfList(line.Rows, Row)),
        ]);

    private JobValue Post(DraftPost post) => JobValue.OfFields(
        [
            Text("mark", post.Mark),
            Text("shape", post.Shape),
            Length("across", post.Across),
            Length("height", post.Height),
            Text("turn", post.Turn),
            Length("buried", post.Buried),
        ]);

    private JobValue Section(DraftSection section) => JobValue.OfFields(
        [
            Length(section.Spacing == "centres" ? "centres" : "clear", section.Width),
            Length("rise", section.Rise),
            Length("sag", section.Sag),
            Length("slack", section.Slack),
        ]);

    private JobValue Row(DraftRow row) => JobValue.OfFields(
        [
            Text("mark", row.Mark),
            Length("height", row.Height),
            Length("sag", row.Sag),
            Length("slack", row.Slack),
            Text("start", row.Start),
            Text("finish", row.Finish),
            Text("between", row.Between),
            new("at", string.IsNullOrWhiteSpace(row.At) ? null : JobValue.OfFields(Overrides(row.At).Select(at => new KeyValuePair<string, JobValue?>(at.Mark, JobValue.OfText(at.Treatment))))),
            new("rope", row.Rope.IsEmpty() ? null : Rope(row.Rope)),
        ]);

    private JobValue Rope(DraftRope rope) => JobValue.OfFields([Text("material", rope.Material), Length("diameter", rope.Diameter), Length("measured", rope.Measured)]);

    private static KeyValuePair<string, JobValue?> Text(string name, string typed) => new(name, string.IsNullOrWhiteSpace(typed) ? null : JobValue.OfText(typed.Trim()));

    private KeyValuePair<string, JobValue?> Length(string name, string typed) => Text(name, TypedLength.WithUnit(typed, _unit));
}
