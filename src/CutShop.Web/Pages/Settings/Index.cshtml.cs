using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Pages.Settings;

/// <summary>A page on which something of the shop is set.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Address">Its address.</param>
/// <param name="About">What is set there.</param>
public sealed record SettingsPage(string Name, string Address, string About);

/// <summary>All that can be set, by page.</summary>
[Authorize(Policy = May.ChangeSettings)]
public sealed class IndexModel : PageModel
{
    private static readonly (SettingsPage Page, string Right)[] All =
    [
        (new("Head of the quotes", "/settings/letterhead", "The shop's name and address, as they stand at the top of every quote."), May.ChangeSettings),
        (new("Prices", "/prices", "What rope, bores, cutting, packing and delivery cost from which day on, the tax, and the sign before amounts."), May.ChangeSettings),
        (new("Bits", "/bits", "The bits that hang on the rack. Tickets choose from them, and a draft warns where one is lacking."), May.ChangeSettings),
        (new("Kerf, trims and coil lengths", "/settings/cutting", "What each cut takes, which offcuts are kept, and the lengths in which coils are bought. Cut plans count with it."), May.ChangeSettings),
        (new("How the benches work", "/settings/benches", "How far a piece may be over or under, when a forgotten ticket goes back, and how long a slip can be undone."), May.ChangeSettings),
        (new("The address on labels", "/settings/address", "Where the code on each label leads a phone."), May.ChangeSettings),
        (new("Jobs and today's rules", "/jobs/by-rules", "Open jobs that would be different if they were taken in today."), May.ManageJobs),
        (new("Tablets", "/tablets", "The shared tablets on which a PIN is enough to sign in."), May.EnrolTablets),
        (new("People", "/people", "Who works here, as what, and who may sign in."), May.ManagePeople),
        (new("Keys for programs", "/keys", "What other programs may read or send."), May.ManageKeys),
    ];

    /// <summary>The pages that whoever asks may use.</summary>
    public IEnumerable<SettingsPage> Pages => All.Where(one => May.Do(HttpContext, one.Right)).Select(one => one.Page);
}
