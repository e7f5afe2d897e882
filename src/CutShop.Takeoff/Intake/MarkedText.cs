using CutShop.Takeoff.JobFile;

namespace CutShop.Takeoff.Intake;

/// <summary>
/// What a form or a sheet says of single posts or rows in one field, such as <c>A4: wrap 2; A7: wrap 3</c>. A mark with a comma or a
/// semicolon in it stands in quotation marks.
/// </summary>
public static class MarkedText
{
    private const string At = "at";

    /// <summary>The parts in order, each a mark and what is said of it. Nothing is judged: a mark may be unknown and a text empty.</summary>
    /// <param name="typed">The field.</param>
    /// <param name="isPartedByCommas">False where only semicolons part.</param>
    public static IEnumerable<(string Mark, string Text)> Parts(string typed, bool isPartedByCommas = true)
    {
        ArgumentNullException.ThrowIfNull(typed);
        for (var from = 0; from < typed.Length;)
        {
            var end = EndOfPart(typed, from, isPartedByCommas);
            if (typed[from..end].Trim() is { Length: > 0 } part)
                yield return Part(part);
            from = end + 1;
        }
    }

    /// <summary>The field that has these parts.</summary>
    public static string Of(IEnumerable<(string Mark, string Text)> parts) => string.Join(", ", parts.Select(part => $"{Quoted(part.Mark)}: {part.Text}"));

    /// <summary>The parts as fields of a job by their marks; null where nothing was typed.</summary>
    /// <param name="typed">The field.</param>
    /// <param name="read">Makes a value of what is said of a mark.</param>
    /// <param name="isPartedByCommas">False where only semicolons part.</param>
    public static JobValue? Values(string typed, Func<string, JobValue> read, bool isPartedByCommas = true) => string.IsNullOrWhiteSpace(typed)
        ? null
        : JobValue.OfFields(Parts(typed, isPartedByCommas).Select(part => new KeyValuePair<string, JobValue?>(part.Mark, read(part.Text))));

    /// <summary>A hole that is there already: its diameter, then perhaps its height behind "at", then perhaps level or raked.</summary>
    public static JobValue Hole(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var words = typed.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var hasSlope = words.Length > 0 && JobWords.Slopes.Find(words[^1]) is not null;
        var lengths = hasSlope ? words[..^1] : words;
        var at = Array.IndexOf(lengths, At);
        return JobValue.OfFields(
            [
                new("across", Joined(at < 0 ? lengths : lengths[..at])),
                new("height", at < 0 ? null : JobValue.OfText(string.Join(' ', lengths[(at + 1)..]))),
                new("bore", hasSlope ? JobValue.OfText(words[^1]) : null),
            ]);
    }

    /// <summary>A hole as it is typed.</summary>
    /// <param name="hole">The hole.</param>
    /// <param name="said">Writes a length.</param>
    public static string OfHole(Hole hole, Func<Lengths.Length, string> said)
    {
        ArgumentNullException.ThrowIfNull(hole);
        ArgumentNullException.ThrowIfNull(said);
        var height = hole.Height is { } given ? $" {At} {said(given)}" : "";
        return $"{said(hole.Across)}{height}{(hole.Bore is { } bore ? " " + JobWords.Slopes.Of(bore) : "")}";
    }

    private static JobValue? Joined(string[] words) => words.Length == 0 ? null : JobValue.OfText(string.Join(' ', words));

    /// <summary>Where a part ends: at the next mark of punctuation that is not in a quoted mark and no decimal comma.</summary>
    private static int EndOfPart(string typed, int from, bool isPartedByCommas)
    {
        var at = from;
        while (at < typed.Length && char.IsWhiteSpace(typed[at]))
            at++;
        if (at < typed.Length && typed[at] == '"')
            at = EndOfQuote(typed, at);
        for (; at < typed.Length; at++)
        {
            if (typed[at] == ';' || (typed[at] == ',' && isPartedByCommas && !IsDecimal(typed, at)))
                return at;
        }
        return typed.Length;
    }

    /// <summary>A comma between two digits, unless a mark with its colon follows: <c>A2: 1,70 m</c>, but <c>7: wrap 2,8: wrap 3</c>.</summary>
    private static bool IsDecimal(string typed, int comma)
    {
        if (comma == 0 || comma == typed.Length - 1 || !char.IsAsciiDigit(typed[comma - 1]) || !char.IsAsciiDigit(typed[comma + 1]))
            return false;
        var next = typed.AsSpan(comma + 1);
        return next.IndexOfAny(',', ';', ':') is var stop && (stop < 0 || next[stop] != ':');
    }

    /// <summary>The place behind a quoted mark; the mark's start where no quotation mark closes it.</summary>
    private static int EndOfQuote(string typed, int from)
    {
        for (var at = from + 1; at < typed.Length; at++)
        {
            if (typed[at] != '"')
                continue;
            if (at + 1 == typed.Length || typed[at + 1] != '"')
                return at + 1;
            at++;
        }
        return from;
    }

    private static (string Mark, string Text) Part(string part)
    {
        var end = part[0] == '"' ? EndOfQuote(part, 0) : 0;
        if (end > 0)
            return (part[1..(end - 1)].Replace("\"\"", "\"", StringComparison.Ordinal), part[end..].TrimStart().TrimStart(':').Trim());
        var colon = part.LastIndexOf(':');
        var cut = colon >= 0 ? colon : part.IndexOf(' ', StringComparison.Ordinal);
        return cut < 0 ? (part, "") : (part[..cut].Trim(), part[(cut + 1)..].Trim());
    }

    private static string Quoted(string mark) =>
        mark.AsSpan().ContainsAny(',', ';') || mark.StartsWith('"') ? $"\"{mark.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : mark;
}
