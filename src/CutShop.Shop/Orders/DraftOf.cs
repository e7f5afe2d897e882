using CutShop.Takeoff.Intake;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Orders;

/// <summary>Drafts made from a stored job.</summary>
public static class DraftOf
{
    /// <summary>The draft that reads back as the job, or null where the job is too large for a form, or has what a form cannot say.</summary>
    public static DraftForm? Job(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (job.Posts.Count() > DraftForm.MostPosts)
            return null;
        var form = Form(job);
        var back = JobReader.Read(DraftSource.Of(form), TypedLength.UnitOf(form.Unit)).Job;
        return back is not null && JobFileWriter.Write(back with { Customer = job.Customer }) == JobFileWriter.Write(job) ? form : null;
    }

    private static DraftForm Form(Job job) => new()
    {
        Number = job.Number,
        Customer = job.Customer,
        Due = job.Due is { } due ? IsoDate.Text(due) : "",
        Unit = "in",
        OneLot = job.OneLot ? "yes" : "",
        Datum = job.Datum switch
        {
            Datum.Top => "top",
            Datum.Foot => "foot",
            _ => "",
        },
        Rope = Rope(job.Rope),
        Allowances = new()
        {
            Shrink = job.Allowances.Shrink.ToString(),
            PerPiece = Said(job.Allowances.PerPiece),
            RoundUp = Said(job.Allowances.RoundUp),
        },
        Lines = [.. job.Lines.Select(Line)],
    };

    private static DraftLine Line(Line line) => new()
    {
        Mark = line.Mark,
        Posts = [.. line.Posts.Select(post => new DraftPost
        {
            Mark = post.Mark,
            Shape = post.Shape == PostShape.Square ? "square" : "round",
            Across = Said(post.Across),
            Height = Said(post.Height),
            Turn = post.Turn?.ToString() ?? "",
            Buried = post.Buried is { } buried ? Said(buried) : "",
        })],
        Sections = [.. line.Sections.Select(section => new DraftSection
        {
            Spacing = section.Spacing == SpacingKind.Clear ? "clear" : "centres",
            Width = Said(section.Width),
            Rise = section.Rise == Length.Zero ? "" : Said(section.Rise),
            Sag = Hang(section.Hang, HangKind.Sag),
            Slack = Hang(section.Hang, HangKind.Slack),
        })],
        Rows = [.. line.Rows.Select(row => Row(line, row))],
    };

    private static DraftRow Row(Line line, Row row)
    {
        var middle = row.Treatments.Skip(1).SkipLast(1).ToList();
        var between = middle.Count > 0 ? middle[0] : Treatment.Bored;
        return new()
        {
            Mark = row.Mark,
            Height = Said(row.Height),
            Sag = Hang(row.Hang, HangKind.Sag),
            Slack = Hang(row.Hang, HangKind.Slack),
            Start = row.Treatments[0].ToString(),
            Finish = row.Treatments[^1].ToString(),
            Between = between.ToString(),
            At = string.Join(", ", middle.Index().Where(pair => pair.Item != between).Select(pair => $"{line.Posts[pair.Index + 1].Mark}: {pair.Item}")),
            Rope = row.Rope is { } rope ? Rope(rope) : new(),
        };
    }

    private static DraftRope Rope(Rope rope) => new()
    {
        Material = rope.MaterialName,
        Diameter = Said(rope.Diameter),
        Measured = rope.Measured is { } measured ? Said(measured) : "",
    };

    private static string Hang(Hang? hang, HangKind kind) => hang is { } given && given.Kind == kind ? Said(given.Amount) : "";

    private static string Said(Length length) => length.IsWhole(Length.FromSixtyFourths(1)) ? LengthText.Inches(length) : length.ToString();
}
