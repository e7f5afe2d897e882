using System.Globalization;
using System.Text;

namespace CutShop.Takeoff.Lengths;

/// <summary>Text from a file as it may stand in a message that is one line long.</summary>
internal static class OneLine
{
    private const int LongestShown = 60;

    /// <summary>The text cut short; control characters and line separators as escapes.</summary>
    public static string Of(string text)
    {
        var shown = new StringBuilder(Math.Min(text.Length, LongestShown));
        foreach (var c in CutShort(text))
        {
            if (BreaksLine(c))
                shown.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}");
            else
                shown.Append(c);
        }
        return shown.ToString();
    }

    /// <summary>True for control characters and for the two separators at which some readers break lines.</summary>
    public static bool BreaksLine(char c) => char.IsControl(c) || c is '\u2028' or '\u2029';

    /// <summary>True where one of those characters is in a text.</summary>
    public static bool BreaksAnywhere(ReadOnlySpan<char> text)
    {
        foreach (var c in text)
        {
            if (BreaksLine(c))
                return true;
        }
        return false;
    }

    private static string CutShort(string text)
    {
        if (text.Length <= LongestShown)
            return text;
        // Never between the two halves of a surrogate pair.
        var end = char.IsHighSurrogate(text[LongestShown - 1]) ? LongestShown - 1 : LongestShown;
        return string.Concat(text.AsSpan(0, end), "…");
    }
}
