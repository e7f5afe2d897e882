using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;

using static CutShop.Web.Settings.SettingsWords;

namespace CutShop.Web.Settings;

/// <summary>A page on which something of the shop is set.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Address">Its address.</param>
/// <param name="About">What is set there.</param>
public sealed record SettingsPage(string Name, string Address, string About);

/// <summary>All that can be set, by page.</summary>
[Authorize(Policy = Rights.ChangeSettings)]
public sealed class SettingsModel : PageModel
{
    private static (SettingsPage Page, string Right)[] All =>
    [
        (new(T["QuoteHeader"], "/settings/letterhead", T["QuoteHeaderAbout"]), Rights.ChangeSettings),
        (new(T["Prices"], "/prices", T["PricesAbout"]), Rights.ChangeSettings),
        (new(T["Bits"], "/bits", T["BitsAbout"]), Rights.ChangeSettings),
        (new(T["WhereTheDeskWarns"], "/settings/desk", T["DeskAboutShort"]), Rights.ChangeSettings),
        (new(T["KerfTrimsAndCoilLengths"], "/settings/cutting", T["KerfAbout"]), Rights.ChangeSettings),
        (new(T["HowTheBenchesWork"], "/settings/benches", T["BenchesAboutShort"]), Rights.ChangeSettings),
        (new(T["Sending"], "/settings/sending", T["SendingAboutShort"]), Rights.ChangeSettings),
        (new(T["TheAddressOnLabels"], "/settings/address", T["LabelsAbout"]), Rights.ChangeSettings),
        (new(T["JobsAndTodaysRules"], "/jobs/by-rules", T["RulesAbout"]), Rights.ManageJobs),
        (new(T["Tablets"], "/tablets", T["TabletsAbout"]), Rights.EnrolTablets),
        (new(T["People"], "/people", T["PeopleAbout"]), Rights.ManagePeople),
        (new(T["KeysForPrograms"], "/keys", T["KeysAbout"]), Rights.ManageKeys),
    ];

    /// <summary>The pages that the reader may use.</summary>
    public IEnumerable<SettingsPage> Pages => All.Where(one => Rights.Do(HttpContext, one.Right)).Select(one => one.Page);
}
