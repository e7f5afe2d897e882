using CutShop.Takeoff.Intake;
using CutShop.Takeoff.JobFile;

using Named = System.Collections.Generic.KeyValuePair<string, CutShop.Takeoff.Intake.JobValue?>;

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

    /// <summary>
    /// What a form can hold and a job file cannot say: the figures of an eye at an end that has none. They are never passed over, since
    /// somebody who typed them wants an eye.
    /// </summary>
    public static IEnumerable<JobProblem> Contradictions(DraftForm form)
    {
        foreach (var (i, line) in form.Lines.Index())
        {
            foreach (var (r, row) in line.Rows.Index())
            {
                var place = JobPlace.Job["lines"][i]["rows"][r];
                if (!IsEye(row.Start, row.StartEye) && !row.StartEye.IsEmpty())
                    yield return new(place["start"], row.Start, OrderReplies.Of("EyeNotChosen", row.Start.Trim()));
                if (!IsEye(row.Finish, row.FinishEye) && !row.FinishEye.IsEmpty())
                    yield return new(place["finish"], row.Finish, OrderReplies.Of("EyeNotChosen", row.Finish.Trim()));
            }
        }
    }

    /// <summary>The field of the form that a place of the job was read from, or the group or part that holds it.</summary>
    public static JobPlace FieldOf(DraftForm form, JobPlace place) => place switch
    {
        { Outer: "holes" } => place.Above.Above,
        { Group: "at" or "heights" or "clearAt" or "holes" or "start" or "finish" } => place.Above,
        { Group: "allowances", Field: "wetting" } => place["manner"],
        { Field: "clear" or "centres" } => place with { Field = "width" },
        { Part: LinePart.Post, Field: "turn" or "corner", Line: { } line } when form.Lines.ElementAtOrDefault(line)?.Course == DraftLine.OnCurve => new JobPlace(line)["curve"],
        { Field: "lines" or "posts" or "sections" or "rows" or "closed" } => place.Above,
        _ => place,
    };

    /// <summary>The mark of a post or row that a place speaks of, in a field that speaks of many; else null.</summary>
    public static string? MarkIn(JobPlace place) => place switch
    {
        { Outer: "holes" } => place.Group,
        { Group: "at" or "heights" or "clearAt" or "holes" } => place.Field,
        _ => null,
    };

    private static JobValue Job(DraftForm form) => JobValue.OfFields(
        [
            Text("number", form.Number),
            Text("customer", form.Customer),
            Text("due", form.Due),
            new("rope", Rope(form.Rope)),
            Yes("oneLot", form.OneLot),
            Text("datum", form.Datum),
            Text("bore", form.Bore),
            Text("boring", form.Boring),
            Text("longest", form.Longest),
            new("allowances", JobValue.OfFields(
                [
                    Share("shrink", form.Allowances.Shrink),
                    new("wetting", Wetting(form.Allowances.Wetting)),
                    Text("perPiece", form.Allowances.PerPiece),
                    Text("roundUp", form.Allowances.RoundUp),
                ])),
            new("lines", JobValue.OfList(form.Lines, Line)),
        ]);

    private static JobValue? Wetting(DraftWetting wetting) =>
        wetting.Loses.Trim().Length + wetting.Manner.Length == 0 ? null : JobValue.OfFields([Share("loses", wetting.Loses), Text("manner", wetting.Manner)]);

    private static JobValue Line(DraftLine line)
    {
        var isOnCurve = line.Course == DraftLine.OnCurve;
        return JobValue.OfFields(
            [
                Text("mark", line.Mark),
                new("closed", line.Course == DraftLine.Closed ? JobValue.Yes : null),
                Text("drop", line.Drop),
                Text("boring", line.Boring),
                new("posts", JobValue.OfList(line.Posts, Post)),
                new("curve", isOnCurve ? Curve(line.Curve) : null),
                new("sections", isOnCurve ? null : JobValue.OfList(line.Sections, Section)),
                new("rows", JobValue.OfList(line.Rows, Row)),
            ]);
    }

    private static JobValue Curve(DraftCurve curve) => JobValue.OfFields(
        [
            Text("radius", curve.Radius),
            Text("string", curve.Taut),
            Text("middle", curve.Middle),
            Text("chord", curve.Chord),
            Text("angle", curve.Angle),
            Text("turns", curve.Turns),
            Text("rise", curve.Rise),
            Text("sag", curve.Sag),
            Text("slack", curve.Slack),
        ]);

    private static JobValue Post(DraftPost post) => JobValue.OfFields(
        [
            Text("mark", post.Mark),
            Text("shape", post.Shape),
            Text("across", post.Across),
            Text("girth", post.Girth),
            Text("height", post.Height),
            Text("turn", post.Turn),
            Text("corner", post.Corner),
            Text("buried", post.Buried),
            Text("boring", post.Boring),
            new("holes", MarkedText.Values(post.Holes, MarkedText.Hole)),
        ]);

    private static JobValue Section(DraftSection section) => JobValue.OfFields(
        [
            Text(section.Spacing == "centres" ? "centres" : "clear", section.Width),
            new("clearAt", MarkedText.Values(section.ClearAt, JobValue.OfText)),
            Text("rise", section.Rise),
            Text("sag", section.Sag),
            Text("slack", section.Slack),
            Text("drop", section.Drop),
        ]);

    private static JobValue Row(DraftRow row) => JobValue.OfFields(
        [
            Text("mark", row.Mark),
            Text("height", row.Height),
            new("heights", MarkedText.Values(row.Heights, JobValue.OfText)),
            Text("sag", row.Sag),
            Text("slack", row.Slack),
            End("start", row.Start, row.StartEye),
            End("finish", row.Finish, row.FinishEye),
            Text("between", row.Between),
            new("at", MarkedText.Values(row.At, JobValue.OfText)),
            Text("bore", row.Bore),
            Yes("unbroken", row.Unbroken),
            new("rope", row.Rope.IsEmpty() ? null : Rope(row.Rope)),
        ]);

    private static Named End(string name, string typed, DraftEye eye) =>
        IsEye(typed, eye) ? new(name, JobValue.OfFields([new(DraftEye.Word, Eye(eye))])) : Text(name, typed);

    /// <summary>True for an end in an eye, also where its figures are typed and nothing else is said.</summary>
    private static bool IsEye(string typed, DraftEye eye) => typed.Trim() is var word && (word == DraftEye.Word || (word.Length == 0 && !eye.IsEmpty()));

    private static JobValue Eye(DraftEye eye) => JobValue.OfFields(
        [
            Text("pin", eye.Pin),
            Text("length", eye.Length),
            Text("reach", eye.Reach),
            Text("tucks", eye.Tucks),
            Text("thimble", eye.Thimble),
        ]);

    private static JobValue Rope(DraftRope rope) => JobValue.OfFields(
        [
            Text("material", rope.Material),
            Text("diameter", rope.Diameter),
            Text("measured", rope.Measured),
            Text("construction", rope.Construction),
            Text("colour", rope.Colour),
        ]);

    private static Named Yes(string name, string typed) => new(name, typed.Length > 0 ? JobValue.Yes : null);

    /// <summary>A share; a bare number is one in a hundred.</summary>
    private static Named Share(string name, string typed) => Text(name, TypedLength.IsBare(typed.Trim()) ? typed.Trim() + "%" : typed);

    private static Named Text(string name, string typed) => new(name, string.IsNullOrWhiteSpace(typed) ? null : JobValue.OfText(typed.Trim()));
}
