using CutShop.Shop.Store;

namespace CutShop.Shop.People;

/// <summary>What a program with a key may do.</summary>
public enum KeyScope
{
    /// <summary>Read jobs, their paper and the changes.</summary>
    Read,

    /// <summary>Read, and take jobs in.</summary>
    TakeIn,
}

/// <summary>A key for a program.</summary>
/// <param name="Id">Row id.</param>
/// <param name="Name">What the shop calls it.</param>
/// <param name="Scope">What it allows.</param>
/// <param name="MadeBy">Who made it.</param>
/// <param name="MadeAt">When, UTC.</param>
/// <param name="LastUsedAt">When it was last used, UTC, to the minute; null where it never was.</param>
/// <param name="RevokedAt">When it was revoked, UTC, or null.</param>
public sealed record ApiKey(
    long Id, string Name, KeyScope Scope, string MadeBy, DateTimeOffset MadeAt, DateTimeOffset? LastUsedAt, DateTimeOffset? RevokedAt);

/// <summary>Keys for programs: 256 random bits each, shown once, kept as a hash.</summary>
public sealed class ApiKeyShelf(ShopDatabase database)
{
    private const string Prefix = "cutshop_";
    private const int LongestName = 60;
    private const string Columns = "SELECT id, name, scope, made_by, made_at, last_used_at, revoked_at FROM api_keys";

    /// <summary>How exactly the last use is kept; more would be a write a request.</summary>
    private static readonly TimeSpan UseIsKeptTo = TimeSpan.FromMinutes(1);

    private static readonly Dictionary<string, KeyScope> Scopes = Enum.GetValues<KeyScope>().ToDictionary(NameOf);

    /// <summary>A scope's name.</summary>
    public static string NameOf(KeyScope scope) => scope switch
    {
        KeyScope.Read => "read",
        KeyScope.TakeIn => "take-in",
        _ => throw new ArgumentOutOfRangeException(nameof(scope), scope, message: null),
    };

    /// <summary>The problem of a scope that is not known.</summary>
    public static FieldProblem UnknownScope(string? name) => new("scope", name ?? "", PeopleReplies.Of("Scope"));

    /// <summary>The scope of a name, or null.</summary>
    public static KeyScope? ScopeNamed(string? name) => name is not null && Scopes.TryGetValue(name, out var scope) ? scope : null;

    /// <summary>All keys, the newest first, revoked ones too.</summary>
    public IReadOnlyList<ApiKey> All() => database.Read(session =>
        session.All<KeyRow>($"{Columns} ORDER BY id DESC").Select(row => row.ToKey()).ToList());

    /// <summary>Makes a key.</summary>
    /// <returns>The answer, and the key itself, which is not kept and cannot be shown again.</returns>
    public async Task<(PersonAnswer Answer, string Key)> MakeAsync(string name, KeyScope scope, string who, CancellationToken cancel = default)
    {
        var tidy = PersonRows.Tidy(name);
        if (tidy.Length is 0 or > LongestName || tidy.Any(char.IsControl))
            return (PersonAnswer.Refused("name", tidy, "KeyName", LongestName), "");
        var key = Prefix + Secrets.DrawToken();
        var id = await database.WriteAsync(
            session =>
            {
                var id = session.Insert(
                    "INSERT INTO api_keys (name, scope, key_hash, made_by, made_at) VALUES (@tidy, @scope, @hash, @who, @Now)",
                    new { tidy, scope = NameOf(scope), hash = Secrets.HashOfToken(key), who, session.Now });
                Actors.AddKey(session, id);
                session.Record("API key", id, who, HistoryCodes.KeyMade, after: NameOf(scope));
                return id;
            },
            cancel).ConfigureAwait(false);
        return (PersonAnswer.Done(id), key);
    }

    /// <summary>Revokes a key for good.</summary>
    public Task<PersonAnswer> RevokeAsync(long id, string who, CancellationToken cancel = default) => database.WriteAsync(
        session =>
        {
            if (session.Execute("UPDATE api_keys SET revoked_at = @Now WHERE id = @id AND revoked_at IS NULL", new { session.Now, id }) == 0)
                return PersonAnswer.Refused("key", "", "ActiveKey");
            session.Record("API key", id, who, HistoryCodes.KeyRevoked, "in use", "revoked");
            return PersonAnswer.Done(id);
        },
        cancel);

    /// <summary>The key that a request carries, its use noted; null where there is no such key or it is revoked.</summary>
    public async Task<ApiKey?> UseAsync(string key, CancellationToken cancel = default)
    {
        var hash = Secrets.HashOfToken(key);
        var (found, now) = database.Read(session => (
            session.FirstOrDefault<KeyRow>($"{Columns} WHERE key_hash = @hash AND revoked_at IS NULL", new { hash })?.ToKey(), session.Now));
        if (found is null || now - found.LastUsedAt < UseIsKeptTo)
            return found;
        await database.WriteAsync(
            session => session.Execute("UPDATE api_keys SET last_used_at = @Now WHERE id = @Id", new { session.Now, found.Id }), cancel).ConfigureAwait(false);
        return found;
    }

    private sealed record KeyRow(
        long Id, string Name, string Scope, string MadeBy, DateTimeOffset MadeAt, DateTimeOffset? LastUsedAt, DateTimeOffset? RevokedAt)
    {
        public ApiKey ToKey() => new(
            Id, Name, ScopeNamed(Scope) ?? throw new InvalidDataException($"No scope is named \"{Scope}\"."), MadeBy, MadeAt, LastUsedAt, RevokedAt);
    }
}
