using CutShop.Shop.Store;

namespace CutShop.Shop.People;

/// <summary>How a try to sign in went.</summary>
public enum SignInOutcome
{
    /// <summary>Name and secret are right.</summary>
    Right,

    /// <summary>Name or secret is wrong; which of them is not said.</summary>
    Wrong,

    /// <summary>Too many wrong tries; the name has to wait there, whether anyone has it or not.</summary>
    Locked,
}

/// <summary>The answer to an attempt to sign in.</summary>
/// <param name="Outcome">How it went.</param>
/// <param name="Person">The person, where it is right.</param>
/// <param name="Tried">The name of the person whose name was typed, for the log and not for who typed it; null where nobody has it.</param>
/// <param name="Wait">How long this name has to wait there; zero where it may be tried again.</param>
public sealed record SignInAnswer(SignInOutcome Outcome, Person? Person, string? Tried, TimeSpan Wait);

/// <summary>Checks names with passwords or PINs. An unknown name is answered in the same way and takes the same time as a known one.</summary>
public sealed class SignIn(ShopDatabase database)
{
    private const string Password = "password";
    private const string Pin = "PIN";

    /// <summary>How many wrong tries a name has at one place before it has to wait.</summary>
    public const int MostTries = SignInTries.Most;

    /// <summary>How many wrong tries a name has at all places together that the shop does not know.</summary>
    public const int MostTriesAnywhere = SignInTries.MostAnywhere;

    /// <summary>The first wait; each that follows is twice as long.</summary>
    public static TimeSpan FirstWait => SignInTries.FirstWait;

    /// <summary>The longest wait.</summary>
    public static TimeSpan LongestWait => SignInTries.LongestWait;

    /// <summary>Checks a name and a password.</summary>
    public Task<SignInAnswer> WithPasswordAsync(string name, string password, SignInPlace place, CancellationToken cancel = default) =>
        TryAsync(name, password, Password, row => row.PasswordHash, place, cancel);

    /// <summary>Checks a name and a PIN. The caller has made sure that it was typed on an enrolled tablet.</summary>
    public Task<SignInAnswer> WithPinAsync(string name, string pin, SignInPlace place, CancellationToken cancel = default) =>
        TryAsync(name, pin, Pin, row => row.PinHash, place, cancel);

    private async Task<SignInAnswer> TryAsync(string name, string secret, string way, Func<PersonRow, string?> hashOf, SignInPlace place, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(place);
        var ((wait, isLast), row) = await database.WriteAsync(
            session => (SignInTries.Count(session, name, way, place), PersonRows.Named(session, name)), cancel).ConfigureAwait(false);
        if (wait > TimeSpan.Zero)
            return new(SignInOutcome.Locked, Person: null, row?.Name, wait);

        // Slow by design, so outside the gate that all writes go through.
        var hash = row is { IsActive: true } ? hashOf(row) : null;
        if (Secrets.IsRight(hash, secret))
        {
            var better = Secrets.IsOfNow(hash!) ? null : Secrets.Hash(secret);
            await database.WriteAsync(session => Enter(session, row!, way, place, hash!, better), cancel).ConfigureAwait(false);
            return new(SignInOutcome.Right, row!.ToPerson(), row.Name, TimeSpan.Zero);
        }
        if (!isLast)
            return new(SignInOutcome.Wrong, Person: null, row?.Name, TimeSpan.Zero);
        var next = await database.WriteAsync(session => Lock(session, row, way, SignInTries.WaitOf(session, name, way, place), SignInTries.TriesOf(session, name, way, place)), cancel).ConfigureAwait(false);
        return new(SignInOutcome.Locked, Person: null, row?.Name, next);
    }

    /// <summary>Starts the count again. A secret that was hashed more quickly than is advised now is hashed as is advised; that is no new secret, so nothing that is signed in ends.</summary>
    private static bool Enter(ShopSession session, PersonRow row, string way, SignInPlace place, string hash, string? better)
    {
        SignInTries.Forget(session, row.Name, way, place);
        if (better is null)
            return true;
        var column = way == Pin ? "pin_hash" : "password_hash";
        session.Execute($"UPDATE people SET {column} = @better WHERE id = @Id AND {column} = @hash", new { better, row.Id, hash });
        return true;
    }

    /// <summary>The count is kept already; the history says so too, and for an unknown name as well, so that both take as long.</summary>
    private static TimeSpan Lock(ShopSession session, PersonRow? row, string way, TimeSpan wait, long tries)
    {
        var (id, who) = row is null ? (0, "a name that nobody has") : (row.Id, row.Name);
        var minutes = (long)Math.Ceiling(wait.TotalMinutes);
        session.Record("person", id, who, HistoryCodes.SignInLocked, reason: Reason.Because(HistoryCause.WrongTries), details: new { minutes, tries, way });
        return wait;
    }
}
