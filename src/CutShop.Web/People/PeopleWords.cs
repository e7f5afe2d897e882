using CutShop.Takeoff.Words;
using CutShop.Web.Shared;

namespace CutShop.Web.People;

/// <summary>What the pages of people, tablets, keys and signing in say.</summary>
internal static class PeopleWords
{
    public static WordList List { get; } = new(typeof(PeopleWords));

    internal static PageText T { get; } = new(List);

    /// <summary>A sentence of the list, said later.</summary>
    internal static Sentence Of(string key) => new(List, key);
}
