using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using CutShop.Takeoff;
using Microsoft.AspNetCore.Identity;

namespace CutShop.Shop;

/// <summary>
/// Passwords, PINs and tokens. What a person thinks up is hashed slowly with a salt; what is drawn from 256 random bits
/// needs neither and is hashed once.
/// </summary>
internal static class Secrets
{
    public const int ShortestPassword = 10;
    public const int LongestPassword = 200;
    public const int ShortestPin = 4;
    public const int LongestPin = 8;

    private static readonly PasswordHasher<Person> Hasher = new();

    /// <summary>Compared with where there is no hash, so that an unknown name takes as long as a known one.</summary>
    private static readonly Lazy<string> HashOfNothing = new(() => Hash(Convert.ToHexString(RandomNumberGenerator.GetBytes(32))));

    public static string Hash(string secret) => Hasher.HashPassword(null!, secret);

    /// <summary>Compares a secret with a hash; where there is none it takes as long and is never right.</summary>
    public static bool IsRight(string? hash, string secret)
    {
        var isRight = Hasher.VerifyHashedPassword(null!, hash ?? HashOfNothing.Value, secret) != PasswordVerificationResult.Failed;
        return isRight && hash is not null;
    }

    /// <summary>What is wrong with a new password, or null.</summary>
    public static FieldProblem? ProblemWithPassword(string password, string name) =>
        password.Length is < ShortestPassword or > LongestPassword || password.Distinct().Count() < 4
            || (name.Length > 0 && password.Contains(name, StringComparison.OrdinalIgnoreCase))
            ? new("password", "", $"accepted: {ShortestPassword} to {LongestPassword} characters, at least four different ones, without the name in it")
            : null;

    /// <summary>What is wrong with a new PIN, or null.</summary>
    public static FieldProblem? ProblemWithPin(string pin) =>
        pin.Length is < ShortestPin or > LongestPin || !pin.All(char.IsAsciiDigit) || IsLadder(pin)
            ? new("pin", "", $"accepted: {ShortestPin} to {LongestPin} digits, not all alike and not counting up or down")
            : null;

    /// <summary>A password to hand over: four groups of four symbols without look-alikes, 76 bits.</summary>
    public static string DrawPassword()
    {
        var symbols = PieceCode.Symbols.ToLowerInvariant();
        return string.Join('-', Enumerable.Range(0, 4).Select(_ => RandomNumberGenerator.GetString(symbols, 4)));
    }

    /// <summary>A PIN of six digits.</summary>
    public static string DrawPin()
    {
        string pin;
        do
            pin = RandomNumberGenerator.GetString("0123456789", 6);
        while (ProblemWithPin(pin) is not null);
        return pin;
    }

    /// <summary>256 random bits as text for an address, a cookie or a header.</summary>
    public static string DrawToken() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(32));

    /// <summary>The hash under which a token or a name is kept.</summary>
    public static string HashOfToken(string token) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(token)));

    private static bool IsLadder(string digits)
    {
        var steps = digits.Zip(digits.Skip(1), (a, b) => b - a).Distinct().ToList();
        return steps is [0 or 1 or -1];
    }
}
