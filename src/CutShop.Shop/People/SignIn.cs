namespace CutShop.Shop;

/// <summary>How a try to sign in went.</summary>
public enum SignInOutcome
{
    /// <summary>Name and secret are right.</summary>
    Right,

    /// <summary>Name or secret is wrong; which of them is not told.</summary>
    Wrong,

    /// <summary>Too many wrong tries; the name is locked for a while, whether anyone has it or not.</summary>
    Locked,
}

/// <summary>A try to sign in, answered.</summary>
/// <param name="Outcome">How it went.</param>
/// <param name="Person">The person, where it is right.</param>
public sealed record SignInAnswer(SignInOutcome Outcome, Person? Person);

/// <summary>Checks names with passwords or PINs. An unknown name is answered in the same way and takes the same time as a known one.</summary>
public sealed class SignIn(ShopDatabase database)
{
    private const string Password = "password";
    private const string Pin = "PIN";

    /// <summary>How many wrong tries lock a name.</summary>
    public const int MostTries = SignInTries.Most;

    /// <summary>How long a name stays locked.</summary>
    public static TimeSpan LockedFor => SignInTries.LockedFor;

    /// <summary>Checks a name and a password.</summary>
    public Task<SignInAnswer> WithPasswordAsync(string name, string password, CancellationToken cancel = default) =>
        TryAsync(name, password, Password, row => row.PasswordHash, cancel);

    /// <summary>Checks a name and a PIN. The caller has made sure that it was typed on an enrolled tablet.</summary>
    public Task<SignInAnswer> WithPinAsync(string name, string pin, CancellationToken cancel = default) =>
        TryAsync(name, pin, Pin, row => row.PinHash, cancel);

    private async Task<SignInAnswer> TryAsync(string name, string secret, string way, Func<PersonRow, string?> hashOf, CancellationToken cancel)
    {
        var (tries, row) = await database.WriteAsync(
            session => (SignInTries.Count(session, name, way), PersonRows.Named(session, name)), cancel).ConfigureAwait(false);
        if (tries is null)
            return new(SignInOutcome.Locked, Person: null);

        // Slow by design, so outside the gate that all writes go through.
        var isRight = Secrets.IsRight(row is { IsActive: true } ? hashOf(row) : null, secret);
        if (isRight)
        {
            await database.WriteAsync(session => { SignInTries.Forget(session, name, way); return true; }, cancel).ConfigureAwait(false);
            return new(SignInOutcome.Right, row!.ToPerson());
        }
        if (tries < MostTries)
            return new(SignInOutcome.Wrong, Person: null);
        await database.WriteAsync(session => Lock(session, row, way), cancel).ConfigureAwait(false);
        return new(SignInOutcome.Locked, Person: null);
    }

    /// <summary>The count is kept already; the history says so too, and for an unknown name as well, so that both take as long.</summary>
    private static bool Lock(ShopSession session, PersonRow? row, string way)
    {
        var (id, who) = row is null ? (0, "a name that nobody has") : (row.Id, row.Name);
        session.Record(
            "person",
            id,
            who,
            HistoryCodes.SignInLocked,
            reason: Reason.Because(HistoryCause.WrongTries),
            details: new { minutes = (long)LockedFor.TotalMinutes, tries = MostTries, way });
        return true;
    }
}
