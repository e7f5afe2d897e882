using System.Globalization;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.JobFile;

/// <summary>The words of a job file, each read in one place: treatments, turns, marks, materials, shapes.</summary>
internal static class JobWords
{
    public const string AcceptedTurn = "a turn above 0 and under 180 degrees, such as \"90 left\" or \"22.5 right\"";
    public const string AcceptedMark = "a text of 1 to 40 characters without control characters or spaces at its ends";
    public const string AcceptedNumber = "a text of 1 to 40 characters without control characters, slashes, or spaces at its ends";
    public const string AcceptedWrap = "\"wrap N\" with N turns in halves up to 1000, such as \"wrap 2\" or \"wrap 2.5\"";
    private const int LongestMark = 40;

    public static Dictionary<string, PostShape> Shapes { get; } = new()
    {
        ["square"] = PostShape.Square,
        ["round"] = PostShape.Round,
    };

    public static Parsed<Turn> ParseTurn(string text)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (text.Length > 32 || words.Length != 2
            || !decimal.TryParse(words[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var degrees)
            || degrees is <= 0 or >= 180)
            return Parsed.Bad<Turn>($"accepted: {AcceptedTurn}");
        return words[1] switch
        {
            "left" => Parsed.Good(new Turn(degrees, TurnSide.Left)),
            "right" => Parsed.Good(new Turn(degrees, TurnSide.Right)),
            _ => Parsed.Bad<Turn>($"accepted: {AcceptedTurn}"),
        };
    }

    public static Parsed<Treatment> ParseTreatment(string text)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return (text.Length > 32 ? [] : words) switch
        {
            ["bored"] => Parsed.Good(Treatment.Bored),
            ["stopped"] => Parsed.Good(Treatment.Stopped),
            ["knot"] => Parsed.Good(Treatment.Knot),
            ["wrap", var turns] => ParseWrap(turns, WrapSide.Outside),
            ["wrap", var turns, "outside"] => ParseWrap(turns, WrapSide.Outside),
            ["wrap", var turns, "inside"] => ParseWrap(turns, WrapSide.Inside),
            _ => Parsed.Bad<Treatment>($"accepted: bored, stopped, knot or {AcceptedWrap}"),
        };
    }

    public static Parsed<DateOnly> ParseDate(string text) =>
        IsoDate.Find(text) is { } date
            ? Parsed.Good(date)
            : Parsed.Bad<DateOnly>("accepted: a date as year-month-day, such as \"2027-03-12\"");

    /// <summary>What is wrong with a mark, or null.</summary>
    public static string? ProblemWithMark(string mark) =>
        mark.Length is 0 or > LongestMark || mark.Any(OneLine.BreaksLine) || char.IsWhiteSpace(mark[0]) || char.IsWhiteSpace(mark[^1])
            ? $"accepted: {AcceptedMark}"
            : null;

    /// <summary>What is wrong with a job's number, or null. It names files and addresses, so it has no slashes.</summary>
    public static string? ProblemWithNumber(string number) =>
        ProblemWithMark(number) is not null || number.Contains('/') || number.Contains('\\') || number is "." or ".."
            ? $"accepted: {AcceptedNumber}"
            : null;

    private static Parsed<Treatment> ParseWrap(string turns, WrapSide side)
    {
        if (decimal.TryParse(turns, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
            && number is > 0 and <= Treatment.MostTurns && number * 2 == decimal.Truncate(number * 2))
            return Parsed.Good(Treatment.Wrap((int)(number * 2), side));
        return Parsed.Bad<Treatment>($"accepted: {AcceptedWrap}");
    }
}
