using System.Globalization;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;

namespace CutShop.Web.Tests.Museum;

/// <summary>
/// The figures in a page, a ticket or a printed text: lengths, degrees, weights, screws, bits, faces, counts, days, marks and codes, without
/// the words between them, so that a page that is worded or laid out anew has the same figures.
/// </summary>
/// <param name="marks">The marks of the job's posts and the names of its runs, which are figures too.</param>
internal sealed class FigureText(IEnumerable<string> marks)
{
    private const string Inches = @"(?:\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?)";
    private const string Length = $"(?:\\d+' ?{Inches}\"|\\d+'|{Inches}(?:\"| in\\b))";

    private static readonly Regex Piece = new("<[^>]*>|[^<]+", RegexOptions.Compiled | RegexOptions.CultureInvariant, TimeSpan.FromSeconds(30));
    private static readonly Regex Spaces = new(@"\s+", RegexOptions.Compiled | RegexOptions.CultureInvariant, TimeSpan.FromSeconds(30));
    private static readonly string[] Parts = ["<article", "<tr", "<li", "<details", "<section", "<svg"];

    private readonly Regex _figure = Of(marks);

    /// <summary>The figures of a page: a line for each row, item, section or drawing that has any, in the page's order.</summary>
    public IReadOnlyList<string> OfPage(string html)
    {
        ArgumentNullException.ThrowIfNull(html);
        var lines = new List<string>();
        var (part, isDrawing) = (new StringBuilder(), false);
        foreach (Match piece in Piece.Matches(MainOf(html)))
        {
            var text = piece.Value;
            if (text[0] != '<')
            {
                var said = Plain(WebUtility.HtmlDecode(text));
                part.Append(!isDrawing && said.Length > 0 && said.All(char.IsAsciiDigit) ? $" count {said} " : said);
                continue;
            }
            part.Append(' ');
            var starts = Parts.Any(name => text.StartsWith(name, StringComparison.Ordinal) && !char.IsAsciiLetter(text[name.Length]));
            if (starts || text == "</svg>")
            {
                End();
                isDrawing = text.StartsWith("<svg", StringComparison.Ordinal);
            }
        }
        End();
        return lines;

        void End()
        {
            if (string.Join("; ", OfText(part.ToString())) is { Length: > 0 } line)
                lines.Add(isDrawing ? $"drawn: {line}" : line);
            part.Clear();
        }
    }

    /// <summary>The figures of a text, in its order.</summary>
    public IEnumerable<string> OfText(string text)
    {
        foreach (Match found in _figure.Matches(Spaces.Replace(Plain(text), " ")))
        {
            var about = found.Groups["about"].Success ? "≈" : "";
            if (found.Groups["screw"].Success)
                yield return $"screw {(found.Groups["count"].Success ? found.Groups["count"].Value + " of " : "")}{InInches(found.Groups["size"].Value)} x {InInches(found.Groups["long"].Value)}";
            else if (found.Groups["length"].Success)
                yield return about + InInches(found.Value.TrimStart('≈', ' '));
            else
                yield return about + found.Value.TrimStart('≈', ' ');
        }
    }

    private static Regex Of(IEnumerable<string> marks)
    {
        var known = string.Join('|', marks.Distinct().OrderByDescending(mark => mark.Length).ThenBy(mark => mark, StringComparer.Ordinal).Select(mark => Regex.Escape(Plain(mark))));
        var mark = known.Length == 0 ? @"[^\s\S]" : $@"(?<![\w-])(?:{known})(?![\w-])";
        return new(
            string.Join(
                '|',
                $@"(?<screw>(?:(?<count>\d+) [×x] )?(?<size>\#\d+|\d+(?:/\d+)? in) x (?<long>{Length}))",
                $"(?<about>≈ ?)?(?<length>-?{Length})",
                @"(?<about>≈ ?)?-?\d+(?:\.\d+)? (?:mm|ft|lb)\b",
                @"(?<about>≈ ?)?\d+(?:\.\d+)? ?[°%]",
                @"\d+(?:\.\d+)?(?: 1/2)? turns?\b",
                @"\d{4}-\d\d-\d\d",
                @"\$[\d,]+\.\d\d",
                @"\b[0-9A-Z]{4}-[0-9A-Z]{4}-[0-9A-Z]{4}\b",
                @"\bK\d{4}\b",
                @"\bhole saw\b|\bspade\b|\bForstner\b",
                @"\bcount \d+",
                $"(?:toward|away from|facing) {mark}",
                mark),
            RegexOptions.Compiled | RegexOptions.CultureInvariant,
            TimeSpan.FromSeconds(30));
    }

    /// <summary>Feet and inches as inches, since both are the same length: <c>6' 2 3/8"</c> is <c>74 3/8"</c>.</summary>
    private static string InInches(string text)
    {
        if (text.StartsWith('#'))
            return text;
        var minus = text.StartsWith('-') ? "-" : "";
        var rest = text.TrimStart('-').Replace(" in", "", StringComparison.Ordinal).TrimEnd('"').Trim();
        var feet = 0;
        if (rest.Split('\'') is [var whole, var after])
            (feet, rest) = (int.Parse(whole, CultureInfo.InvariantCulture), after.Trim());
        if (rest.Contains('.', StringComparison.Ordinal))
            return $"{minus}{rest}\"";
        var words = rest.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var inches = (feet * 12) + (words is [var number, ..] && !number.Contains('/', StringComparison.Ordinal) ? int.Parse(number, CultureInfo.InvariantCulture) : 0);
        var part = words is [.., var last] && last.Contains('/', StringComparison.Ordinal) ? last : "";
        var said = part.Length == 0 ? inches.ToString(CultureInfo.InvariantCulture) : inches == 0 ? part : string.Create(CultureInfo.InvariantCulture, $"{inches} {part}");
        return $"{minus}{said}\"";
    }

    private static string MainOf(string html)
    {
        var from = html.IndexOf("<main", StringComparison.Ordinal);
        var to = html.LastIndexOf("</main>", StringComparison.Ordinal);
        var main = from < 0 || to < from ? html : html[from..to];
        return Regex.Replace(main, "<(?<name>script|style|template|button type=\"button\" data-key)\\b.*?</(\\k<name>|button)>", " ", RegexOptions.ExplicitCapture | RegexOptions.Singleline | RegexOptions.CultureInvariant, TimeSpan.FromSeconds(10));
    }

    private static string Plain(string text) => text.Replace('\u00A0', ' ').Replace('\u202F', ' ').Replace('″', '"').Replace('′', '\'').Replace('−', '-');
}
