namespace CutShop.Web.Words;

/// <summary>Names the file of the words of the pages for installers. The English words are the keys; another language has a file of its own.</summary>
public sealed class SiteWords;
