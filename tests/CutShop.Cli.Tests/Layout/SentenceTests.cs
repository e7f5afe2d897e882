using System.Text.RegularExpressions;

namespace CutShop.Cli.Tests.Layout;

/// <summary>What a person reads is kept in word lists, by key: no code, script or page holds a sentence.</summary>
public sealed partial class SentenceTests
{
    /// <summary>How many texts in a file look like sentences and are for programs or programmers. All others are kept in word lists.</summary>
    private static readonly string[] ForPrograms =
    [
        "CutShop.Cli/DemoPrices.cs: 1", // the key of a request
        "CutShop.Paper/Drawings/FontMissingException.cs: 2", // an exception's message
        "CutShop.Shop/Benches/BenchSettingsShelf.cs: 3", // names of stored settings
        "CutShop.Shop/Orders/PullLimit.cs: 1", // the name of a stored setting
        "CutShop.Shop/People/FirstOwner.cs: 1", // the name of a stored setting
        "CutShop.Shop/People/SignIn.cs: 1", // hashed in place of a password
        "CutShop.Shop/Store/PostgresStore.cs: 1", // a connection string
        "CutShop.Shop/Store/ShopMeter.cs: 1", // what a metric is, for those who run the server
        "CutShop.Shop/Tickets/TicketStates.cs: 1", // a stored state
        "CutShop.Web/Api/JobTablesApi.cs: 2", // names of columns
        "CutShop.Web/Api/KeyHandler.cs: 3", // names of policies
        "CutShop.Web/Benches/BoardCsv.cs: 3", // names of figures in a file
        "CutShop.Web/Benches/CutTicket.cshtml.cs: 1", // stored reasons
        "CutShop.Web/Benches/DrillTicket.cshtml.cs: 3", // stored reasons
    ];

    [Fact]
    public void No_sentence_is_in_code() => Assert.Equal(ForPrograms, Found("*.cs", InCode));

    [Fact]
    public void No_sentence_is_in_a_script() => Assert.Empty(Found("*.js", InCode));

    [Fact]
    public void No_words_are_in_pages() => Assert.Empty(Found("*.cshtml", InPage));

    [Theory]
    [InlineData("""Say("No coil is long enough");""", "No coil is long enough")]
    [InlineData("""Say($"{count} of the pieces wait");""", "of the pieces wait")]
    [InlineData("""Say($"Coil {(isOpen ? $"opened by {who} on {day}" : "none")} is too short");""", "Coil  is too short")]
    [InlineData("""Say($"{(isOpen ? "opened by the bench" : "none")}");""", "opened by the bench")]
    [InlineData("// No coil is long enough", null)]
    [InlineData("""throw new InvalidOperationException("No coil is long enough");""", null)]
    [InlineData("[LoggerMessage(Message = \"No coil is long enough\")]", null)]
    [InlineData("""session.Rows("SELECT code FROM coils");""", null)]
    [InlineData("""Say("AnotherLength", count);""", null)]
    [InlineData("""Split('"'); Say("two words");""", null)]
    public void A_sentence_is_known_in_code(string code, string? found) => Assert.Equal(found is null ? [] : [found], InCode(code));

    [Theory]
    [InlineData("<p>No coils here</p>", "No coils here")]
    [InlineData("<p>@T[\"NoCoils\"]</p>", null)]
    [InlineData("<p>Lot @coil.Lot (opened) was cut</p>", "Lot  (opened) was cut")]
    [InlineData("<p>@(isOpen ? T[\"Open now\"] : \"\")</p>", null)]
    [InlineData("@* No coils here *@<p>@T[\"Lot\"]</p>", null)]
    [InlineData("@if (coil is { Left: > 0 } left)\n{\n  <p>@left</p>\n}\nelse if (coil < most)\n{\n}", null)]
    [InlineData("@foreach (var step in Enum.GetValues<CutStep>())\n{\n  <p>@T[\"Lot\"]</p>\n}", null)]
    [InlineData("@{\n  ViewData[\"Title\"] = \"Coils of rope\";\n}", "Coils of rope")]
    [InlineData("<input aria-label=\"Length of rope\">", "Length of rope")]
    [InlineData("<input aria-label=\"@T[\"LengthOfRope\"]\">", null)]
    public void Words_are_known_in_a_page(string page, string? found) => Assert.Equal(found is null ? [] : [found], InPage(page));

    private static IEnumerable<string> Found(string pattern, Func<string, IEnumerable<string>> find)
    {
        var source = Path.Combine(ContributorGuide.Root, "src");
        return Directory.EnumerateFiles(source, pattern, SearchOption.AllDirectories)
            .Select(file => (Path: file, Name: Path.GetRelativePath(source, file).Replace('\\', '/')))
            .Where(file => !file.Name.Split('/').Any(folder => folder is "obj" or "bin"))
            .Select(file => (file.Name, Found: find(File.ReadAllText(file.Path)).Count()))
            .Where(file => file.Found > 0)
            .Select(file => $"{file.Name}: {file.Found}")
            .Order(StringComparer.Ordinal);
    }

