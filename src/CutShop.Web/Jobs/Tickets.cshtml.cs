using CutShop.Paper.Jobs;
using CutShop.Paper.Sheets;
using CutShop.Shop.Jobs;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Jobs;

/// <summary>A job's tickets on screen, to read or to print.</summary>
public sealed class TicketsModel(JobShelf jobs) : PageModel
{
    /// <summary>The job's number.</summary>
    public string Number { get; private set; } = "";

    /// <summary>The kind of paper, as the address writes it.</summary>
    public string Kind { get; private set; } = "";

    /// <summary>The sheets.</summary>
    public IEnumerable<Sheet> Sheets { get; private set; } = [];

    /// <summary>Shows the sheets.</summary>
    public IActionResult OnGet(string number, string kind)
    {
        if (PaperRoutes.KindOf(kind) is not { } paper || jobs.Find(number) is not { } job)
            return NotFound();
        (Number, Kind, Sheets) = (number, kind, JobPapers.Of(job, ReaderLanguage.PaperFor(HttpContext)).Sheets(paper));
        return Page();
    }
}
