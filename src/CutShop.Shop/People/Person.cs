using CutShop.Shop.Store;

namespace CutShop.Shop.People;

/// <summary>What a person does in the shop. Installers need no role: a label's page is open to anyone.</summary>
public enum Role
{
    /// <summary>Everything, people and keys included.</summary>
    Owner,

    /// <summary>The order desk: jobs, stock and plans.</summary>
    Desk,

    /// <summary>Cuts rope.</summary>
    Cutter,

    /// <summary>Drills posts.</summary>
    Driller,
}

/// <summary>A person who may sign in.</summary>
/// <param name="Id">Row id.</param>
/// <param name="Name">The name, as typed to sign in.</param>
/// <param name="Role">What the person does.</param>
/// <param name="HasPin">True where a PIN is set.</param>
/// <param name="MillimetresFirst">Which unit leads on pages; null where the shop's paper decides.</param>
/// <param name="IsActive">False where the person is switched off.</param>
/// <param name="Stamp">Drawn anew when everything signed in under it must end.</param>
/// <param name="AddedAt">When the person was added, UTC.</param>
public sealed record Person(
    long Id, string Name, Role Role, bool HasPin, bool? MillimetresFirst, bool IsActive, string Stamp, DateTimeOffset AddedAt);

/// <summary>Roles as the database and the pages write them.</summary>
public static class RoleNames
{
    private static readonly Dictionary<string, Role> Named = Enum.GetValues<Role>().ToDictionary(NameOf);

    /// <summary>A role's name.</summary>
    public static string NameOf(Role role) => role switch
    {
        Role.Owner => "owner",
        Role.Desk => "desk",
        Role.Cutter => "cutter",
        Role.Driller => "driller",
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, message: null),
    };

    /// <summary>The problem of a role that is not known.</summary>
    public static FieldProblem Unknown(string? name) => new("role", name ?? "", PeopleReplies.Of("Role"));

    /// <summary>The role of a name, or null.</summary>
    public static Role? Find(string? name) => name is not null && Named.TryGetValue(name, out var role) ? role : null;
}

/// <summary>How a change to people, tablets or keys went.</summary>
/// <param name="Id">The row changed or added; 0 where nothing was.</param>
/// <param name="Problem">What is wrong, or null.</param>
public sealed record PersonAnswer(long Id, FieldProblem? Problem)
{
    /// <summary>True where it is stored.</summary>
    public bool IsDone => Problem is null;

    internal static PersonAnswer Done(long id) => new(id, Problem: null);

    internal static PersonAnswer Refused(string field, string value, string key, params IReadOnlyList<object?> values) => new(0, new(field, value, PeopleReplies.Of(key, values)));
}
