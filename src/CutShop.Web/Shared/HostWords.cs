using CutShop.Takeoff.Words;

namespace CutShop.Web.Shared;

/// <summary>What every page says, what pages of trouble say, and what the API answers.</summary>
internal static class HostWords
{
    public static WordList List { get; } = new(typeof(HostWords));

    internal static PageText T { get; } = new(List);

    /// <summary>In English, as the API answers whatever language a browser asks for.</summary>
    internal static string Say(string key, params IReadOnlyList<object?> values) => List.InEnglish(key, values);
}
