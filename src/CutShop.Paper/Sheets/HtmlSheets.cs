using System.Globalization;
using System.Text;
using CutShop.Paper.Drawings;
using CutShop.Paper.Words;

namespace CutShop.Paper.Sheets;

/// <summary>Writes sheets as HTML: an article each, or a whole document. No inline style, no script; all text is escaped.</summary>
public static class HtmlSheets
{
    /// <summary>The style sheet for screen and print, to be served as a file or put into a document.</summary>
    public static string StyleSheet { get; } = ReadStyleSheet();

    /// <summary>One sheet as an <c>article</c> of class <c>sheet</c>, for a page that has <see cref="StyleSheet"/>.</summary>
    public static string Article(Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var html = new StringBuilder(8192);
        html.Append("<article class=\"sheet\"").Append(sheet.Anchor is { } anchor ? $" id=\"{Safe(anchor)}\"" : "").Append(">\n<header><p class=\"sheet-kind\">").Append(Safe(sheet.Title))
            .Append("</p><h1>").Append(Safe(sheet.Subject)).Append("</h1>");
        if (sheet.SignBoxes.Count > 0)
            AppendFields(html, new FieldsBlock([.. sheet.SignBoxes.Select(label => new Field(label, Value: null))]));
        html.Append("</header>\n");
        if (sheet.Stamp is not null)
            html.Append("<p class=\"stamp\">").Append(Safe(sheet.Stamp)).Append("</p>\n");
        html.Append(Blocks(sheet.Blocks));
        return html.Append("<footer>").Append(Safe(sheet.Foot)).Append("</footer>\n</article>\n").ToString();
    }

    /// <summary>Blocks alone, for a part of a page that has <see cref="StyleSheet"/>.</summary>
    public static string Blocks(IEnumerable<Block> blocks)
    {
        ArgumentNullException.ThrowIfNull(blocks);
        var html = new StringBuilder(2048);
        foreach (var block in blocks)
            Append(html, block);
        return html.ToString();
    }

