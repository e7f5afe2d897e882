using System.Globalization;

namespace CutShop.Takeoff.Words;

/// <summary>Something to say, as a key and values, so that each reader can have it in another language.</summary>
/// <param name="words">Where the key is found.</param>
/// <param name="key">The sentence's key.</param>
/// <param name="values">The values for its places.</param>
public sealed class Sentence(WordList words, string key, params IReadOnlyList<object?> values) : IEquatable<Sentence>
{
    private readonly WordList _words = words;

    /// <summary>The sentence's key.</summary>
    public string Key { get; } = key;

    /// <summary>The values for its places.</summary>
    public IReadOnlyList<object?> Values { get; } = values;

    /// <summary>A text that is the same in every language.</summary>
    public static Sentence Plain(string text) => new(TakeoffWords.List, text);

    /// <summary>The sentence in a language.</summary>
    public string In(CultureInfo language) => _words.Say(language, Key, Values);

    /// <summary>The sentence with another in place of one that is a value in it, however deep.</summary>
    public Sentence Replacing(Sentence old, Sentence by) =>
        Equals(old) ? by : new(_words, Key, [.. Values.Select(value => value is Sentence sentence ? sentence.Replacing(old, by) : value)]);

    /// <summary>The sentence in English.</summary>
    public override string ToString() => In(CultureInfo.InvariantCulture);

    /// <summary>True for the same sentence with the same values.</summary>
    public bool Equals(Sentence? other) => other is not null && _words == other._words && Key == other.Key && Values.SequenceEqual(other.Values);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Sentence);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Key, Values.Count == 0 ? null : Values[0]);
}
