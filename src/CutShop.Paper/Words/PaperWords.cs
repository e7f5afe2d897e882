using CutShop.Takeoff.Words;

namespace CutShop.Paper.Words;

/// <summary>The words of tickets, drawings, labels, quotes, cut plans, packing lists and site packs; they are in the .resx files beside it.</summary>
internal static class PaperWords
{
    public static WordList List { get; } = new(typeof(PaperWords));

    public static Sentence Of(string key, params IReadOnlyList<object?> values) => new(List, key, values);
}
