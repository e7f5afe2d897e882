using System.Globalization;
using System.Text.RegularExpressions;
using CutShop.Shop.Orders;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Tables;

namespace CutShop.Web.Orders;

/// <summary>Fields of a draft in the desk's words: <c>Line A, post A2, across</c>.</summary>
public static partial class FieldWords
{
    private static readonly Dictionary<string, string> Names = new()
    {
        ["number"] = "Job number",
        ["customer"] = "Customer",
        ["due"] = "Due",
        ["unit"] = "Unit",
        ["oneLot"] = "Lots",
        ["rope"] = "Rope",
        ["allowances"] = "Allowances",
        ["material"] = "material",
        ["diameter"] = "diameter",
        ["measured"] = "measured",
        ["shrink"] = "shrinkage",
        ["perPiece"] = "extra a piece",
        ["roundUp"] = "round up to",
        ["width"] = "spacing",
        ["at"] = "single posts",
    };

    /// <summary>The field's name in words.</summary>
    public static string Of(DraftForm form, string field)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(field);
        if (field.Length == 0)
            return "The job";
        var words = new List<string>();
        DraftLine? line = null;
        foreach (var part in field.Split('.'))
        {
            var numbered = Numbered().Match(part);
            if (!numbered.Success)
            {
                words.Add(Names.GetValueOrDefault(part, part));
                continue;
            }
            var index = int.Parse(numbered.Groups["index"].ValueSpan, CultureInfo.InvariantCulture);
            if (numbered.Groups["name"].ValueSpan is "lines")
            {
                line = form.Lines.ElementAtOrDefault(index);
                words.Add($"Line {line?.Mark}");
            }
            else
            {
                words.Add(InLine(line, numbered.Groups["name"].Value, index));
            }
        }
        return string.Join(", ", words);
    }

    private static string InLine(DraftLine? line, string name, int index) => name switch
    {
        "posts" => $"post {line?.Posts.ElementAtOrDefault(index)?.Mark}",
        "sections" => $"section {line?.Posts.ElementAtOrDefault(index)?.Mark} – {line?.Posts.ElementAtOrDefault(index + 1)?.Mark}",
        _ => $"row {line?.Rows.ElementAtOrDefault(index)?.Mark}",
    };

    [GeneratedRegex(@"^(?<name>\w+)\[(?<index>\d{1,6})\]$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Numbered();
}
