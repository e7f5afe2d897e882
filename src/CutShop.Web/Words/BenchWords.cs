namespace CutShop.Web.Words;

/// <summary>Names the file of the benches' words. The English words are the keys; another language has a file of its own.</summary>
public sealed class BenchWords;
