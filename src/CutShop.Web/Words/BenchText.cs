using System.Globalization;
using CutShop.Paper;
using Microsoft.Extensions.Localization;

namespace CutShop.Web.Words;

/// <summary>What the benches say, in the reader's language. Lengths, codes and marks are the same in each.</summary>
public sealed class BenchText(IStringLocalizer<BenchWords> words) : SpokenText(words)
{
    /// <summary>Languages that the benches speak.</summary>
    public static IReadOnlyList<(string Tag, string Name)> Languages { get; } = [("en", "English"), ("es", "Español")];

    /// <summary>The tag of the reader's language.</summary>
    public static string Language => CultureInfo.CurrentUICulture.TwoLetterISOLanguageName is var tag && Languages.Any(known => known.Tag == tag) ? tag : "en";

    /// <summary>Tickets and drawings with the reader's units and words.</summary>
    public static PaperSettings PaperFor(HttpContext context)
    {
        var paper = PersonUnits.PaperFor(context);
        return Language == "es" ? paper with { Text = PaperText.Spanish } : paper;
    }
}
