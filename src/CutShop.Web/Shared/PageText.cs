using System.Globalization;
using CutShop.Takeoff.Words;

namespace CutShop.Web.Shared;

/// <summary>
/// A word list in the reader's language, for pages. A class of words has one named T; a page names the class once,
/// <c>@using static CutShop.Web.Jobs.JobWords</c>, and says <c>@T["Key", value]</c>, or
/// <c>@T[sentence]</c> of one that the shop made.
/// </summary>
internal sealed class PageText(WordList words)
{
    public string this[Sentence said] => said.In(CultureInfo.CurrentUICulture);

    public string this[string key, params IReadOnlyList<object?> values] => words.Say(CultureInfo.CurrentUICulture, key, values);
}