    /// <summary>A document of its own, its styles inside, for a file that is opened without a server.</summary>
    public static string Document(string title, IEnumerable<Sheet> sheets, PaperText text)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        ArgumentNullException.ThrowIfNull(text);
        var html = new StringBuilder(16_384);
        html.Append(CultureInfo.InvariantCulture, $"<!doctype html>\n<html lang=\"{Safe(text["Language"])}\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>").Append(Safe(title))
            .Append("</title>\n<style>\n").Append(StyleSheet).Append("</style>\n</head>\n<body>\n<main>\n");
        List<Sheet> all = [.. sheets];
        AppendContents(html, [.. all.Where(sheet => sheet.Anchor is not null)], text);
        foreach (var sheet in all)
            html.Append(Article(sheet));
        return html.Append("</main>\n</body>\n</html>\n").ToString();
    }

    private static void AppendContents(StringBuilder html, List<Sheet> sheets, PaperText text)
    {
        if (sheets.Count == 0)
            return;
        html.Append("<nav class=\"contents\"><h1>").Append(Safe(text["Contents"])).Append("</h1><ul>");
        foreach (var sheet in sheets)
            html.Append("<li><a href=\"#").Append(Safe(Uri.EscapeDataString(sheet.Anchor!))).Append("\">").Append(Safe($"{sheet.Title} {sheet.Subject}")).Append("</a></li>");
        html.Append("</ul></nav>\n");
    }

    private static void Append(StringBuilder html, Block block)
    {
        switch (block)
        {
            case HeadingBlock h:
                html.Append("<h2>").Append(Safe(h.Text)).Append("</h2>\n");
                break;
            case NoteBlock n:
                html.Append("<p>").Append(Safe(n.Text)).Append("</p>\n");
                break;
            case BigFigureBlock b:
                html.Append("<div class=\"big-figure\"><p>").Append(Safe(b.Label)).Append("</p><p class=\"figure\">").Append(Safe(b.Figure))
                    .Append("</p><p class=\"other\">").Append(Safe(b.Other)).Append("</p></div>\n");
                break;
            case BigFiguresBlock b:
                AppendBigFigures(html, b);
                break;
            case SideBySideBlock s:
                html.Append("<div class=\"side-by-side\"><div>\n");
                Append(html, s.Left);
                html.Append("</div><div>\n");
                Append(html, s.Right);
                html.Append("</div></div>\n");
                break;
            case FieldsBlock f:
                AppendFields(html, f);
                break;
            case TableBlock t:
                AppendTable(html, t);
                break;
            case StepsBlock s:
                html.Append("<h2>").Append(Safe(s.Caption)).Append("</h2>\n<ol>");
                AppendItems(html, s.Steps);
                html.Append("</ol>\n");
                break;
            case CautionsBlock c:
                html.Append("<section class=\"cautions\"><h2>").Append(Safe(c.Caption)).Append("</h2><ul>");
                AppendItems(html, c.Cautions);
                html.Append("</ul></section>\n");
                break;
            case DrawingBlock d:
                html.Append("<figure>").Append(SvgDrawing.Write(d.Drawing)).Append("</figure>\n");
                break;
            default:
                throw new NotSupportedException($"No HTML for {block.GetType().Name}.");
        }
    }

    private static void AppendBigFigures(StringBuilder html, BigFiguresBlock block)
    {
        html.Append("<section class=\"big-figures\"><h2>").Append(Safe(block.Caption)).Append("</h2>");
        foreach (var one in block.Figures)
        {
            html.Append("<div><p>").Append(Safe(one.Label)).Append("</p><p class=\"figure\">").Append(Safe(one.Figure))
                .Append("</p><p>").Append(Safe(one.Other)).Append("</p></div>");
        }
        html.Append("<ul>");
        AppendItems(html, block.Beside);
        html.Append("</ul></section>\n");
    }

    private static void AppendFields(StringBuilder html, FieldsBlock block)
    {
        html.Append("<dl class=\"fields\">");
        foreach (var field in block.Fields)
        {
            html.Append("<div><dt>").Append(Safe(field.Label)).Append(field.Value is null ? "</dt><dd class=\"blank\">" : "</dt><dd>")
                .Append(SafeLines(field.Value ?? "")).Append("</dd></div>");
        }
        html.Append("</dl>\n");
    }

    private static void AppendTable(StringBuilder html, TableBlock table)
    {
        // On a narrow screen a table scrolls by itself, and must be reached by key for that.
        html.Append("<div class=\"wide\" tabindex=\"0\" role=\"group\" aria-label=\"").Append(Safe(table.Caption)).Append("\">")
            .Append(table.IsLarge ? "<table class=\"large\"><caption>" : "<table><caption>").Append(Safe(table.Caption)).Append("</caption><thead><tr>");
        foreach (var (i, column) in table.Columns.Index())
            html.Append("<th scope=\"col\"").Append(Figure(i)).Append('>').Append(SafeLines(column)).Append("</th>");
        html.Append("</tr></thead><tbody>\n");
        foreach (var (number, row) in table.Rows.Index())
        {
            html.Append(number >= table.Rows.Count - table.StrongRows ? "<tr class=\"strong\">" : "<tr>");
            foreach (var (i, cell) in row.Index())
                html.Append("<td").Append(Figure(i)).Append('>').Append(table.StruckRows.Contains(number) ? Struck(cell) : SafeLines(cell)).Append("</td>");
            html.Append("</tr>\n");
        }
        html.Append("</tbody></table></div>\n");

        string Figure(int column) => column >= table.FiguresFrom ? " class=\"figure\"" : "";
    }

    private static void AppendItems(StringBuilder html, IReadOnlyList<string> items)
    {
        foreach (var item in items)
            html.Append("<li>").Append(Safe(item)).Append("</li>");
    }

    private static string Safe(string text) => CleanText.Escaped(text);

    private static string Struck(string cell) => cell.Split('\n', 2) is [var first, var below] ? $"<s>{Safe(first)}</s>\n{SafeLines(below)}" : $"<s>{Safe(cell)}</s>";

    private static string SafeLines(string text) => string.Join('\n', text.Split('\n').Select(CleanText.Escaped));

    private static string ReadStyleSheet()
    {
        using var stream = typeof(HtmlSheets).Assembly.GetManifestResourceStream("paper.css")
            ?? throw new InvalidOperationException("The style sheet is not in the assembly.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
