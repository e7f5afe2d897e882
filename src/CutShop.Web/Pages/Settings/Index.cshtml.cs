using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;
using static CutShop.Web.Words.SettingsWords;

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
    private static (SettingsPage Page, string Right)[] All =>
    [
        (new(T["QuoteHeader"], "/settings/letterhead", T["QuoteHeaderAbout"]), May.ChangeSettings),
        (new(T["Prices"], "/prices", T["PricesAbout"]), May.ChangeSettings),
        (new(T["Bits"], "/bits", T["BitsAbout"]), May.ChangeSettings),
        (new(T["KerfTrimsAndCoilLengths"], "/settings/cutting", T["KerfAbout"]), May.ChangeSettings),
        (new(T["HowTheBenchesWork"], "/settings/benches", T["BenchesAboutShort"]), May.ChangeSettings),
        (new(T["TheAddressOnLabels"], "/settings/address", T["LabelsAbout"]), May.ChangeSettings),
        (new(T["JobsAndTodaysRules"], "/jobs/by-rules", T["RulesAbout"]), May.ManageJobs),
        (new(T["Tablets"], "/tablets", T["TabletsAbout"]), May.EnrolTablets),
        (new(T["People"], "/people", T["PeopleAbout"]), May.ManagePeople),
        (new(T["KeysForPrograms"], "/keys", T["KeysAbout"]), May.ManageKeys),
    ];

    /// <summary>The pages that whoever asks may use.</summary>
    public IEnumerable<SettingsPage> Pages => All.Where(one => May.Do(HttpContext, one.Right)).Select(one => one.Page);
}
