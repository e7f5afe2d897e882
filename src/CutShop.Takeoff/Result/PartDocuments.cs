using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Result;

// The documents as they are written: format 3. Names are lower case with underscores, lengths are whole nanometres in fields that
// end in _nm, and a field whose value is 0, false or nothing is left out. What repeats is written once and meant by its index.
internal sealed record RopeDocument(string Material, Length DiameterNm, Length? MeasuredNm, string? Construction, string? Colour)
{
    public static RopeDocument Of(Rope rope) => new(PartCodes.Material.Of(rope.Material), rope.Diameter, rope.Measured, rope.Construction, rope.Colour);

    public Rope ToRope() => new(PartCodes.Material.Read(Material), DiameterNm, MeasuredNm) { Construction = Construction, Colour = Colour };
}

internal sealed record SizeDocument(string Shape, Length AcrossNm, Length HeightNm, Length? BuriedNm)
{
    public static SizeDocument Of(Post post) => new(PartCodes.Shape.Of(post.Shape), post.Across, post.Height, post.Buried);

    public Post ToPost(string mark, string? turn)
    {
        var (read, corner) = TurnDocument.Read(turn);
        return new(mark, PartCodes.Shape.Read(Shape), AcrossNm, HeightNm, read, BuriedNm) { Corner = corner };
    }
}

/// <summary>Where heights are measured from, as text: nothing means the ground, as in every part older than that choice.</summary>
internal static class DatumDocument
{
    public static string? Of(Datum datum) => datum == Datum.Ground ? null : PartCodes.Datum.Of(datum);

    public static Datum Read(string? text) => text is null ? Datum.Ground : PartCodes.Datum.Read(text);
}

/// <summary>A turn as text: its degrees, a space and its side; where a straight bore goes through the corner, a space and <c>through</c>.</summary>
internal static class TurnDocument
{
    private const string Through = "through";

    public static string? Of(Post post) => post.Turn is { } given
        ? string.Create(CultureInfo.InvariantCulture, $"{given.Degrees} {PartCodes.Side.Of(given.Side)}{(post.Corner == CornerKind.Through ? " " + Through : "")}")
        : null;

    public static (Turn? Turn, CornerKind Corner) Read(string? text)
    {
        if (text is null)
            return (null, CornerKind.Ends);
        var words = text.Split(' ');
        return words is [_, _] or [_, _, Through] && decimal.TryParse(words[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var degrees)
            ? (new(degrees, PartCodes.Side.Read(words[1])), words.Length == 3 ? CornerKind.Through : CornerKind.Ends)
            : throw new InvalidDataException($"\"{text}\" is not a turn such as 90 left.");
    }
}

internal sealed record EyeDocument(Length PinNm, Length ThroatNm, Length ReachNm, int? Tucks, Length? ThimbleNm)
{
    public static EyeDocument? Of(Treatment treatment) =>
        treatment.Eye is { } eye ? new(eye.Pin, eye.Throat, eye.Reach, eye.Tucks, eye.Thimble) : null;

    public Eye ToEye() => new(PinNm, ThroatNm, ReachNm, Tucks, ThimbleNm);
}

internal sealed record TreatmentDocument(string Kind, int HalfTurns, bool Inside, EyeDocument? Eye)
{
    public static TreatmentDocument Of(Treatment treatment) =>
        new(PartCodes.Treatment.Of(treatment.Kind), treatment.HalfTurns, treatment.Side == WrapSide.Inside, EyeDocument.Of(treatment));

