using Microsoft.Extensions.Localization;

namespace CutShop.Web.Words;

/// <summary>What the pages for installers say, in the reader's language.</summary>
public sealed class SiteText(IStringLocalizer<SiteWords> words) : SpokenText(words);
