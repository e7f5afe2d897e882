using System.Buffers.Binary;
using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using CutShop.Shop.Store;
using CutShop.Takeoff.Result;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace CutShop.Shop.People;

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

    /// <summary>Rounds of PBKDF2-HMAC-SHA512 for a hash: OWASP, Password Storage Cheat Sheet.</summary>
    public const int Rounds = 210_000;

    private const int SaltBytes = 16;

    // Where a hash of the framework's form 3 says its rounds, after its mark and the name of its function.
    private const int RoundsAt = 5;

    private static readonly PasswordHasher<Person> Hasher = new(Options.Create(new PasswordHasherOptions { IterationCount = Rounds }));

    /// <summary>Compared with where there is no hash, so that an unknown name takes as long as a known one.</summary>
    private static readonly Lazy<string> HashOfNothing = new(() => Hash(Convert.ToHexString(RandomNumberGenerator.GetBytes(32))));

    public static string Hash(string secret) => Hasher.HashPassword(null!, secret);

    /// <summary>Compares a secret with a hash; where there is none it takes as long and is never right.</summary>
    public static bool IsRight(string? hash, string secret)
    {
        var compared = hash ?? HashOfNothing.Value;
        var isRight = Hasher.VerifyHashedPassword(null!, compared, secret) != PasswordVerificationResult.Failed;
        // A hash of fewer rounds would tell by its time that somebody has the name.
        if (Rounds - RoundsOf(compared) is > 0 and var left)
            Rfc2898DeriveBytes.Pbkdf2(secret, new byte[SaltBytes], left, HashAlgorithmName.SHA512, SaltBytes);
        return isRight && hash is not null;
    }

    /// <summary>True for a hash of as many rounds as are advised now.</summary>
    public static bool IsOfNow(string hash) => RoundsOf(hash) >= Rounds;

    private static int RoundsOf(string hash) => BinaryPrimitives.ReadInt32BigEndian(Convert.FromBase64String(hash).AsSpan(RoundsAt));

    /// <summary>What is wrong with a new password, or null.</summary>
    /// <param name="session">The transaction, for the shop's name.</param>
    /// <param name="password">The password.</param>
    /// <param name="name">The person's name.</param>
    public static FieldProblem? ProblemWithPassword(ShopSession session, string password, string name) =>
        password.Length is < ShortestPassword or > LongestPassword || (name.Length > 0 && password.Contains(name, StringComparison.OrdinalIgnoreCase))
            ? new("password", "", PeopleReplies.Of("Password", ShortestPassword, LongestPassword))
        : PasswordRules.IsEasy(password, name, LetterheadShelf.NameIn(session))
            ? new("password", "", PeopleReplies.Of("EasyPassword"))
        : null;

    /// <summary>What is wrong with a new PIN, or null.</summary>
    public static FieldProblem? ProblemWithPin(string pin) =>
        pin.Length is < ShortestPin or > LongestPin || !pin.All(char.IsAsciiDigit) || Pins.IsUsual(pin)
            ? new("pin", "", PeopleReplies.Of("Pin", ShortestPin, LongestPin))
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
}
