using CutShop.Shop;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Pages;

/// <summary>The list of jobs.</summary>
public sealed class IndexModel(JobShelf jobs) : PageModel
{
    /// <summary>The jobs.</summary>
    public IReadOnlyList<JobListed> Jobs { get; private set; } = [];

    /// <summary>Shows the list.</summary>
    public void OnGet() => Jobs = jobs.List();
}
