using CutShop.Shop.People;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;

namespace CutShop.Web.Shared;

/// <summary>
/// What one may do, and who may: the one table of rights. Each name is a policy for <c>[Authorize(Policy = Rights.ManageJobs)]</c>.
/// 
/// A page that all may read and some may send asks <see cref="MaySendAttribute"/>. What has no policy asks for someone who is signed in, and what is open to anyone says <c>[AllowAnonymous]</c>.
/// </summary>
public static class Rights
{
    /// <summary>Take jobs in, change them, quote them.</summary>
    public const string ManageJobs = nameof(ManageJobs);

    /// <summary>See prices and costs.</summary>
    public const string SeePrices = nameof(SeePrices);

    /// <summary>Receive, adjust and retire coils.</summary>
    public const string ManageStock = nameof(ManageStock);

    /// <summary>Make and accept cut plans.</summary>
    public const string PlanCuts = nameof(PlanCuts);

    /// <summary>Set kerf, trims, coil lengths and prices.</summary>
    public const string ChangeSettings = nameof(ChangeSettings);

    /// <summary>Claim cut tickets and report pieces cut.</summary>
    public const string CutRope = nameof(CutRope);

    /// <summary>Claim drill tickets and report posts drilled.</summary>
    public const string DrillPosts = nameof(DrillPosts);

    /// <summary>Take a ticket over from whoever has it at the bench.</summary>
    public const string TakeTicketsOver = nameof(TakeTicketsOver);

    /// <summary>Put pieces into their job's parcel.</summary>
    public const string PackJobs = nameof(PackJobs);

    /// <summary>Enrol and remove the tablets where a PIN is enough. Asks for a password sign-in.</summary>
    public const string EnrolTablets = nameof(EnrolTablets);

    /// <summary>Add people, change roles, reset passwords. Asks for a password sign-in.</summary>
    public const string ManagePeople = nameof(ManagePeople);

    /// <summary>Make and revoke keys for programs. Asks for a password sign-in.</summary>
    public const string ManageKeys = nameof(ManageKeys);

    private static readonly (string Policy, Role[] Roles, bool AsksForPassword)[] All =
    [
        (ManageJobs, [Role.Owner, Role.Desk], false),
        (SeePrices, [Role.Owner, Role.Desk], false),
        (ManageStock, [Role.Owner, Role.Desk, Role.Cutter], false),
        (PlanCuts, [Role.Owner, Role.Desk, Role.Cutter], false),
        (ChangeSettings, [Role.Owner, Role.Desk], false),
        (CutRope, [Role.Owner, Role.Cutter], false),
        (DrillPosts, [Role.Owner, Role.Driller], false),
        (TakeTicketsOver, [Role.Owner], false),
        (PackJobs, [Role.Owner, Role.Desk, Role.Cutter, Role.Driller], false),
        (EnrolTablets, [Role.Owner, Role.Desk], true),
        (ManagePeople, [Role.Owner], true),
        (ManageKeys, [Role.Owner], true),
    ];

    /// <summary>The roles that may do this.</summary>
    public static IReadOnlyList<Role> RolesOf(string policy) => All.Single(right => right.Policy == policy).Roles;

    /// <summary>True where the person who asks may do this: for a page that shows a form only to who may send it.</summary>
    public static bool Do(HttpContext context, string policy)
    {
        ArgumentNullException.ThrowIfNull(context);
        var (_, roles, asksForPassword) = All.Single(right => right.Policy == policy);
        return SignedIn.PersonOf(context) is { } person
            && roles.Contains(person.Role)
            && (!asksForPassword || SignedIn.WayOf(context) == SignedIn.ByPassword);
    }

    internal static void AddRights(this AuthorizationBuilder authorization)
    {
        foreach (var (policy, roles, asksForPassword) in All)
        {
            authorization.AddPolicy(policy, rule =>
            {
                rule.AddAuthenticationSchemes(CookieAuthenticationDefaults.AuthenticationScheme).RequireRole(roles.Select(RoleNames.NameOf));
                if (asksForPassword)
                    rule.RequireClaim(SignedIn.WayClaim, SignedIn.ByPassword);
            });
        }
    }
}
