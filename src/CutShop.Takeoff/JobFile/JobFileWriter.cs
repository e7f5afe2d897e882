using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.JobFile;

/// <summary>
/// Writes a job as a job file in one plain form: the same job always gives the same text, and reading it back gives the
/// same job.
/// </summary>
public static class JobFileWriter
{
    private static readonly JsonWriterOptions Plain = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The job as JSON text.</summary>
    public static string Write(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Plain))
            WriteJob(json, job);
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    private static void WriteJob(Utf8JsonWriter json, Job job)
    {
        json.WriteStartObject();
        json.WriteString("number", job.Number);
        json.WriteString("customer", job.Customer);
        if (job.Due is { } due)
            json.WriteString("due", IsoDate.Text(due));
        WriteRope(json, job.Rope);
        if (job.OneLot)
            json.WriteBoolean("oneLot", value: true);
        if (job.Datum != Datum.Ground)
            json.WriteString("datum", JobWords.Datums.Of(job.Datum));
        if (job.Bore != BoreSlope.Raked)
            json.WriteString("bore", JobWords.Slopes.Of(job.Bore));
        if (job.Boring != BoredBy.Shop)
            json.WriteString("boring", JobWords.Borers.Of(job.Boring));
        WriteLength(json, "longest", job.Longest);
        json.WriteStartObject("allowances");
        if (job.Allowances.Wetting is null)
            json.WriteString("shrink", job.Allowances.Shrink.ToString());
        json.WriteString("perPiece", job.Allowances.PerPiece.ToString());
        json.WriteString("roundUp", job.Allowances.RoundUp.ToString());
        if (job.Allowances.Wetting is { } wetting)
        {
            json.WriteStartObject("wetting");
            json.WriteString("loses", wetting.Loses.ToString());
            json.WriteString("manner", JobWords.Manners.Of(wetting.Manner));
            json.WriteEndObject();
        }
        json.WriteEndObject();
        json.WriteAll("lines", job.Lines, WriteLine);
        json.WriteEndObject();
    }

    private static void WriteLine(Utf8JsonWriter json, Line line)
    {
        json.WriteString("mark", line.Mark);
        if (line.IsClosed)
            json.WriteBoolean("closed", value: true);
        if (line.Drop is { } drop)
            json.WriteString("drop", drop.ToString());
        if (line.Boring is { } boring)
            json.WriteString("boring", JobWords.Borers.Of(boring));
        json.WriteAll("posts", line.Posts, (writer, post) => WritePost(writer, post, hasCurve: line.Curve is not null));
        if (line.Curve is { } curve)
            WriteCurve(json, curve);
        else
            json.WriteAll("sections", line.Sections, WriteSection);
        json.WriteAll("rows", line.Rows, (writer, row) => WriteRow(writer, line, row));
    }

    private static void WriteCurve(Utf8JsonWriter json, Curve curve)
    {
        json.WriteStartObject("curve");
        WriteLength(json, "radius", curve.Radius);
        WriteLength(json, "string", curve.Taut);
        WriteLength(json, "middle", curve.Middle);
        WriteLength(json, "chord", curve.Chord);
        if (curve.Angle is { } angle)
            json.WriteString("angle", angle.ToString("0.############################", CultureInfo.InvariantCulture));
        json.WriteString("turns", JobWords.Sides.Of(curve.Turns));
        if (curve.Rise != Length.Zero)
            json.WriteString("rise", curve.Rise.ToString());
        WriteHang(json, curve.Hang);
        json.WriteEndObject();
    }

    private static void WritePost(Utf8JsonWriter json, Post post, bool hasCurve)
    {
        json.WriteString("mark", post.Mark);
        json.WriteString("shape", post.Shape == PostShape.Square ? "square" : "round");
        json.WriteString(post.Girth is null ? "across" : "girth", (post.Girth ?? post.Across).ToString());
        json.WriteString("height", post.Height.ToString());
        if (post.Turn is { } turn && !hasCurve)
        {
            json.WriteString("turn", turn.ToString());
            if (post.Corner != CornerKind.Ends)
                json.WriteString("corner", JobWords.Corners.Of(post.Corner));
        }
        if (post.Buried is { } buried)
            json.WriteString("buried", buried.ToString());
        if (post.Boring is { } boring)
            json.WriteString("boring", JobWords.Borers.Of(boring));
        if (post.Holes is not { } holes)
            return;
        json.WriteStartObject("holes");
        foreach (var (row, hole) in holes.ByRow.OrderBy(hole => hole.Key, StringComparer.Ordinal))
        {
            json.WriteStartObject(row);
            WriteLength(json, "height", hole.Height);
            WriteLength(json, "across", hole.Across);
            if (hole.Bore is { } bore)
                json.WriteString("bore", JobWords.Slopes.Of(bore));
            json.WriteEndObject();
        }
        json.WriteEndObject();
    }

    private static void WriteSection(Utf8JsonWriter json, Section section)
    {
        json.WriteString(section.Spacing == SpacingKind.Clear ? "clear" : "centres", section.Width.ToString());
        WriteLengths(json, "clearAt", section.ClearAt);
        if (section.Rise != Length.Zero)
            json.WriteString("rise", section.Rise.ToString());
        WriteHang(json, section.Hang);
        WriteLength(json, "drop", section.Drop);
    }

    private static void WriteRow(Utf8JsonWriter json, Line line, Row row)
    {
        json.WriteString("mark", row.Mark);
        json.WriteString("height", row.Height.ToString());
        WriteLengths(json, "heights", row.Heights);
        WriteHang(json, row.Hang);
        WriteEnd(json, "start", row.Treatments[0]);
        WriteEnd(json, "finish", row.Treatments[^1]);
        var between = row.Treatments.Count > 2 ? row.Treatments[1] : Treatment.Bored;
        json.WriteString("between", between.ToString());
        if (row.Treatments.Skip(1).SkipLast(1).Any(treatment => treatment != between))
        {
            json.WriteStartObject("at");
            for (var i = 1; i < row.Treatments.Count - 1; i++)
            {
                if (row.Treatments[i] != between)
                    json.WriteString(line.Posts[i].Mark, row.Treatments[i].ToString());
            }
            json.WriteEndObject();
        }
        if (row.Bore is { } bore)
            json.WriteString("bore", JobWords.Slopes.Of(bore));
        if (row.IsUnbroken)
            json.WriteBoolean("unbroken", value: true);
        if (row.Rope is { } rope)
            WriteRope(json, rope);
    }

    private static void WriteEnd(Utf8JsonWriter json, string name, Treatment end)
    {
        if (end.Eye is not { } eye)
        {
            json.WriteString(name, end.ToString());
            return;
        }
        json.WriteStartObject(name);
        json.WriteStartObject("eye");
        WriteLength(json, "pin", eye.Pin);
        WriteLength(json, "length", eye.Throat);
        WriteLength(json, "reach", eye.Reach);
        if (eye.Tucks is { } tucks)
            json.WriteString("tucks", tucks.ToString(CultureInfo.InvariantCulture));
        WriteLength(json, "thimble", eye.Thimble);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteLength(Utf8JsonWriter json, string name, Length? length)
    {
        if (length is { } given)
            json.WriteString(name, given.ToString());
    }

    private static void WriteLengths(Utf8JsonWriter json, string name, IReadOnlyDictionary<string, Length>? lengths)
    {
        if (lengths is null)
            return;
        json.WriteStartObject(name);
        foreach (var (mark, length) in lengths.OrderBy(at => at.Key, StringComparer.Ordinal))
            json.WriteString(mark, length.ToString());
        json.WriteEndObject();
    }

    private static void WriteHang(Utf8JsonWriter json, Hang? hang)
    {
        if (hang is { } given)
            json.WriteString(given.Kind == HangKind.Sag ? "sag" : "slack", given.Amount.ToString());
    }

    private static void WriteRope(Utf8JsonWriter json, Rope rope)
    {
        json.WriteStartObject("rope");
        json.WriteString("material", rope.MaterialName);
        json.WriteString("diameter", rope.Diameter.ToString());
        if (rope.Measured is { } measured)
            json.WriteString("measured", measured.ToString());
        if (rope.Construction is { } construction)
            json.WriteString("construction", construction);
        if (rope.Colour is { } colour)
            json.WriteString("colour", colour);
        json.WriteEndObject();
    }
}
