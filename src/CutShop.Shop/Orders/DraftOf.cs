using System.Globalization;
using CutShop.Takeoff.Intake;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Orders;

/// <summary>Drafts made from a stored job.</summary>
public static class DraftOf
{
    /// <summary>The draft that reads back as the job.</summary>
    public static DraftForm Job(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return new()
        {
            Number = job.Number,
            Customer = job.Customer,
            Due = job.Due is { } due ? IsoDate.Text(due) : "",
            Unit = "in",
            OneLot = job.OneLot ? "yes" : "",
            Datum = job.Datum == Datum.Ground ? "" : JobWord.Of(job.Datum),
            Bore = job.Bore == BoreSlope.Raked ? "" : JobWord.Of(job.Bore),
            Boring = job.Boring == BoredBy.Shop ? "" : JobWord.Of(job.Boring),
            Longest = Said(job.Longest),
            Rope = Rope(job.Rope),
            Allowances = new()
            {
                Shrink = job.Allowances.Wetting is null ? job.Allowances.Shrink.ToString() : "",
                Wetting = job.Allowances.Wetting is { } wetting ? new() { Loses = wetting.Loses.ToString(), Manner = JobWord.Of(wetting.Manner) } : new(),
                PerPiece = Said(job.Allowances.PerPiece),
                RoundUp = Said(job.Allowances.RoundUp),
            },
            Lines = [.. job.Lines.Select(Line)],
        };
    }

    private static DraftLine Line(Line line) => new()
    {
        Mark = line.Mark,
        Course = line.IsClosed ? DraftLine.Closed : line.Curve is not null ? DraftLine.OnCurve : "",
        Drop = Said(line.Drop),
        Boring = Word(line.Boring),
        Curve = line.Curve is { } curve ? Curve(curve) : new(),
        Posts = [.. line.Posts.Select(post => Post(post, isOnCurve: line.Curve is not null))],
        Sections = line.Curve is not null ? [] : [.. line.Sections.Select(Section)],
        Rows = [.. line.Rows.Select(row => Row(line, row))],
    };

    private static DraftCurve Curve(Curve curve) => new()
    {
        Radius = Said(curve.Radius),
        Taut = Said(curve.Taut),
        Middle = Said(curve.Middle),
        Chord = Said(curve.Chord),
        Angle = curve.Angle?.ToString(CultureInfo.InvariantCulture) ?? "",
        Turns = JobWord.Of(curve.Turns),
        Rise = Rise(curve.Rise),
        Sag = Hang(curve.Hang, HangKind.Sag),
        Slack = Hang(curve.Hang, HangKind.Slack),
    };

    private static DraftPost Post(Post post, bool isOnCurve) => new()
    {
        Mark = post.Mark,
        Shape = post.Shape == PostShape.Square ? "square" : "round",
        Across = post.Girth is null ? Said(post.Across) : "",
        Girth = Said(post.Girth),
        Height = Said(post.Height),
        Turn = isOnCurve ? "" : post.Turn?.ToString() ?? "",
        Corner = isOnCurve || post.Corner == CornerKind.Ends ? "" : JobWord.Of(post.Corner),
        Buried = Said(post.Buried),
        Boring = Word(post.Boring),
        Holes = MarkedText.Of((post.Holes?.ByRow ?? new Dictionary<string, Hole>()).Select(hole => (hole.Key, MarkedText.OfHole(hole.Value, Said)))),
    };

    private static DraftSection Section(Section section) => new()
    {
        Spacing = section.Spacing == SpacingKind.Clear ? "clear" : "centres",
        Width = Said(section.Width),
        ClearAt = Said(section.ClearAt),
        Rise = Rise(section.Rise),
        Sag = Hang(section.Hang, HangKind.Sag),
        Slack = Hang(section.Hang, HangKind.Slack),
        Drop = Said(section.Drop),
    };

    private static DraftRow Row(Line line, Row row)
    {
        var middle = row.Treatments.Skip(1).SkipLast(1).ToList();
        var between = middle.Count > 0 ? middle[0] : Treatment.Bored;
        return new()
        {
            Mark = row.Mark,
            Height = Said(row.Height),
            Heights = Said(row.Heights),
            Sag = Hang(row.Hang, HangKind.Sag),
            Slack = Hang(row.Hang, HangKind.Slack),
            Start = row.Treatments[0].ToString(),
            StartEye = Eye(row.Treatments[0].Eye),
            Finish = row.Treatments[^1].ToString(),
            FinishEye = Eye(row.Treatments[^1].Eye),
            Between = between.ToString(),
            At = MarkedText.Of(middle.Index().Where(pair => pair.Item != between).Select(pair => (line.Posts[pair.Index + 1].Mark, pair.Item.ToString()))),
            Bore = row.Bore is { } bore ? JobWord.Of(bore) : "",
            Unbroken = row.IsUnbroken ? "yes" : "",
            Rope = row.Rope is { } rope ? Rope(rope) : new(),
        };
    }

    private static DraftEye Eye(Eye? eye) => eye is null ? new() : new()
    {
        Pin = Said(eye.Pin),
        Length = Said(eye.Throat),
        Reach = Said(eye.Reach),
        Tucks = eye.Tucks?.ToString(CultureInfo.InvariantCulture) ?? "",
        Thimble = Said(eye.Thimble),
    };

    private static DraftRope Rope(Rope rope) => new()
    {
        Material = rope.MaterialName,
        Diameter = Said(rope.Diameter),
        Measured = Said(rope.Measured),
        Construction = rope.Construction ?? "",
        Colour = rope.Colour ?? "",
    };

    private static string Word(BoredBy? boring) => boring is { } by ? JobWord.Of(by) : "";

    private static string Hang(Hang? hang, HangKind kind) => hang is { } given && given.Kind == kind ? Said(given.Amount) : "";

    private static string Rise(Length rise) => rise == Length.Zero ? "" : Said(rise);

    private static string Said(IReadOnlyDictionary<string, Length>? byMark) => byMark is null ? "" : MarkedText.Of(byMark.Select(at => (at.Key, Said(at.Value))));

    private static string Said(Length? length) => length is { } given ? Said(given) : "";

    private static string Said(Length length) => length.IsWhole(Length.FromSixtyFourths(1)) ? LengthText.Inches(length) : length.ToString();
}
