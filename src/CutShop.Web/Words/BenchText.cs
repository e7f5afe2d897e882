using System.Globalization;
using CutShop.Paper;
using CutShop.Shop;
using Microsoft.Extensions.Localization;

namespace CutShop.Web.Words;

/// <summary>What the benches say, in the reader's language. Lengths, codes and marks are the same in each.</summary>
public sealed class BenchText(IStringLocalizer<BenchWords> words)
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

    /// <summary>English words in the reader's language.</summary>
    public string this[string english] => words[english].Value;

    /// <summary>The same with values put in.</summary>
    public string this[string english, params object?[] values] =>
        string.Format(CultureInfo.InvariantCulture, this[english], [.. values.Select(value => value is StateWord state ? this[state.State] : value)]);

    /// <summary>What a bench answered.</summary>
    public string Say(FormattableString said)
    {
        ArgumentNullException.ThrowIfNull(said);
        return this[said.Format, said.GetArguments()];
    }
}
