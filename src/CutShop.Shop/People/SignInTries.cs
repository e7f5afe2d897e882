using CutShop.Shop.Store;

namespace CutShop.Shop.People;

/// <summary>Where somebody tries to sign in.</summary>
/// <param name="Name">The place by which tries are counted, such as a network address, a browser or a tablet.</param>
/// <param name="IsKnown">True where the person has signed in before, or an enrolled tablet: strangers' tries elsewhere do not lock it.</param>
public sealed record SignInPlace(string Name, bool IsKnown);

/// <summary>
/// Counts tries to sign in, in the database, so that a restart does not forget them. A try is counted before the secret is
/// looked at: many at the same moment get no further than one after the other. From one place a name has five tries, then a wait
/// that doubles with each; from all places together that the shop does not know, fifty.
/// </summary>
/// <remarks>Of NIST SP 800-63B 5.2.2: wrong tries of one account in a row are limited, with a wait that grows, and what was right before is let in beside.</remarks>
internal static class SignInTries
{
    public const int Most = 5;
    public const int MostAnywhere = 50;

    public static readonly TimeSpan FirstWait = TimeSpan.FromSeconds(30);
    public static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(15);

    /// <summary>How long a wrong try counts.</summary>
    public static readonly TimeSpan Remembered = TimeSpan.FromDays(1);

    private const string Anywhere = "";

    /// <summary>Counts a try, unless the name has to wait there.</summary>
    /// <returns>How long it has to wait, or zero; and true where this try was the last before a wait.</returns>
    public static (TimeSpan Wait, bool IsLast) Count(ShopSession session, string name, string way, SignInPlace place)
    {
        // A try of a clock that was ahead would make its name wait until then.
        session.Execute(
            "DELETE FROM sign_in_tries WHERE last_at <= @forgotten OR last_at > @ahead", new { forgotten = session.Now - Remembered, ahead = session.Now + LongestWait });
        if (WaitOf(session, name, way, place) is var wait && wait > TimeSpan.Zero)
            return (wait, IsLast: false);
        foreach (var (at, _) in Limits(place))
        {
            session.Execute(
                """
                INSERT INTO sign_in_tries (name_hash, way, place_hash, tries, last_at) VALUES (@name, @way, @place, 1, @Now)
                ON CONFLICT (name_hash, way, place_hash) DO UPDATE SET tries = sign_in_tries.tries + 1, last_at = excluded.last_at
                """,
                new { name = HashOf(name), way, place = Secrets.HashOfToken(at), session.Now });
        }
        return (TimeSpan.Zero, WaitOf(session, name, way, place) > TimeSpan.Zero);
    }

    /// <summary>How long a name has to wait at a place, as of now.</summary>
    public static TimeSpan WaitOf(ShopSession session, string name, string way, SignInPlace place) => Limits(place).Max(limit =>
        Find(session, name, way, limit.Place) is { } tried ? WaitAfter(tried.Tries - limit.Most) - (session.Now - tried.LastAt) : TimeSpan.Zero);

    /// <summary>How many tries made the name wait: of the limits that are reached, the one with the most.</summary>
    public static long TriesOf(ShopSession session, string name, string way, SignInPlace place) => Limits(place)
        .Select(limit => Find(session, name, way, limit.Place) is { } tried && tried.Tries >= limit.Most ? tried.Tries : 0).Max();

    /// <summary>Starts the count again: a secret was set.</summary>
    public static void Forget(ShopSession session, string name) =>
        session.Execute("DELETE FROM sign_in_tries WHERE name_hash = @hash", new { hash = HashOf(name) });

    /// <summary>Starts the count of one way again at a place: the secret was right.</summary>
    public static void Forget(ShopSession session, string name, string way, SignInPlace place) => session.Execute(
        "DELETE FROM sign_in_tries WHERE name_hash = @hash AND way = @way AND place_hash IN (@here, @anywhere)",
        new { hash = HashOf(name), way, here = Secrets.HashOfToken(place.Name), anywhere = Secrets.HashOfToken(Anywhere) });

    /// <summary>The wait after so many tries more than are free: none, then twice as long each time.</summary>
    internal static TimeSpan WaitAfter(long more) =>
        more < 0 ? TimeSpan.Zero
        : more > 10 || FirstWait * (1 << (int)more) > LongestWait ? LongestWait
        : FirstWait * (1 << (int)more);

    private static IEnumerable<(string Place, int Most)> Limits(SignInPlace place) =>
        place.IsKnown ? [(place.Name, Most)] : [(place.Name, Most), (Anywhere, MostAnywhere)];

    private static Tried? Find(ShopSession session, string name, string way, string place) => session.FirstOrDefault<Tried>(
        "SELECT tries, last_at FROM sign_in_tries WHERE name_hash = @name AND way = @way AND place_hash = @place",
        new { name = HashOf(name), way, place = Secrets.HashOfToken(place) });

    private static string HashOf(string name) => Secrets.HashOfToken(PersonRows.KeyOf(name));

    private sealed record Tried(long Tries, DateTimeOffset LastAt);
}
