using System.Globalization;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.JobFile;

/// <summary>The words of a job file, each read in one place: treatments, turns, marks, materials, shapes.</summary>
internal static class JobWords
{
    public static readonly Sentence AcceptedText = JobFileWords.Of("AText");
    public static readonly Sentence AcceptedDate = JobFileWords.Of("ADate");
    public static readonly Sentence AcceptedTurn = JobFileWords.Of("ATurn");
    public static readonly Sentence AcceptedMark = JobFileWords.Of("AMark");
    public static readonly Sentence AcceptedNumber = JobFileWords.Of("ANumber");
    public static readonly Sentence AcceptedWrap = JobFileWords.Of("AWrap");
    public static readonly Sentence AcceptedAtEnd = JobFileWords.Of("AnEnd", AcceptedWrap);
    public static readonly Sentence AcceptedBetween = JobFileWords.Of("Between", AcceptedWrap);
    public static readonly Sentence AcceptedAngle = JobFileWords.Of("AnAngle");
    public static readonly Sentence AcceptedTucks = JobFileWords.Of("SomeTucks", Eye.MostTucks);
    private const int LongestMark = 40;
    private const int LongestWords = 32;

    public static WordChoice<PostShape> Shapes { get; } = new(new Dictionary<string, PostShape>
    {
        ["square"] = PostShape.Square,
        ["round"] = PostShape.Round,
    });

    public static WordChoice<CornerKind> Corners { get; } = new(new Dictionary<string, CornerKind>
    {
        ["ends"] = CornerKind.Ends,
        ["through"] = CornerKind.Through,
    });

    public static WordChoice<BoreSlope> Slopes { get; } = new(new Dictionary<string, BoreSlope>
    {
        ["raked"] = BoreSlope.Raked,
        ["level"] = BoreSlope.Level,
    });

    public static WordChoice<BoredBy> Borers { get; } = new(new Dictionary<string, BoredBy>
    {
        ["shop"] = BoredBy.Shop,
        ["site"] = BoredBy.Site,
    });

    public static WordChoice<TurnSide> Sides { get; } = new(new Dictionary<string, TurnSide>
    {
        ["left"] = TurnSide.Left,
        ["right"] = TurnSide.Right,
    });

    public static WordChoice<WettingManner> Manners { get; } = new(new Dictionary<string, WettingManner>
    {
        ["preshrunk"] = WettingManner.Preshrunk,
        ["trimmed"] = WettingManner.Trimmed,
        ["hung-long"] = WettingManner.HungLong,
    });

    public static WordChoice<Datum> Datums { get; } = new(new Dictionary<string, Datum>
    {
        ["top"] = Datum.Top,
        ["ground"] = Datum.Ground,
        ["foot"] = Datum.Foot,
    });

    public static WordChoice<RopeMaterial> Materials { get; } = new(Rope.Materials);

    public static Parsed<Turn> ParseTurn(string text)
    {
        if (Words(text) is [var number, ("left" or "right") and var side]
            && decimal.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var degrees)
            && degrees is > 0 and < 180)
            return Parsed.Good(new Turn(degrees, side == "left" ? TurnSide.Left : TurnSide.Right));
        return Bad<Turn>(AcceptedTurn);
    }

    /// <summary>What a row does at its first or last post.</summary>
    public static Parsed<Treatment> ParseAtEnd(string text) => ParseTreatment(text) switch
    {
        { Kind: TreatmentKind.Bored or TreatmentKind.Beside } => Parsed.Bad<Treatment>(JobFileWords.Of("CannotEndSo", AcceptedAtEnd)),
        { } treatment => Parsed.Good(treatment),
        null => Bad<Treatment>(AcceptedAtEnd),
    };

    /// <summary>What a row does at a post between.</summary>
    public static Parsed<Treatment> ParseBetween(string text) => ParseTreatment(text) switch
    {
        { Kind: TreatmentKind.Bored or TreatmentKind.Wrap or TreatmentKind.Beside } treatment => Parsed.Good(treatment),
        { } => Parsed.Bad<Treatment>(JobFileWords.Of("CannotEndBetween", AcceptedBetween)),
        null => Bad<Treatment>(AcceptedBetween),
    };

    /// <summary>The angle of a whole arc in degrees.</summary>
    public static Parsed<decimal> ParseAngle(string text) =>
        text.Length <= LongestWords && decimal.TryParse(text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var degrees) && degrees is > 0 and < 360
            ? Parsed.Good(degrees)
            : Bad<decimal>(AcceptedAngle);

    /// <summary>Full tucks of a splice.</summary>
    public static Parsed<int> ParseTucks(string text) =>
        int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var tucks) && tucks is > 0 and <= Eye.MostTucks
            ? Parsed.Good(tucks)
            : Bad<int>(AcceptedTucks);

    public static Parsed<DateOnly> ParseDate(string text) =>
        IsoDate.Find(text) is { } date ? Parsed.Good(date) : Parsed.Bad<DateOnly>(JobFileWords.Of("ADateSuchAs"));

    public static bool IsMark(string mark) =>
        mark.Length is > 0 and <= LongestMark && !OneLine.BreaksAnywhere(mark) && !char.IsWhiteSpace(mark[0]) && !char.IsWhiteSpace(mark[^1]);

    /// <summary>Whether a text can be a job's number. It names files and addresses, so it has no slashes.</summary>
    public static bool IsNumber(string number) =>
        IsMark(number) && !number.Contains('/') && !number.Contains('\\') && number is not ("." or "..");

    private static Treatment? ParseTreatment(string text) => Words(text) switch
    {
        ["bored"] => Treatment.Bored,
        ["stopped"] => Treatment.Stopped,
        ["knot"] => Treatment.Knot,
        ["beside"] => Treatment.Beside,
        ["wrap", var turns] => ParseWrap(turns, WrapSide.Outside),
        ["wrap", var turns, "outside"] => ParseWrap(turns, WrapSide.Outside),
        ["wrap", var turns, "inside"] => ParseWrap(turns, WrapSide.Inside),
        _ => null,
    };

    private static Treatment? ParseWrap(string turns, WrapSide side) =>
        decimal.TryParse(turns, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
        && number is > 0 and <= Treatment.MostTurns && number * 2 == decimal.Truncate(number * 2)
            ? Treatment.Wrap((int)(number * 2), side)
            : null;

    private static string[] Words(string text) => text.Length > LongestWords ? [] : text.Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private static Parsed<T> Bad<T>(Sentence accepted) => Parsed.Bad<T>(JobFileWords.Of("Accepted", accepted));
}

/// <summary>The words that a field may be.</summary>
/// <param name="Values">What each word means.</param>
internal sealed record WordChoice<T>(IReadOnlyDictionary<string, T> Values)
    where T : struct
{
    private readonly Dictionary<string, T>.AlternateLookup<ReadOnlySpan<char>> _values = new Dictionary<string, T>(Values, StringComparer.Ordinal).GetAlternateLookup<ReadOnlySpan<char>>();

    public T? Find(ReadOnlySpan<char> word) => _values.TryGetValue(word, out var value) ? value : null;

    /// <summary>The word of a value.</summary>
    public string Of(T value) => Values.First(word => EqualityComparer<T>.Default.Equals(word.Value, value)).Key;

    /// <summary>The words, for messages.</summary>
    public Sentence Accepted { get; } = JobFileWords.Of("OneOf", string.Join(", ", Values.Keys));
}
