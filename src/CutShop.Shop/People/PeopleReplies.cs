using CutShop.Takeoff.Words;

namespace CutShop.Shop.People;

/// <summary>What is accepted of people, tablets and keys, in words.</summary>
public static class PeopleReplies
{
    /// <summary>The words.</summary>
    public static WordList List { get; } = new(typeof(PeopleReplies));

    internal static string Say(string key, params IReadOnlyList<object?> values) => List.InEnglish(key, values);
}
