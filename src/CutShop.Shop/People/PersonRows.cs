using CutShop.Shop.Store;

namespace CutShop.Shop.People;

/// <summary>How people stand in the database.</summary>
internal static class PersonRows
{
    public const string Active = "active";
    public const string SwitchedOff = "switched off";
    public const int LongestName = 60;

    private const string Columns =
        "SELECT id, name, role, millimetres_first, state, stamp, added_at, password_hash, pin_hash FROM people";

    /// <summary>The name without double spaces, composed, in capitals: one person has one.</summary>
    public static string KeyOf(string name) => Tidy(name).ToUpperInvariant();

    /// <summary>The name as it is kept.</summary>
    public static string Tidy(string name) =>
        string.Join(' ', name.Normalize().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    public static IReadOnlyList<Person> All(ShopSession session) =>
        [.. AllRows(session).Select(row => row.ToPerson())];

    public static IReadOnlyList<PersonRow> AllRows(ShopSession session) => session.All<PersonRow>($"{Columns} ORDER BY state, name_key");

    public static PersonRow? ById(ShopSession session, long id) =>
        session.FirstOrDefault<PersonRow>($"{Columns} WHERE id = @id", new { id });

    public static PersonRow? Named(ShopSession session, string name) =>
        session.FirstOrDefault<PersonRow>($"{Columns} WHERE name_key = @key", new { key = KeyOf(name) });

    /// <summary>What is wrong with a new name, or null.</summary>
    public static FieldProblem? ProblemWithName(ShopSession session, string name)
    {
        var tidy = Tidy(name);
        if (tidy.Length is 0 or > LongestName || tidy.Any(char.IsControl))
            return new("name", tidy, PeopleReplies.Of("Name", LongestName));
        return Named(session, tidy) is null ? null : new("name", tidy, PeopleReplies.Of("NameTaken"));
    }
}

/// <summary>A row of people.</summary>
internal sealed record PersonRow(
    long Id,
    string Name,
    string Role,
    long? MillimetresFirst,
    string State,
    string Stamp,
    DateTimeOffset AddedAt,
    string PasswordHash,
    string? PinHash)
{
    public bool IsActive => State == PersonRows.Active;

    public Person ToPerson() => new(
        Id,
        Name,
        RoleNames.Find(Role) ?? throw new InvalidDataException($"No role is named \"{Role}\"."),
        PinHash is not null,
        MillimetresFirst is { } first ? first == 1 : null,
        IsActive,
        Stamp,
        AddedAt);
}
