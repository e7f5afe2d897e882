namespace CutShop.Shop.Store;

/// <summary>
/// Who did what the history says: a person, a program's key, or a name without a record, such as that of whoever typed a command.
/// The history has an actor's row id, so that a person's name is in the person's record alone.
/// </summary>
public static class Actors
{
    private const string KeyPrefix = "key ";

    /// <summary>A program as the history names it.</summary>
    /// <param name="key">The name of its key.</param>
    public static string NameOfKey(string? key) => KeyPrefix + key;

    /// <summary>A subquery of an actor's name as of now.</summary>
    /// <param name="id">SQL of the actor's row id.</param>
    internal static string NameOf(string id) =>
        $"""
        (SELECT coalesce(people.name, '{KeyPrefix}' || api_keys.name, actors.name)
         FROM actors LEFT JOIN people ON people.id = person_id LEFT JOIN api_keys ON api_keys.id = api_key_id
         WHERE actors.id = {id})
        """;

    /// <summary>Makes the actor of a new person.</summary>
    internal static void AddPerson(ShopSession session, long personId) =>
        session.Execute("INSERT INTO actors (person_id) VALUES (@personId)", new { personId });

    /// <summary>Makes the actor of a new key.</summary>
    internal static void AddKey(ShopSession session, long keyId) =>
        session.Execute("INSERT INTO actors (api_key_id) VALUES (@keyId)", new { keyId });

    /// <summary>The actor of a name: a person's before a key's, and of keys with one name the newest. A name that nobody has gets an actor.</summary>
    internal static long IdOf(ShopSession session, string who)
    {
        if (Find(session, who) is { } known)
            return known;
        // Beside others who take tickets another may just have added it.
        session.Execute("INSERT INTO actors (name) VALUES (@who) ON CONFLICT DO NOTHING", new { who });
        return Find(session, who)!.Value;
    }

    private static long? Find(ShopSession session, string who) => session.FirstOrDefault<long?>(
        $"""
        SELECT id FROM (
          SELECT actors.id, 1 AS place FROM people JOIN actors ON person_id = people.id WHERE people.name = @who
          UNION ALL
          SELECT actors.id, 2 FROM api_keys JOIN actors ON api_key_id = api_keys.id WHERE '{KeyPrefix}' || api_keys.name = @who
          UNION ALL
          SELECT id, 3 FROM actors WHERE name = @who) AS named
        ORDER BY place, id DESC LIMIT 1
        """,
        new { who });
}