    /// <summary>The sentences among the texts in code. A message of an exception, a log line and an attribute are for programmers.</summary>
    private static IEnumerable<string> InCode(string code) => Token().Matches(code)
        .Where(token => token.Groups["text"].Success && !Programmers().IsMatch(LineBefore(code, token.Index)))
        .SelectMany(token => Sentences(token.Groups["text"].Value, token.Value.StartsWith('$')));

    private static IEnumerable<string> Sentences(string text, bool hasHoles)
    {
        var said = (hasHoles ? Hole().Replace(text, "") : text).Trim();
        if (ThreeWords().IsMatch(said) && !Sql().IsMatch(said))
            yield return said;
        foreach (var inner in hasHoles ? Hole().Matches(text).SelectMany(hole => InCode(hole.Value)) : [])
            yield return inner;
    }

    /// <summary>Words between tags, and those of attributes that a person reads or hears.</summary>
    private static IEnumerable<string> InPage(string page)
    {
        var markup = Code().Replace(NotMarkup().Replace(page, ""), "");
        return BetweenTags().Matches(markup).Concat(ReadAttribute().Matches(markup))
            .Select(match => match.Groups["text"].Value.Trim())
            .Where(text => TwoWords().IsMatch(text));
    }

    private static string LineBefore(string code, int index) => code[(code.LastIndexOf('\n', Math.Max(index - 1, 0)) + 1)..index];

    /// <summary>A comment, a character or a text with its marks; only the last has the group. A text in a hole may have quotes of its own.</summary>
    [GeneratedRegex("""""
        //[^\n]*
        |/\*.*?\*/
        |'(\\.|[^'\\\n])+'
        |\$*"""(?<text>.*?)"""
        |(\$@|@\$?)"(?<text>(""|[^"])*)"
        |\$"(?<text>(\\.|\{\{|\{([^{}"]|\$?"(\\.|\{[^{}]*\}|[^"\\\n])*"|\{[^{}]*\})*\}|[^"\\\n{])*)"
        |"(?<text>(\\.|[^"\\\n])*)"
        """"", RegexOptions.IgnorePatternWhitespace | RegexOptions.Singleline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex Token();

    [GeneratedRegex("""\{([^{}"]|\$?"(\\.|\{[^{}]*\}|[^"\\])*"|\{[^{}]*\})*\}""", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex Hole();

    [GeneratedRegex(@"Exception\(|LoggerMessage|^\s*\[[A-Z]", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex Programmers();

    [GeneratedRegex(@"^(?=\p{L}).*?(?<!\S)[\p{L}']+ [\p{L}']+ [\p{L}']+", RegexOptions.ExplicitCapture | RegexOptions.Singleline, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex ThreeWords();

    [GeneratedRegex(@"\b(SELECT|INSERT|UPDATE|DELETE|CREATE|PRAGMA|FROM|WHERE|ORDER BY|SET|AND|AS|CASE|NULL)\b", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex Sql();

    /// <summary>Comments, scripts, code blocks and directives of a page.</summary>
    [GeneratedRegex(@"@\*.*?\*@|<script.*?</script>|<!--.*?-->|^\s*@(using|model|page|inject|addTagHelper|namespace)[^\n]*", RegexOptions.Singleline | RegexOptions.Multiline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex NotMarkup();

    /// <summary>An expression of a page: <c>@(…)</c>, or a name with what is called and asked of it; and a line that is a statement.</summary>
    [GeneratedRegex("""
        @\((?>[^()"]|"[^"\n]*"|\((?<deep>)|\)(?<-deep>))*(?(deep)(?!))\)
        |(^\s*|@)(else\s+)?(if|foreach|for|while|switch)\s*\((?>[^()"]|"[^"\n]*"|\((?<head>)|\)(?<-head>))*(?(head)(?!))\)
        |@(await\s)?[A-Za-z_][\w.]*(\((?>[^()"]|"[^"\n]*"|\((?<inner>)|\)(?<-inner>))*(?(inner)(?!))\)|\[(?>[^\[\]"]|"[^"\n]*"|\[(?<index>)|\](?<-index>))*(?(index)(?!))\]|[?!]?\.\w+)*
        """, RegexOptions.IgnorePatternWhitespace | RegexOptions.Multiline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex Code();

    /// <summary>What is between two tags and holds no code.</summary>
    [GeneratedRegex("(?<=[\\w\"'/]|^)>(?<text>[^<>{};=]*)<", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex BetweenTags();

    [GeneratedRegex("(\\s(label|hint|aria-label|title|alt|placeholder|data-confirm)=|ViewData\\[\"Title\"\\] = \\$?)\"(?<text>[^\"@]*)\"", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex ReadAttribute();

    [GeneratedRegex(@"[\p{L}']{2,}[ \n][\p{L}'(]{2,}", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex TwoWords();
}
