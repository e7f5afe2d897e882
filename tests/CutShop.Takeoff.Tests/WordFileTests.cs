using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace CutShop.Takeoff.Tests;

/// <summary>Every word list of the program: NAME.resx in English and, where that part speaks Spanish, NAME.es.resx beside it.</summary>
public sealed partial class WordFileTests
{
    private static readonly string Source = Path.Combine(RootOf(), "src");

    private static readonly Lazy<string> Code = new(() => string.Concat(
        Files("*.cs").Concat(Files("*.cshtml")).Select(File.ReadAllText)));

    public static TheoryData<string> Lists => [.. Files("*.resx").Select(file => Path.GetRelativePath(Source, file)).Where(file => !file.EndsWith(".es.resx", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Lists))]
    public void Spanish_has_the_same_keys_and_places_as_english(string list)
    {
        var (english, spanish) = (Read(list), Path.ChangeExtension(list, ".es.resx"));
        if (!File.Exists(Path.Combine(Source, spanish)))
            return;
        var said = Read(spanish).ToDictionary();
        Assert.Equal(english.Select(word => word.Key), Read(spanish).Select(word => word.Key));
        Assert.All(english, word => Assert.Equal(PlacesOf(word.Value), PlacesOf(said[word.Key])));
        Assert.All(english, word => Assert.Equal(word.Value.Split(" | ").Length, said[word.Key].Split(" | ").Length));
    }

    [Theory]
    [MemberData(nameof(Lists))]
    public void Keys_are_sorted_and_each_is_used(string list)
    {
        var keys = Read(list).Select(word => word.Key).ToList();
        Assert.Equal(keys.Order(StringComparer.Ordinal).Distinct(), keys);
        Assert.All(keys, key => Assert.Matches("^[A-Z][A-Za-z0-9]*$", key));
        Assert.All(keys, key => Assert.True(IsUsed(key), $"Nothing uses {key}."));
    }

    /// <summary>A key is used as a text, within a statement, as the name of the code of the history that it words, or with a number put to it.</summary>
    private static bool IsUsed(string key) => new[] { $"\"{key}\"", $"'{key}'", $"HistoryCode {key} ", $"\"{key.TrimEnd([.. "123456"])}{{" }.Any(use => Code.Value.Contains(use, StringComparison.Ordinal));

    /// <summary>Paper asks for its words by key, and nothing but this would find one that is misspelt.</summary>
    [Fact]
    public void Each_key_that_paper_asks_for_is_there()
    {
        var asked = Files("*.cs").Where(file => file.Contains("CutShop.Paper", StringComparison.Ordinal))
            .SelectMany(file => KeyAsked().Matches(File.ReadAllText(file)))
            .SelectMany(match => Quoted().Matches(match.Value).Select(key => key.Groups["key"].Value));
        var list = Assert.Single(Files("PaperWords.resx"));
        Assert.Empty(asked.Except(Read(Path.GetRelativePath(Source, list)).Select(word => word.Key)));
    }

    private static IEnumerable<string> Files(string pattern) => Directory.EnumerateFiles(Source, pattern, SearchOption.AllDirectories)
        .Where(file => !file.Split(Path.DirectorySeparatorChar).Any(folder => folder is "obj" or "bin"));

    private static List<KeyValuePair<string, string>> Read(string list) =>
        [.. XDocument.Load(Path.Combine(Source, list)).Root!.Elements("data").Select(word => KeyValuePair.Create(word.Attribute("name")!.Value, word.Element("value")!.Value))];

    private static IEnumerable<string> PlacesOf(string sentence) => Place().Matches(sentence).Select(place => place.Groups["place"].Value).Distinct().Order();

    private static string RootOf([CallerFilePath] string here = "")
    {
        var folder = Path.GetDirectoryName(here);
        while (!File.Exists(Path.Combine(folder!, "CutShop.sln")))
            folder = Path.GetDirectoryName(folder) ?? throw new DirectoryNotFoundException("These tests are built outside of the source.");
        return folder!;
    }

    [GeneratedRegex(@"\{(?<place>\d+)(:[^}]*)?\}", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1_000)]
    private static partial Regex Place();

    /// <summary>The first value of <c>text[…]</c>, <c>this[…]</c> or <c>text.Parts(…)</c>: a key, or one of two.</summary>
    [GeneratedRegex("""([tT]ext|this)(\[|\.Parts\()\s*([^\]\[",]*\?\s*)?"\w+"(\s*:\s*([^\]\[",]*\?\s*)?"\w+")*""", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1_000)]
    private static partial Regex KeyAsked();

    [GeneratedRegex("""
        "(?<key>\w+)"
        """, RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1_000)]
    private static partial Regex Quoted();
}