    public Treatment ToTreatment() => new(PartCodes.Treatment.Read(Kind), HalfTurns, Inside ? WrapSide.Inside : WrapSide.Outside, Eye?.ToEye());
}

/// <summary>A screw and its holes; the screw's kind and size are left out where none fits, and its length is what one would need then.</summary>
internal sealed record ScrewDocument(
    string? Kind, string? Size, Length LengthNm, Length PilotNm, Length ShankHoleNm, Length CounterboreNm, Length CounterboreDepthNm)
{
    public static ScrewDocument Of(DrivenScrews driven) => new(
        driven.Screw is { } screw ? PartCodes.Screw.Of(screw.Kind) : null,
        driven.Screw?.Size,
        driven.Length,
        driven.Pilot,
        driven.ShankHole,
        driven.Counterbore,
        driven.CounterboreDepth);

    public DrivenScrews ToDriven(FixingPurpose purpose, int count) => new(
        purpose,
        Kind is null ? null : new(PartCodes.Screw.Read(Kind), Size!, LengthNm),
        count,
        LengthNm,
        PilotNm,
        ShankHoleNm,
        CounterboreNm,
        CounterboreDepthNm);
}

/// <summary>
/// Screws as they go in: what for, which of the screws, how many where there is more than one, the face as <c>toward:A2</c>, and heights where
/// they differ from the row's and from each other.
/// </summary>
internal sealed record ScrewsDocument(string For, int Screw, int? Count, string Face, Length? HeightNm, Length? MarkNm, double RakeDegrees)
{
    public static ScrewsDocument Of(Fixing fixing, Repeated<ScrewDocument> screws) => new(
        PartCodes.Purpose.Of(fixing.Purpose),
        screws.IndexOf(ScrewDocument.Of(fixing.Driven)),
        fixing.Count == 1 ? null : fixing.Count,
        FaceDocument.Of(fixing.Face),
        Differing(fixing.Height, fixing.RowHeight),
        Differing(fixing.Mark, fixing.Height),
        fixing.RakeDegrees);

    public Fixing ToFixing(Post post, string row, Length rowHeight, string run, IReadOnlyList<ScrewDocument> screws)
    {
        var height = HeightNm ?? rowHeight;
        var driven = screws[Screw].ToDriven(PartCodes.Purpose.Read(For), Count ?? 1);
        return new(post, row, rowHeight, run, driven, FaceDocument.Read(Face), height, MarkNm ?? height) { RakeDegrees = RakeDegrees };
    }

    private static Length? Differing(Length length, Length from) => length == from ? null : length;
}

/// <summary>A face as text: how it lies, a colon, and the neighbour's mark.</summary>
internal static class FaceDocument
{
    public static string Of(Face face) => $"{PartCodes.Sight.Of(face.Sight)}:{face.Neighbour}";

    public static Face Read(string text)
    {
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        return colon < 0
            ? throw new InvalidDataException($"\"{text}\" is not a face such as toward:A2.")
            : new(PartCodes.Sight.Read(text[..colon]), text[(colon + 1)..]);
    }
}

internal sealed record SpanDocument(
    Length LevelNm,
    Length? ClearNm,
    Length GroundRiseNm,
    Length RiseNm,
    Length? ChordNm,
    Length SagNm,
    Length ArcNm,
    double? ParameterIn,
    double? PullLb,
    Length? MidHeightNm,
    double? TautShare,
    Length? DrySagNm,
    Length? ClimbNm)
{
    public static SpanDocument Of(PieceSection section) => new(
        section.Level,
        section.Clear == section.Level ? null : section.Clear,
        section.GroundRise,
        section.Rise,
        section.Chord == section.Level ? null : section.Chord,
        section.Sag,
        section.Arc,
        section.ParameterIn,
        section.PullLb,
        section.MidHeight,
        section.TautShare,
        section.DrySag,
        section.Climb == section.GroundRise ? null : section.Climb);

    public PieceSection ToSection(Post from, Post to) =>
        new(from, to, ClearNm ?? LevelNm, GroundRiseNm, LevelNm, RiseNm, ChordNm ?? LevelNm, SagNm, ArcNm, ParameterIn, PullLb)
        {
            MidHeight = MidHeightNm,
            TautShare = TautShare,
            DrySag = DrySagNm,
            Climb = ClimbNm ?? GroundRiseNm,
        };
}

internal sealed record AtPostDocument(
    string Post, int Size, string? Turn, string Kind, int HalfTurns, bool Inside, EyeDocument? Eye, Length LengthNm, Length? HeightNm, ScrewsDocument? Screws);

/// <summary>A piece; natural rope of which no manner is said is hung as trimmed, as all was before there was another.</summary>
internal sealed record PieceDocument(
    string Run,
    string Line,
    string Row,
    Length HeightNm,
    RopeDocument Rope,
    int First,
    Length NetNm,
    Length CutNm,
    Length TrimNm,
    bool SetOut,
    double? WeightLb,
    IReadOnlyList<SizeDocument> Sizes,
    IReadOnlyList<SpanDocument> Spans,
    IReadOnlyList<ScrewDocument>? Screws,
    IReadOnlyList<int>? Sections,
    IReadOnlyList<AtPostDocument> Posts,
    bool AsMeasured = false,
    string? Manner = null);

/// <summary>A drilling: its face, its depth, how far its mark on the face is above the bore's height at the post's middle, and the collar where it is not the depth.</summary>
internal sealed record DrillingDocument(string Face, Length DepthNm, Length AboveNm, Length? CollarNm)
{
    public static DrillingDocument Of(BoreOperation operation, Length height) => new(
        FaceDocument.Of(operation.Face),
        operation.Depth,
        operation.Mark - height,
        operation.Collar == operation.Depth ? null : operation.Collar);

