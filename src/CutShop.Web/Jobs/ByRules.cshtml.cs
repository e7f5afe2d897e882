using CutShop.Shop.Jobs;
using CutShop.Shop.Maintenance;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Jobs;

/// <summary>The open jobs that today's rules would make different.</summary>
[Authorize(Policy = Rights.ManageJobs)]
public sealed class ByRulesModel(JobsAgainstRules jobs) : PageModel
{
    /// <summary>What would change in each of them.</summary>
    public IReadOnlyList<JobChange> Different { get; private set; } = [];

    /// <summary>Shows the list.</summary>
    public void OnGet() => Different = jobs.All();
}
