using CutShop.Shop.Orders;
using Microsoft.AspNetCore.Html;
using Microsoft.AspNetCore.Razor.TagHelpers;

using static CutShop.Web.Shared.HostWords;

namespace CutShop.Web.Shared;

/// <summary>A field of the order desk: its label, its box or list, and beside it what was understood and what is wrong.</summary>
[HtmlTargetElement("field", TagStructure = TagStructure.WithoutEndTag)]
public sealed class FieldTagHelper : TagHelper
{
    /// <summary>The field's name, which is its id too.</summary>
    public string Name { get; set; } = "";

    /// <summary>Its label.</summary>
    public string Label { get; set; } = "";

    /// <summary>What was typed.</summary>
    public string? Value { get; set; }

    /// <summary>Notes to stand beside it.</summary>
    public IReadOnlyList<FieldNote> Notes { get; set; } = [];

    /// <summary>What may be chosen, by value; null for a box to type in.</summary>
    public IReadOnlyDictionary<string, string>? Options { get; set; }

    /// <summary>The id of a list of suggestions.</summary>
    public string? Suggestions { get; set; }

    /// <summary>A few words below the label.</summary>
    public string? Hint { get; set; }

    /// <summary>The kind of box.</summary>
    public string Kind { get; set; } = "text";

    /// <summary>True for a field that needs more room.</summary>
    public bool Wide { get; set; }

    /// <inheritdoc/>
    public override void Process(TagHelperContext context, TagHelperOutput output)
    {
        ArgumentNullException.ThrowIfNull(output);
        output.TagName = "div";
        output.TagMode = TagMode.StartTagAndEndTag;
        output.Attributes.SetAttribute("class", Wide ? "field wide" : "field");
        var html = output.Content;
        html.AppendHtml("<label for=\"").Append(Name).AppendHtml("\">").Append(Label);
        if (Hint is not null)
            html.AppendHtml(" <span class=\"hint\">").Append(Hint).AppendHtml("</span>");
        html.AppendHtml("</label>");
        if (Options is null)
            AppendBox(html);
        else
            AppendList(html, Options);
        html.AppendHtml("<div class=\"notes\" id=\"").Append(Name).AppendHtml("-note\" data-note=\"").Append(Name).AppendHtml("\">");
        AppendNotes(html, Notes);
        html.AppendHtml("</div>");
    }

    /// <summary>Notes as paragraphs, the errors first.</summary>
    public static void AppendNotes(IHtmlContentBuilder html, IReadOnlyList<FieldNote> notes)
    {
        ArgumentNullException.ThrowIfNull(html);
        foreach (var note in notes.OrderByDescending(note => note.Kind))
        {
            var (style, mark) = note.Kind switch
            {
                NoteKind.Error => ("error", "✗ "),
                NoteKind.Warning => ("warning", "! "),
                _ => ("echo", ""),
            };
            html.AppendHtml("<p class=\"").Append(style).AppendHtml("\">").Append(mark).Append(note.Text).AppendHtml("</p>");
        }
    }

    /// <summary>Notes as markup.</summary>
    public static IHtmlContent NotesOf(IReadOnlyList<FieldNote> notes)
    {
        var html = new HtmlContentBuilder();
        AppendNotes(html, notes);
        return html;
    }

    private void AppendBox(TagHelperContent html)
    {
        html.AppendHtml("<input type=\"").Append(Kind).AppendHtml("\" autocomplete=\"off\" spellcheck=\"false\"");
        AppendIdentity(html);
        if (Suggestions is not null)
            html.AppendHtml(" list=\"").Append(Suggestions).AppendHtml("\"");
        html.AppendHtml(" value=\"").Append(Value ?? "").AppendHtml("\">");
    }

    private void AppendList(TagHelperContent html, IReadOnlyDictionary<string, string> options)
    {
        html.AppendHtml("<select");
        AppendIdentity(html);
        html.AppendHtml(">");
        // What was typed is kept, known or not.
        if (!options.ContainsKey(Value ?? ""))
            AppendOption(html, Value ?? "", Value is { Length: > 0 } ? Value : T["Choose"], isChosen: true);
        foreach (var (value, text) in options)
            AppendOption(html, value, text, value == Value);
        html.AppendHtml("</select>");
    }

    private static void AppendOption(TagHelperContent html, string value, string text, bool isChosen)
    {
        html.AppendHtml("<option value=\"").Append(value).AppendHtml(isChosen ? "\" selected>" : "\">").Append(text).AppendHtml("</option>");
    }

    private void AppendIdentity(TagHelperContent html)
    {
        html.AppendHtml(" id=\"").Append(Name).AppendHtml("\" name=\"").Append(Name).AppendHtml("\" aria-describedby=\"").Append(Name).AppendHtml("-note\"");
        if (Notes.Any(note => note.Kind == NoteKind.Error))
            html.AppendHtml(" aria-invalid=\"true\"");
    }
}