    public BoreOperation ToOperation(Length height) => new(FaceDocument.Read(Face), DepthNm, height + AboveNm, CollarNm ?? DepthNm);
}

/// <summary>A bore but for its height and its run; those of a post that are alike are written once. The bit wanted is left out where it is the bit.</summary>
internal sealed record BoreDocument(
    string Kind,
    RopeDocument Rope,
    Length BitNm,
    Length? WantedNm,
    string Bit,
    bool NotOnRack,
    bool Existing,
    bool OnSite,
    bool Level,
    Length WallNm,
    double RakeDegrees,
    double SkewDegrees,
    double KinkDegrees,
    IReadOnlyList<DrillingDocument> Drillings)
{
    public bool Equals(BoreDocument? other) => other is not null && Same(other) && Drillings.SequenceEqual(other.Drillings);

    public override int GetHashCode() => HashCode.Combine(Kind, BitNm, RakeDegrees, Drillings.Count);

    private bool Same(BoreDocument other) =>
        (Kind, Rope, BitNm, WantedNm, Bit, NotOnRack, Existing) == (other.Kind, other.Rope, other.BitNm, other.WantedNm, other.Bit, other.NotOnRack, other.Existing)
        && (OnSite, Level, WallNm, RakeDegrees, SkewDegrees, KinkDegrees) == (other.OnSite, other.Level, other.WallNm, other.RakeDegrees, other.SkewDegrees, other.KinkDegrees);
}

internal sealed record RunAtPostDocument(string Row, string Run, Length HeightNm, int? Bore, ScrewsDocument? Screws);

/// <summary>A warning with its number among the job's; it concerns the post in whose document it is, or none.</summary>
internal sealed record WarningDocument(int Number, string Code, string Where, string Path, Sentence Text)
{
    public static IReadOnlyList<WarningDocument>? AnyOrNull(IReadOnlyList<Warning> warnings) => warnings.Count == 0
        ? null
        : [.. warnings.Select(warning => new WarningDocument(warning.Number, warning.Code, warning.Where, warning.Path, warning.Says))];

    public Warning ToWarning(string? post) => new(Code, Where, Path, Text, Number, post);
}

internal sealed record PostDocument(
    string Post,
    string Line,
    string? Before,
    string? After,
    SizeDocument Size,
    string? Turn,
    string? Datum,
    IReadOnlyList<BoreDocument>? Bores,
    IReadOnlyList<ScrewDocument>? Screws,
    IReadOnlyList<RunAtPostDocument> Runs,
    IReadOnlyList<WarningDocument>? Warnings);

internal sealed record LooseDocument(Length? SagNm, Length? SlackNm)
{
    public static LooseDocument? Of(Hang? hang) => hang switch
    {
        null => null,
        { Kind: HangKind.Sag } sag => new(sag.Amount, SlackNm: null),
        { } slack => new(SagNm: null, slack.Amount),
    };

    public Hang ToHang() => SagNm is { } sag ? new(HangKind.Sag, sag)
        : SlackNm is { } slack ? new(HangKind.Slack, slack)
        : throw new InvalidDataException("A rope hangs by a sag or a slack.");
}

internal sealed record SectionDocument(string Spacing, Length WidthNm, Length RiseNm, LooseDocument? Hang, Length? DropNm)
{
    public static SectionDocument Of(Section section, Length? drop) =>
        new(PartCodes.Spacing.Of(section.Spacing), section.Width, section.Rise, LooseDocument.Of(section.Hang), section.Drop ?? drop);

