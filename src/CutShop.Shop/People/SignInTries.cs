namespace CutShop.Shop;

/// <summary>
/// Counts tries to sign in, in the database, so that a restart does not forget them. A try is counted before the secret is
/// looked at: many at the same moment get no further than one after the other.
/// </summary>
internal static class SignInTries
{
    public const int Most = 5;

    /// <summary>How long a name stays locked after its last counted try, and how long a wrong try counts.</summary>
    public static readonly TimeSpan LockedFor = TimeSpan.FromMinutes(15);

    /// <summary>Counts a try, unless the name is locked.</summary>
    /// <returns>How many tries this name has had, this one included; null where it is locked.</returns>
    public static long? Count(ShopSession session, string name, string way)
    {
        // A try of a clock that was ahead would lock its name until then.
        session.Execute(
            "DELETE FROM sign_in_tries WHERE last_at <= @forgotten OR last_at > @ahead", new { forgotten = session.Now - LockedFor, ahead = session.Now + LockedFor });
        var hash = HashOf(name);
        var tries = session.FirstOrDefault<long>("SELECT tries FROM sign_in_tries WHERE name_hash = @hash AND way = @way", new { hash, way });
        if (tries >= Most)
            return null;
        session.Execute(
            """
            INSERT INTO sign_in_tries (name_hash, way, tries, last_at) VALUES (@hash, @way, 1, @Now)
            ON CONFLICT (name_hash, way) DO UPDATE SET tries = sign_in_tries.tries + 1, last_at = excluded.last_at
            """,
            new { hash, way, session.Now });
        return tries + 1;
    }

    /// <summary>Starts the count again: the secret was right, or was set anew.</summary>
    public static void Forget(ShopSession session, string name) =>
        session.Execute("DELETE FROM sign_in_tries WHERE name_hash = @hash", new { hash = HashOf(name) });

    /// <summary>Starts the count of one way again.</summary>
    public static void Forget(ShopSession session, string name, string way) =>
        session.Execute("DELETE FROM sign_in_tries WHERE name_hash = @hash AND way = @way", new { hash = HashOf(name), way });

    private static string HashOf(string name) => Secrets.HashOfToken(PersonRows.KeyOf(name));
}
