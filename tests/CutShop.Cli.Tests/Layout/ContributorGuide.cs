using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace CutShop.Cli.Tests.Layout;

/// <summary>The tables of DEVELOPERS.md, which say how the house is laid out, and the files that they speak of.</summary>
internal static partial class ContributorGuide
{
    /// <summary>The folder that holds DEVELOPERS.md.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>What each folder of a project may use of the same project: <c>CutShop.Shop/Stock</c> and its folders.</summary>
    public static IReadOnlyDictionary<string, IReadOnlyList<string>> Arrows { get; } = Rows("## What may use what")
        .Where(cells => cells[0].StartsWith("`CutShop.", StringComparison.Ordinal))
        .ToDictionary(cells => cells[0].Trim('`'), cells => (IReadOnlyList<string>)[.. Split(cells[^1])]);

    /// <summary>Each question that the guide answers, with the paths that answer it.</summary>
    public static IReadOnlyList<(string Question, IReadOnlyList<string> Paths)> Answers { get; } =
        [.. Rows("## Where is").Skip(1).Select(cells => (cells[0], (IReadOnlyList<string>)[.. CodeSpan().Matches(cells[^1]).Select(found => found.Groups["path"].Value)]))];

    private static IEnumerable<string> Split(string cell) =>
        cell.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Where(name => char.IsAsciiLetterUpper(name[0]));

    /// <summary>The rows of the first table under a heading, its own head among them.</summary>
    private static IEnumerable<string[]> Rows(string heading) => File.ReadLines(Path.Combine(Root, "DEVELOPERS.md"))
        .SkipWhile(line => line != heading)
        .Skip(1)
        .TakeWhile(line => !line.StartsWith("## ", StringComparison.Ordinal))
        .Where(line => line.StartsWith('|') && !line.StartsWith("| ---", StringComparison.Ordinal))
        .Select(line => line.Trim('|', ' ').Split('|', StringSplitOptions.TrimEntries));

    private static string FindRoot([CallerFilePath] string file = "")
    {
        var folder = Path.GetDirectoryName(file)!;
        while (!File.Exists(Path.Combine(folder, "DEVELOPERS.md")))
            folder = Path.GetDirectoryName(folder)!;
        return folder;
    }

    [GeneratedRegex("`(?<path>[^`]+)`", RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture)]
    private static partial Regex CodeSpan();
}