    public Section ToSection() => new(PartCodes.Spacing.Read(Spacing), WidthNm, RiseNm, Hang?.ToHang()) { Drop = DropNm };
}

/// <summary>A length that is the row's at one post.</summary>
internal sealed record HeightAtDocument(string Post, Length HeightNm);

internal sealed record CurveDocument(Length? RadiusNm, Length? StringNm, Length? MiddleNm, Length? ChordNm, string? Angle, string Turns, Length RiseNm, LooseDocument? Hang)
{
    public static CurveDocument? Of(Curve? curve) => curve is null ? null : new(
        curve.Radius,
        curve.Taut,
        curve.Middle,
        curve.Chord,
        curve.Angle?.ToString(CultureInfo.InvariantCulture),
        PartCodes.Side.Of(curve.Turns),
        curve.Rise,
        LooseDocument.Of(curve.Hang));

    public Curve ToCurve() => new(
        RadiusNm,
        StringNm,
        MiddleNm,
        ChordNm,
        Angle is null ? null : decimal.TryParse(Angle, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var angle) ? angle : throw new InvalidDataException($"\"{Angle}\" is not an angle."),
        PartCodes.Side.Read(Turns),
        RiseNm,
        Hang?.ToHang());
}

internal sealed record TurnAtDocument(int Post, string Turn);

internal sealed record RowDocument(
    string Mark,
    Length HeightNm,
    IReadOnlyList<HeightAtDocument>? Heights,
    LooseDocument? Hang,
    RopeDocument? Rope,
    IReadOnlyList<TreatmentDocument> Treatments,
    IReadOnlyList<int>? At);

internal sealed record LineDocument(
    string Mark,
    IReadOnlyList<string> Posts,
    IReadOnlyList<SizeDocument> Sizes,
    IReadOnlyList<int>? PostSizes,
    bool Closed,
    CurveDocument? Curve,
    IReadOnlyList<TurnAtDocument>? Turns,
    IReadOnlyList<SectionDocument> Spacings,
    IReadOnlyList<int>? Sections,
    IReadOnlyList<RowDocument> Rows);

internal sealed record TotalsDocument(int Pieces, int Bores, int Screws, Length CutNm);

internal sealed record FrameDocument(
    RopeDocument Rope,
    int ShrinkMillionths,
    int LosesMillionths,
    string? Wetting,
    Length? LongestNm,
    Length PerPieceNm,
    Length RoundUpNm,
    string? Datum,
    IReadOnlyList<LineDocument> Lines,
    IReadOnlyList<WarningDocument>? Warnings,
    TotalsDocument Totals);

/// <summary>All parts of a job together, with what it is called by.</summary>
internal sealed record TakeoffDocument(
    string Number,
    string Customer,
    string? Due,
    bool OneLot,
    FrameDocument Frame,
    IReadOnlyList<PieceDocument> Pieces,
    IReadOnlyList<PostDocument> Posts);

/// <summary>A length in a document: whole nanometres.</summary>
internal sealed class LengthInDocument : JsonConverter<Length>
{
    public override Length Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Length.FromNanometres(reader.GetInt64());

    public override void Write(Utf8JsonWriter writer, Length value, JsonSerializerOptions options) => writer.WriteNumberValue(value.Nanometres);
}

/// <summary>A sentence in a document: its key and its values, each a text or a sentence. Format 1 has the English text in its place.</summary>
internal sealed class SentenceInDocument : JsonConverter<Sentence>
{
    public override Sentence Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType == JsonTokenType.String)
            return Sentence.Plain(reader.GetString()!);
        var values = new List<object?>();
        if (reader.TokenType != JsonTokenType.StartArray)
            throw new JsonException();
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
            values.Add(reader.TokenType == JsonTokenType.StartArray ? Read(ref reader, typeToConvert, options) : reader.GetString());
        return values is [string key, ..] ? TakeoffWords.Of(key, values[1..]) : throw new JsonException();
    }

    public override void Write(Utf8JsonWriter writer, Sentence value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        writer.WriteStringValue(value.Key);
        foreach (var one in value.Values)
        {
            if (one is Sentence sentence)
                Write(writer, sentence, options);
            else
                writer.WriteStringValue(Convert.ToString(one, CultureInfo.InvariantCulture));
        }
        writer.WriteEndArray();
    }
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingDefault,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    RespectNullableAnnotations = true,
    Converters = [typeof(LengthInDocument), typeof(SentenceInDocument)])]
[JsonSerializable(typeof(PieceDocument))]
[JsonSerializable(typeof(PostDocument))]
[JsonSerializable(typeof(FrameDocument))]
[JsonSerializable(typeof(TakeoffDocument))]
[JsonSerializable(typeof(IReadOnlyList<OldBore>))]
internal sealed partial class PartJson : JsonSerializerContext;
