using System.Text;

namespace CutShop.Paper.Drawings;

/// <summary>Text that came from a job, made safe to print.</summary>
public static class CleanText
{
    /// <summary>The text with control characters and halves of surrogate pairs replaced, so that every writer takes it.</summary>
    public static string Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (!text.Any(c => char.IsControl(c) || char.IsSurrogate(c) || c is '\uFFFE' or '\uFFFF'))
            return text;
        var clean = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
            clean.Append(Rune.IsControl(rune) ? " " : rune.Value is 0xFFFE or 0xFFFF ? "\uFFFD" : rune.ToString());
        return clean.ToString();
    }

    /// <summary>The text as the content or an attribute of HTML or XML.</summary>
    public static string Escaped(string text) => Of(text)
        .Replace("&", "&amp;", StringComparison.Ordinal)
        .Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace(">", "&gt;", StringComparison.Ordinal)
        .Replace("\"", "&quot;", StringComparison.Ordinal)
        .Replace("'", "&#39;", StringComparison.Ordinal);
}
