using System.Collections;
using System.Globalization;
using System.Resources;
using System.Text.RegularExpressions;
using CutShop.Shop;
using CutShop.Web.Words;

namespace CutShop.Web.Tests.Benches;

public sealed partial class SpanishWordsTests
{
    private static readonly ResourceManager[] Words = [new(typeof(BenchWords)), new(typeof(SiteWords))];

    [Fact]
    public void Every_word_of_the_benches_and_site_pages_has_its_Spanish()
    {
        var spanish = Words.Select(words => words.GetResourceSet(new("es"), createIfNotExists: true, tryParents: false)!).ToList();
        var used = Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "src", "CutShop.Web"), "*.cs*", SearchOption.AllDirectories)
            .Where(file => Path.GetExtension(file) is ".cs" or ".cshtml" && !file.Contains("/obj/", StringComparison.Ordinal))
            .SelectMany(file => Word().Matches(File.ReadAllText(file)))
            .Select(match => Regex.Unescape(match.Groups["word"].Value))
            .Concat(Enum.GetValues<CutStep>().Select(CutStepWords.Of)).Distinct().ToList();
        Assert.True(used.Count > 50, $"Only {used.Count} words found: the search has lost its way.");
        Assert.Equal([], used.Where(word => spanish.All(words => words.GetString(word) is null)));
    }

    [Fact]
    public void Every_reply_of_a_bench_is_used_and_has_its_Spanish_with_the_same_values()
    {
        var words = new ResourceManager(typeof(BenchReplies));
        var (english, spanish) = (All(words, CultureInfo.InvariantCulture), All(words, new CultureInfo("es")));
        Assert.Equal(english.Keys.Order(StringComparer.Ordinal), spanish.Keys.Order(StringComparer.Ordinal));
        Assert.Equal([], english.Keys.Where(key => !Places(english[key]).SetEquals(Places(spanish[key]))));
        var source = string.Concat(Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "src", "CutShop.Shop"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains("/obj/", StringComparison.Ordinal)).Select(File.ReadAllText));
        Assert.Equal([], english.Keys.Where(key => !source.Contains($"\"{key}\"", StringComparison.Ordinal)));
        Assert.Equal([], Reply().Matches(source).Select(match => match.Groups["key"].Value).Where(key => !english.ContainsKey(key)));
    }

    private static Dictionary<string, string> All(ResourceManager words, CultureInfo language) =>
        words.GetResourceSet(language, createIfNotExists: true, tryParents: false)!.Cast<DictionaryEntry>().ToDictionary(entry => (string)entry.Key, entry => (string)entry.Value!);

    private static HashSet<string> Places(string text) => [.. Place().Matches(text).Select(match => match.Value)];

    [GeneratedRegex("BenchReplies\\.Of\\(\"(?<key>\\w+)\"", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Reply();

    [GeneratedRegex("\\{[0-9]\\}", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Place();

    [GeneratedRegex("\\b(T|t|text)\\[\"(?<word>(?:[^\"\\\\]|\\\\.)*)\"", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Word();
}
