using System.Buffers;
using System.Text.Json;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Orders;

/// <summary>
/// Turns a draft into a job file. It judges nothing: what was typed goes in, with its unit where the draft supplies one,
/// and the job file's own reader says what is wrong. A field left empty is left out.
/// </summary>
internal static class DraftJobFile
{
    /// <summary>About what a post and its section take, so that the room need not be made larger again and again.</summary>
    private const int BytesAPost = 200;

    public static ReadOnlyMemory<byte> Write(DraftForm form)
    {
        var buffer = new ArrayBufferWriter<byte>(BytesAPost * (form.Posts() + 1));
        using (var json = new Utf8JsonWriter(buffer))
            new Writer(json, form.Unit).Write(form);
        return buffer.WrittenMemory;
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

    private sealed class Writer(Utf8JsonWriter json, string unit)
    {
        public void Write(DraftForm form)
        {
            json.WriteStartObject();
            Text("number", form.Number);
            Text("customer", form.Customer);
            Text("due", form.Due);
            Rope(form.Rope);
            if (form.OneLot.Length > 0)
                json.WriteBoolean("oneLot", value: true);
            json.WriteStartObject("allowances");
            Text("shrink", TypedLength.IsBare(form.Allowances.Shrink.Trim()) ? form.Allowances.Shrink.Trim() + "%" : form.Allowances.Shrink);
            Length("perPiece", form.Allowances.PerPiece);
            Length("roundUp", form.Allowances.RoundUp);
            json.WriteEndObject();
            All("lines", form.Lines, Line);
            json.WriteEndObject();
        }

        private void Line(DraftLine line)
        {
            Text("mark", line.Mark);
            All("posts", line.Posts, Post);
            All("sections", line.Sections, Section);
            All("rows", line.Rows, Row);
        }

        private void Post(DraftPost post)
        {
            Text("mark", post.Mark);
            Text("shape", post.Shape);
            Length("across", post.Across);
            Length("height", post.Height);
            Text("turn", post.Turn);
        }

        private void Section(DraftSection section)
        {
            Length(section.Spacing == "centres" ? "centres" : "clear", section.Width);
            Length("rise", section.Rise);
            Length("sag", section.Sag);
            Length("slack", section.Slack);
        }

        private void Row(DraftRow row)
        {
            Text("mark", row.Mark);
            Length("height", row.Height);
            Length("sag", row.Sag);
            Length("slack", row.Slack);
            Text("start", row.Start);
            Text("finish", row.Finish);
            Text("between", row.Between);
            if (!string.IsNullOrWhiteSpace(row.At))
            {
                json.WriteStartObject("at");
                foreach (var (mark, treatment) in Overrides(row.At))
                    json.WriteString(mark, treatment);
                json.WriteEndObject();
            }
            if (!row.Rope.IsEmpty())
                Rope(row.Rope);
        }

        private void Rope(DraftRope rope)
        {
            json.WriteStartObject("rope");
            Text("material", rope.Material);
            Length("diameter", rope.Diameter);
            Length("measured", rope.Measured);
            json.WriteEndObject();
        }

        private void Text(string name, string typed)
        {
            if (!string.IsNullOrWhiteSpace(typed))
                json.WriteString(name, typed.Trim());
        }

        private void Length(string name, string typed) => Text(name, TypedLength.WithUnit(typed, unit));

        private void All<T>(string name, IReadOnlyList<T> all, Action<T> write)
        {
            json.WriteStartArray(name);
            foreach (var one in all)
            {
                json.WriteStartObject();
                write(one);
                json.WriteEndObject();
            }
            json.WriteEndArray();
        }
    }
}
