using System.Globalization;
using CutShop.Paper.Words;

namespace CutShop.Web.Shared;

/// <summary>The language of who reads the page. Lengths, codes and marks are the same in each.</summary>
internal static class ReaderLanguage
{
    /// <summary>Languages that the benches and the pages for installers speak.</summary>
    public static IReadOnlyList<(string Tag, string Name)> All { get; } = [("en", "English"), ("es", "Español")];

    public static string Tag => CultureInfo.CurrentUICulture.TwoLetterISOLanguageName is var tag && All.Any(known => known.Tag == tag) ? tag : "en";

    /// <summary>Tickets and drawings with the reader's units and words.</summary>
    public static PaperSettings PaperFor(HttpContext context)
    {
        var paper = PersonUnits.PaperFor(context);
        return Tag == "es" ? paper with { Text = PaperText.Spanish } : paper;
    }
}
