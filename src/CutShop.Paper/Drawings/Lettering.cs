using System.Collections.Concurrent;
using System.Globalization;
using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace CutShop.Paper.Drawings;

/// <summary>Letters on paper: fonts by size, and how wide a text comes out. Sizes and widths are millimetres.</summary>
public static class Lettering
{
    /// <summary>One document is written at a time: the font cache of the PDF library is shared by the whole process.</summary>
    internal static readonly Lock Press = new();

    private const string Ellipsis = "…";

    private static readonly ConcurrentDictionary<(double Size, bool Bold), XFont> Fonts = new();

    private static XGraphics? _measure;

    /// <summary>The width of a text.</summary>
    /// <exception cref="FontMissingException">The font is not on this machine.</exception>
    public static double Width(string text, double size, bool bold = false)
    {
        lock (Press)
        {
            _measure ??= XGraphics.CreateMeasureContext(new XSize(10, 10), XGraphicsUnit.Point, XPageDirection.Downwards);
            return PaperUnits.Mm(_measure.MeasureString(text, Font(size, bold)).Width);
        }
    }

    /// <summary>
    /// Makes a text fit a width: first smaller, down to <paramref name="smallest"/>, then shorter with an ellipsis at its end.
    /// </summary>
    public static (string Text, double Size) Fit(string text, double width, double size, double smallest, bool bold = false)
    {
        var clean = CleanText.Of(text);
        var natural = Width(clean, size, bold);
        if (natural <= width)
            return (clean, size);
        var shrunk = Math.Floor(size * width / natural * 20) / 20;
        if (shrunk >= smallest)
            return (clean, shrunk);
        var starts = StringInfo.ParseCombiningCharacters(clean);
        var (low, high) = (0, starts.Length - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (Width(clean[..starts[middle]] + Ellipsis, smallest, bold) <= width)
                low = middle;
            else
                high = middle - 1;
        }
        return (clean[..starts[low]].TrimEnd() + Ellipsis, smallest);
    }

    /// <summary>A text broken into lines no wider than a width, at blanks where there are any.</summary>
    public static IReadOnlyList<string> Wrap(string text, double width, double size, bool bold = false)
    {
        var lines = new List<string>();
        foreach (var paragraph in text.Split('\n'))
            WrapParagraph(CleanText.Of(paragraph), width, size, bold, lines);
        return lines;
    }

    /// <summary>The font of a size; the caller holds <see cref="Press"/>.</summary>
    internal static XFont Font(double size, bool bold)
    {
        if (GlobalFontSettings.FontResolver is null)
            GlobalFontSettings.FontResolver = new DejaVuFonts(DejaVuFonts.UsualFolders);
        return Fonts.GetOrAdd(
            (size, bold),
            key => new XFont(DejaVuFonts.Family, PaperUnits.Points(key.Size), key.Bold ? XFontStyleEx.Bold : XFontStyleEx.Regular));
    }

    private static void WrapParagraph(string text, double width, double size, bool bold, List<string> lines)
    {
        var line = "";
        foreach (var word in text.Split(' '))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (Width(longer, size, bold) <= width)
            {
                line = longer;
                continue;
            }
            if (line.Length > 0)
                lines.Add(line);
            line = BreakLongWord(word, width, size, bold, lines);
        }
        lines.Add(line);
    }

    /// <summary>Adds the full lines of a word that is wider than a line, and gives what is left of it.</summary>
    private static string BreakLongWord(string word, double width, double size, bool bold, List<string> lines)
    {
        var rest = word;
        while (rest.Length > 1 && Width(rest, size, bold) > width)
        {
            var take = Math.Clamp((int)(rest.Length * width / Width(rest, size, bold)), 1, rest.Length - 1);
            while (take > 1 && Width(rest[..take], size, bold) > width)
                take--;
            if (char.IsHighSurrogate(rest[take - 1]) && take < rest.Length)
                take++;
            lines.Add(rest[..take]);
            rest = rest[take..];
        }
        return rest;
    }
}
