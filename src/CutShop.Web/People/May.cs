using CutShop.Shop;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;

namespace CutShop.Web;

/// <summary>
/// What one may do, and who may: the one table of rights. Each name is a policy for <c>[Authorize(Policy = May.ManageJobs)]</c>.
/// What has no policy asks for someone who is signed in, and what is open to anyone says <c>[AllowAnonymous]</c>.
/// </summary>
public static class May
{
    /// <summary>Take jobs in, change them, quote them.</summary>
    public const string ManageJobs = nameof(ManageJobs);

    /// <summary>See prices and costs.</summary>
    public const string SeePrices = nameof(SeePrices);

    /// <summary>Receive, adjust and retire coils.</summary>
    public const string ManageStock = nameof(ManageStock);

    /// <summary>Make and accept cut plans.</summary>
    public const string PlanCuts = nameof(PlanCuts);

    /// <summary>Claim cut tickets and report pieces cut.</summary>
    public const string CutRope = nameof(CutRope);

    /// <summary>Claim drill tickets and report posts drilled.</summary>
    public const string DrillPosts = nameof(DrillPosts);

    /// <summary>Enrol and remove the tablets where a PIN is enough. Asks for a password sign-in.</summary>
    public const string EnrolTablets = nameof(EnrolTablets);

    /// <summary>Add people, change roles, reset passwords. Asks for a password sign-in.</summary>
    public const string ManagePeople = nameof(ManagePeople);

    /// <summary>Make and revoke keys for programs. Asks for a password sign-in.</summary>
    public const string ManageKeys = nameof(ManageKeys);

    private static readonly (string Policy, Role[] Roles, bool AsksForPassword)[] Rights =
    [
        (ManageJobs, [Role.Owner, Role.Desk], false),
        (SeePrices, [Role.Owner, Role.Desk], false),
        (ManageStock, [Role.Owner, Role.Desk, Role.Cutter], false),
        (PlanCuts, [Role.Owner, Role.Desk, Role.Cutter], false),
        (CutRope, [Role.Owner, Role.Cutter], false),
        (DrillPosts, [Role.Owner, Role.Driller], false),
        (EnrolTablets, [Role.Owner, Role.Desk], true),
        (ManagePeople, [Role.Owner], true),
        (ManageKeys, [Role.Owner], true),
    ];

    internal static void AddRights(this AuthorizationBuilder authorization)
    {
        foreach (var (policy, roles, asksForPassword) in Rights)
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
