using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Result;

/// <summary>Writes a takeoff as JSON: as docs/job-file.md describes it, with what people read beside the figures.</summary>
public static class TakeoffJson
{
    private static readonly JsonWriterOptions Readable = new()
    {
        Indented = true,
        NewLine = "\n",
        // The output is a file of its own, never part of a web page, so marks for feet and inches may stand as they are.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Writes the takeoff to a stream in UTF-8. Figures are inches with six decimals.</summary>
    public static void Write(JobTakeoff takeoff, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        using var json = new Utf8JsonWriter(stream, Readable);
        json.WriteStartObject();
        json.WriteString("job", takeoff.Job.Number);
        json.WriteAll("pieces", takeoff.Pieces, WritePiece);
        json.WriteAll("bores", takeoff.Bores, WriteBore);
        json.WriteAll("fixings", takeoff.Fixings, WriteFixing);
        json.WriteAll("warnings", takeoff.Warnings, WriteWarning);
        json.WriteEndObject();
    }

    /// <summary>A kind of rope at a post as the takeoff writes it.</summary>
    public static string Word(AtPostKind kind) => kind switch
    {
        AtPostKind.Stopped => "stopped",
        AtPostKind.Through => "through",
        AtPostKind.Corner => "corner",
        AtPostKind.Knot => "knot",
        AtPostKind.Wrap => "wrap",
        AtPostKind.Join => "join",
        AtPostKind.Beside => "beside",
        AtPostKind.Eye => "eye",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, message: null),
    };

    /// <summary>A screw's purpose as the takeoff writes it.</summary>
    public static string Word(FixingPurpose purpose) => purpose switch
    {
        FixingPurpose.End => "end",
        FixingPurpose.Line => "line",
        FixingPurpose.CornerFirst => "corner-first",
        FixingPurpose.CornerSecond => "corner-second",
        FixingPurpose.Wrap => "wrap",
        FixingPurpose.Join => "join",
        FixingPurpose.Beside => "beside",
        FixingPurpose.Eye => "eye",
        _ => throw new ArgumentOutOfRangeException(nameof(purpose), purpose, message: null),
    };

