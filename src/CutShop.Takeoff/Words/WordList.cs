using System.Globalization;
using System.Resources;

namespace CutShop.Takeoff.Words;

/// <summary>
/// The sentences of one part of CutShop, by key, in each language that they are written in. They are kept in the .resx files beside
/// the owner's class: NAME.resx in English, NAME.es.resx in Spanish. Where a language lacks a sentence, the English one is used.
/// </summary>
/// <param name="owner">The class beside the files, which has their name.</param>
public sealed class WordList(Type owner)
{
    private readonly ResourceManager _words = new(owner);

    /// <summary>A sentence in a language, with values in its places <c>{0}</c>, <c>{1}</c> and so on.</summary>
    /// <param name="language">The language; the invariant culture is English.</param>
    /// <param name="key">The sentence's key; one that no file has is given back as it is.</param>
    /// <param name="values">Texts, whole numbers and sentences, which are said in the same language; numbers look the same in each.</param>
    public string Say(CultureInfo language, string key, params IReadOnlyList<object?> values)
    {
        var text = _words.GetString(key, language) ?? key;
        return values.Count == 0 ? text : string.Format(CultureInfo.InvariantCulture, text, [.. values.Select(value => value is Sentence sentence ? sentence.In(language) : value)]);
    }

    /// <summary>A sentence in English.</summary>
    public string InEnglish(string key, params IReadOnlyList<object?> values) => Say(CultureInfo.InvariantCulture, key, values);
}
