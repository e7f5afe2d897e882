using System.Resources;
using System.Text.RegularExpressions;
using CutShop.Shop;
using CutShop.Testing;
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

    [GeneratedRegex("\\b(T|t|text)\\[\"(?<word>(?:[^\"\\\\]|\\\\.)*)\"", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Word();
}
