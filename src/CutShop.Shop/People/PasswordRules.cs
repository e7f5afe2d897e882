using System.Globalization;

namespace CutShop.Shop.People;

/// <summary>
/// Which passwords are too easily guessed: those made of few parts that a guesser tries first. A part is a predictable word, also
/// written with digits for letters, the shop's or the person's name, a run of the alphabet or the keyboard, a year, a repetition, or
/// one other character.
/// </summary>
internal static class PasswordRules
{
    /// <summary>The fewest parts: seven characters by chance are beyond the tries that a name has here in years.</summary>
    private const int FewestParts = 7;

    private const int ShortestRun = 3;

    /// <summary>What is behind makes a password no worse.</summary>
    private const int MostLookedAt = 64;

    private static readonly string[] Rows = [.. new[]
    {
        "abcdefghijklmnopqrstuvwxyz", "01234567890", "qwertyuiop", "qwertzuiop", "azertyuiop", "asdfghjklñ", "zxcvbnm",
        "1qaz2wsx3edc4rfv5tgb6yhn7ujm8ik9ol0p", "qazwsxedcrfvtgbyhnujmikolp", "1q2w3e4r5t6y7u8i9o0p", "!@#$%^&*()",
    }.SelectMany(row => new[] { row, new string([.. row.Reverse()]) })];

    private static readonly Lazy<IReadOnlyList<string>> Words = new(() =>
    {
        using var reader = new StreamReader(typeof(PasswordRules).Assembly.GetManifestResourceStream("predictable-words.txt")!);
        return [.. reader.ReadToEnd().Split('\n').Where(line => !line.StartsWith('#')).SelectMany(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Distinct()];
    });

    /// <summary>True for a password that is made of few parts.</summary>
    /// <param name="password">The password.</param>
    /// <param name="names">The person's name and the shop's, which a guesser knows.</param>
    public static bool IsEasy(string password, params IEnumerable<string> names)
    {
        var text = password.ToLowerInvariant();
        text = text[..Math.Min(text.Length, MostLookedAt)];
        string[] readings = [text, WithLetters(text, one: 'i'), WithLetters(text, one: 'l')];
        var words = names.SelectMany(name => name.ToLower(CultureInfo.InvariantCulture).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Where(word => word.Length >= ShortestRun).Concat(Words.Value).ToList();
        // The fewest parts that reach each place.
        var parts = new int[text.Length + 1];
        Array.Fill(parts, int.MaxValue, 1, text.Length);
        for (var at = 0; at < text.Length; at++)
        {
            foreach (var length in LengthsAt(text, readings, words, at))
                parts[at + length] = Math.Min(parts[at + length], parts[at] + 1);
        }
        return parts[^1] < FewestParts;
    }

    /// <summary>How long the parts are that begin at a place.</summary>
    private static IEnumerable<int> LengthsAt(string text, string[] readings, List<string> words, int at)
    {
        yield return 1;
        foreach (var word in words.Where(word => readings.Any(reading => string.CompareOrdinal(reading, at, word, 0, word.Length) == 0)))
            yield return word.Length;
        for (var length = ShortestRun; at + length <= text.Length && Rows.Any(row => row.Contains(text.Substring(at, length), StringComparison.Ordinal)); length++)
            yield return length;
        if (at + 4 <= text.Length && Pins.IsYear(text.AsSpan(at, 4)))
            yield return 4;
        // What was just there comes again, once or more.
        for (var block = 1; block <= at && at + block <= text.Length; block++)
        {
            var length = 0;
            while (at + length + block <= text.Length && string.CompareOrdinal(text, at - block, text, at + length, block) == 0)
                yield return length += block;
        }
    }

    private static string WithLetters(string text, char one) => string.Concat(text.Select(c => c switch
    {
        '0' => 'o',
        '1' or '!' or '|' => one,
        '3' => 'e',
        '4' or '@' => 'a',
        '5' or '$' => 's',
        '7' => 't',
        '8' => 'b',
        '9' => 'g',
        _ => c,
    }));
}
