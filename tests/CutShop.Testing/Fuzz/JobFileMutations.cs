using System.Text;
using System.Text.RegularExpressions;

namespace CutShop.Testing.Fuzz;

/// <summary>Good job files with something done to them: bytes flipped, tokens swapped, numbers made huge, nesting, truncation, another file's tail.</summary>
internal sealed partial class JobFileMutations
{
    private const int MostFlips = 8;
    private const int MostSwaps = 3;
    private const int DeepestNesting = 2_000;

    private readonly IReadOnlyList<byte[]> _files;
    private readonly IReadOnlyList<string[]> _tokens;
    private readonly IReadOnlyList<Func<Random, byte[]>> _kinds;

    /// <param name="files">The good files.</param>
    public JobFileMutations(IReadOnlyList<byte[]> files)
    {
        _files = files;
        _tokens = [.. files.Select(file => Token().Matches(Encoding.UTF8.GetString(file)).Select(match => match.Value).ToArray())];
        _kinds = [Flipped, Swapped, Huge, Nested, Truncated, Replaced];
    }

    /// <summary>The file of a seed: the same seed gives the same file.</summary>
    public byte[] Make(int seed)
    {
        var random = new Random(seed);
        return random.Of(_kinds)(random);
    }

    private byte[] Flipped(Random random)
    {
        var bytes = random.Of(_files).ToArray();
        for (var i = random.Next(MostFlips); i >= 0; i--)
            bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8));
        return bytes;
    }

    private byte[] Swapped(Random random)
    {
        var tokens = random.Of(_tokens).ToArray();
        for (var i = random.Next(MostSwaps); i >= 0; i--)
        {
            var (a, b) = (random.Next(tokens.Length), random.Next(tokens.Length));
            (tokens[a], tokens[b]) = (tokens[b], tokens[a]);
        }
        return Joined(tokens);
    }

    /// <summary>A number inside one of the texts, such as a length's.</summary>
    private byte[] Huge(Random random)
    {
        var tokens = random.Of(_tokens).ToArray();
        var withDigits = tokens.Index().Where(token => token.Item.Any(char.IsAsciiDigit)).Select(token => token.Index).ToArray();
        var at = random.Of(withDigits);
        var digits = random.Of(Digits().Matches(tokens[at]).ToArray());
        tokens[at] = tokens[at][..digits.Index] + random.Of(Hostile.Numbers) + tokens[at][(digits.Index + digits.Length)..];
        return Joined(tokens);
    }

    private byte[] Nested(Random random)
    {
        var tokens = random.Of(_tokens).ToArray();
        var (at, deep) = (random.Next(tokens.Length), 1 + random.Next(DeepestNesting));
        var isList = random.Next(2) == 0;
        var open = string.Concat(Enumerable.Repeat(isList ? "[" : "{\"a\":", deep));
        tokens[at] = open + tokens[at] + (random.Next(4) == 0 ? "" : new string(isList ? ']' : '}', deep));
        return Joined(tokens);
    }

    private byte[] Truncated(Random random)
    {
        var (file, other) = (random.Of(_files), random.Of(_files));
        var head = file[..random.Next(file.Length)];
        return random.Next(2) == 0 ? head : [.. head, .. other[random.Next(other.Length)..]];
    }

    /// <summary>Whole values replaced by what breaks programs.</summary>
    private byte[] Replaced(Random random)
    {
        var tokens = random.Of(_tokens).ToArray();
        for (var i = random.Next(MostSwaps); i >= 0; i--)
            tokens[random.Next(tokens.Length)] = random.Next(4) == 0 ? random.Of(Hostile.Numbers) : $"\"{Hostile.Any(random).Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
        return Joined(tokens);
    }

    private static byte[] Joined(IEnumerable<string> tokens) => Encoding.UTF8.GetBytes(string.Join(' ', tokens));

    [GeneratedRegex("\"(?:[^\"\\\\]|\\\\.)*\"|[-+.0-9eE]+|true|false|null|[{}\\[\\]:,]", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Token();

    [GeneratedRegex("[0-9]+", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Digits();
}
