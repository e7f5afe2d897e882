using System.Globalization;
using Microsoft.Extensions.Localization;

namespace CutShop.Web.Words;

/// <summary>Words of pages in the reader's language. Lengths, codes and marks are the same in each.</summary>
/// <param name="words">The words; the English ones are their keys.</param>
public abstract class SpokenText(IStringLocalizer words)
{
    /// <summary>English words in the reader's language.</summary>
    public string this[string english] => words[english].Value;

    /// <summary>The same with values put in.</summary>
    public string this[string english, params object?[] values] =>
        string.Format(CultureInfo.InvariantCulture, this[english], values);

    /// <summary>A sentence with its values apart.</summary>
    public string Say(FormattableString said)
    {
        ArgumentNullException.ThrowIfNull(said);
        return this[said.Format, said.GetArguments()];
    }
}
