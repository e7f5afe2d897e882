using System.Globalization;

namespace CutShop.Takeoff;

/// <summary>Something to say, as a key and values, so that each reader can have it in another language.</summary>
/// <param name="words">Where the key is found.</param>
/// <param name="key">The sentence's key.</param>
/// <param name="values">What stands in its places.</param>
public sealed class Sentence(WordList words, string key, params IReadOnlyList<object?> values)
{
    /// <summary>The sentence's key.</summary>
    public string Key { get; } = key;

    /// <summary>What stands in its places.</summary>
    public IReadOnlyList<object?> Values { get; } = values;

    /// <summary>The sentence in a language.</summary>
    public string In(CultureInfo language) => words.Say(language, Key, Values);

    /// <summary>The sentence in English.</summary>
    public override string ToString() => In(CultureInfo.InvariantCulture);
}
