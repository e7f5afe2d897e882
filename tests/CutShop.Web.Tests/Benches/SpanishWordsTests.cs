using System.Collections;
using System.Globalization;
using System.Resources;
using System.Text.RegularExpressions;
using CutShop.Testing;

namespace CutShop.Web.Tests.Benches;

public sealed partial class SpanishWordsTests
{
    /// <summary>Classes of words that speak Spanish.</summary>
    public static TheoryData<Type> Lists => [typeof(BenchWords), typeof(SiteWords), typeof(BenchReplies), typeof(SiteReplies), typeof(PeopleReplies), typeof(FrontWords), typeof(PieceCodeErrors)];

    [Theory]
    [MemberData(nameof(Lists))]
    public void Each_sentence_is_there_in_English_and_in_Spanish_with_the_same_places(Type words)
    {
        var (english, spanish) = (Read(words, CultureInfo.InvariantCulture), Read(words, new("es")));
        Assert.NotEmpty(english);
        Assert.Equal(english.Keys.Order(StringComparer.Ordinal), spanish.Keys.Order(StringComparer.Ordinal));
        Assert.Equal([], english.Where(pair => !PlacesIn(pair.Value).SequenceEqual(PlacesIn(spanish[pair.Key]))).Select(pair => pair.Key));
    }

    [Theory]
    [MemberData(nameof(Lists))]
    public void Each_sentence_is_used(Type words)
    {
        var code = string.Concat(Sources().Select(File.ReadAllText));
        Assert.Equal([], Read(words, CultureInfo.InvariantCulture).Keys.Where(key => !code.Contains($"\"{key}\"", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData(typeof(BenchWords))]
    [InlineData(typeof(SiteWords))]
    public void Each_key_that_a_page_says_is_there(Type words)
    {
        var known = Read(words, CultureInfo.InvariantCulture);
        var used = Sources().Select(File.ReadAllText).Where(text => text.Contains($"using static {words.FullName}", StringComparison.Ordinal))
            .SelectMany(text => Said().Matches(text)).Select(match => match.Groups["key"].Value).ToHashSet();
        Assert.True(used.Count > 50, $"Only {used.Count} keys found: the search has lost its way.");
        Assert.Equal([], used.Where(key => !known.ContainsKey(key)));
    }

    [Fact]
    public void Each_state_and_each_kind_of_report_has_its_words()
    {
        var sentences = TicketStates.All.Append(CoilStates.InStock).Append(CoilStates.UsedUp).Append(CoilStates.Retired).Select(BenchReplies.State)
            .Concat(Enum.GetValues<SiteReportKind>().Select(SiteWords.KindOf));
        Assert.All(sentences, sentence => Assert.NotEqual(sentence.Key, sentence.In(new("es"))));
    }

    private static Dictionary<string, string> Read(Type words, CultureInfo language) =>
        new ResourceManager(words).GetResourceSet(language, createIfNotExists: true, tryParents: false)!.Cast<DictionaryEntry>()
            .Where(entry => KeyName().IsMatch((string)entry.Key))
            .ToDictionary(entry => (string)entry.Key, entry => (string)entry.Value!);

    private static IEnumerable<string> PlacesIn(string text) => Place().Matches(text).Select(match => match.Value).Distinct().Order(StringComparer.Ordinal);

    private static IEnumerable<string> Sources() => Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "src"), "*.cs*", SearchOption.AllDirectories)
        .Where(file => Path.GetExtension(file) is ".cs" or ".cshtml" && !file.Contains("/obj/", StringComparison.Ordinal));

    [GeneratedRegex("\\b(T\\[|Of\\()\"(?<key>[^\"]*)\"", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Said();

    [GeneratedRegex("^[A-Z][A-Za-z]*$", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex KeyName();

    [GeneratedRegex("\\{[0-9]\\}", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Place();
}
