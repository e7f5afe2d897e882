using CutShop.Takeoff.Words;

namespace CutShop.Shop.People;

/// <summary>What is accepted of people, tablets and keys, in English and Spanish.</summary>
public static class PeopleReplies
{
    /// <summary>The words.</summary>
    public static WordList List { get; } = new(typeof(PeopleReplies));

    internal static Sentence Of(string key, params IReadOnlyList<object?> values) => new(List, key, values);
}
