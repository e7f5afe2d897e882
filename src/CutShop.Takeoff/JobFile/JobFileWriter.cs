using System.Buffers;
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

    /// <summary>
    /// Whether a text that this or an older program wrote is of this very job: by what it means, so that a field which is newer than the
    /// text, with its default, makes no other job of it.
    /// </summary>
    public static bool IsOf(string text, Job job)
    {
        ArgumentNullException.ThrowIfNull(text);
        var written = Write(job);
        return text == written || (JobFileReader.Find(text) is { } stored && Write(stored) == written);
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
            json.WriteString("datum", JobWords.Datums.WordFor(job.Datum));
        json.WriteStartObject("allowances");
        json.WriteString("shrink", job.Allowances.Shrink.ToString());
        json.WriteString("perPiece", job.Allowances.PerPiece.ToString());
        json.WriteString("roundUp", job.Allowances.RoundUp.ToString());
        json.WriteEndObject();
        json.WriteAll("lines", job.Lines, WriteLine);
        json.WriteEndObject();
    }

    private static void WriteLine(Utf8JsonWriter json, Line line)
    {
        json.WriteString("mark", line.Mark);
        json.WriteAll("posts", line.Posts, WritePost);
        json.WriteAll("sections", line.Sections, WriteSection);
        json.WriteAll("rows", line.Rows, (writer, row) => WriteRow(writer, line, row));
    }

    private static void WritePost(Utf8JsonWriter json, Post post)
    {
        json.WriteString("mark", post.Mark);
        json.WriteString("shape", post.Shape == PostShape.Square ? "square" : "round");
        json.WriteString("across", post.Across.ToString());
        json.WriteString("height", post.Height.ToString());
        if (post.Turn is { } turn)
            json.WriteString("turn", turn.ToString());
        if (post.Buried is { } buried)
            json.WriteString("buried", buried.ToString());
    }

    private static void WriteSection(Utf8JsonWriter json, Section section)
    {
        json.WriteString(section.Spacing == SpacingKind.Clear ? "clear" : "centres", section.Width.ToString());
        if (section.Rise != Length.Zero)
            json.WriteString("rise", section.Rise.ToString());
        WriteHang(json, section.Hang);
    }

    private static void WriteRow(Utf8JsonWriter json, Line line, Row row)
    {
        json.WriteString("mark", row.Mark);
        json.WriteString("height", row.Height.ToString());
        WriteHang(json, row.Hang);
        json.WriteString("start", row.Treatments[0].ToString());
        json.WriteString("finish", row.Treatments[^1].ToString());
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
        if (row.Rope is { } rope)
            WriteRope(json, rope);
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
        json.WriteEndObject();
    }
}