    /// <summary>A kind of bit as the takeoff writes it.</summary>
    public static string Word(BitKind kind) => kind switch
    {
        BitKind.ThreadedForstner => "threaded Forstner",
        BitKind.Spade => "spade",
        BitKind.HoleSaw => "hole saw",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, message: null),
    };

    private static void WritePiece(Utf8JsonWriter json, Piece piece)
    {
        json.WriteString("run", piece.Run);
        json.WriteString("line", piece.Line);
        json.WriteString("row", piece.Row);
        json.WriteString("from", piece.From.Mark);
        json.WriteString("to", piece.To.Mark);
        json.WriteString("material", piece.Rope.MaterialName);
        WriteInches(json, "diameterIn", piece.Rope.Diameter);
        WriteInches(json, "netIn", piece.Net);
        WriteInches(json, "cutIn", piece.Cut);
        json.WriteString("cut", LengthText.FeetInches(piece.Cut));
        json.WriteString("cutMm", LengthText.Millimetres(piece.Cut));
        WriteInches(json, "trimIn", piece.Trim);
        json.WriteBoolean("setOut", piece.IsSetOut);
        WriteNumber(json, "weightLb", piece.WeightLb);
        json.WriteAll("sections", piece.Sections, WriteSection);
        json.WriteAll("atPosts", piece.AtPosts, WriteAtPost);
    }

    private static void WriteSection(Utf8JsonWriter json, PieceSection section)
    {
        json.WriteString("from", section.From.Mark);
        json.WriteString("to", section.To.Mark);
        WriteInches(json, "chordIn", section.Chord);
        WriteInches(json, "sagIn", section.Sag);
        WriteInches(json, "slackIn", section.Slack);
        WriteInches(json, "arcIn", section.Arc);
        WriteInches(json, "midHeightIn", section.MidHeight);
        WriteNumber(json, "tautShare", section.TautShare);
        WriteInches(json, "drySagIn", section.DrySag);
        WriteNumber(json, "pullLb", section.PullLb);
    }

    private static void WriteAtPost(Utf8JsonWriter json, AtPost at)
    {
        json.WriteString("post", at.Post.Mark);
        json.WriteString("kind", Word(at.Kind));
        if (at.Kind == AtPostKind.Wrap)
            WriteNumber(json, "turns", (double)at.Treatment.Turns);
        WriteInches(json, "lengthIn", at.Length);
    }

    private static void WriteBore(Utf8JsonWriter json, Bore bore)
    {
        json.WriteString("post", bore.Post.Mark);
        json.WriteString("row", bore.Row);
        json.WriteString("run", bore.Run);
        json.WriteString("kind", Word(bore.Kind));
        WriteInches(json, "bitWantedIn", bore.IsExisting ? null : bore.Wanted);
        WriteInches(json, "bitIn", bore.IsExisting ? null : bore.Bit);
        json.WriteString("bit", bore.IsExisting ? null : LengthText.Inches(bore.Bit));
        json.WriteString("bitKind", bore.IsExisting ? null : Word(bore.BitChoice.Kind));
        json.WriteString("bitReason", bore.IsExisting ? null : bore.BitChoice.ReasonFor(bore.Bit).ToString());
        json.WriteBoolean("existing", bore.IsExisting);
        json.WriteString("bored", bore.BoredBy == BoredBy.Shop ? "shop" : "site");
        json.WriteBoolean("level", bore.IsLevel);
        WriteInches(json, "heightIn", bore.Height);
        WriteInches(json, "wallIn", bore.Wall);
        WriteNumber(json, "rakeDegrees", bore.RakeDegrees);
        WriteNumber(json, "skewDegrees", bore.SkewDegrees);
        WriteNumber(json, "kinkDegrees", bore.KinkDegrees);
        json.WriteAll("operations", bore.Operations, WriteOperation);
    }

    private static void WriteOperation(Utf8JsonWriter json, BoreOperation operation)
    {
        json.WriteString("face", operation.Face.ToString());
        WriteInches(json, "depthIn", operation.Depth);
    }

    private static void WriteFixing(Utf8JsonWriter json, Fixing fixing)
    {
        json.WriteString("post", fixing.Post.Mark);
        json.WriteString("row", fixing.Row);
        json.WriteString("run", fixing.Run);
        json.WriteString("purpose", Word(fixing.Purpose));
        json.WriteString("screw", fixing.Screw?.ToString());
        WriteInches(json, "lengthIn", fixing.Length);
        json.WriteNumber("count", fixing.Count);
        json.WriteString("face", fixing.Face.ToString());
        WriteInches(json, "heightIn", fixing.Height);
        WriteInches(json, "markIn", fixing.Mark);
        WriteNumber(json, "rakeDegrees", fixing.RakeDegrees);
        WriteInches(json, "pilotIn", fixing.Pilot);
        WriteInches(json, "shankHoleIn", fixing.ShankHole);
        WriteInches(json, "counterboreIn", fixing.Counterbore);
        WriteInches(json, "counterboreDepthIn", fixing.CounterboreDepth);
    }

    private static void WriteWarning(Utf8JsonWriter json, Warning warning)
    {
        json.WriteString("code", warning.Code);
        json.WriteString("where", warning.Where);
        json.WriteString("path", warning.Path);
        json.WriteString("text", warning.Text);
    }

    private static void WriteInches(Utf8JsonWriter json, string name, Length? length) => WriteNumber(json, name, length?.Inches);

    private static void WriteNumber(Utf8JsonWriter json, string name, double? number)
    {
        json.WritePropertyName(name);
        if (number is { } value)
            json.WriteRawValue(value.ToString("F6", CultureInfo.InvariantCulture));
        else
            json.WriteNullValue();
    }
}
