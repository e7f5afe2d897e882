using CutShop.Shop.Jobs;
using CutShop.Shop.Store;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Jobs;

/// <summary>What happened to a job as a whole: who received, released, changed or cancelled it, and why.</summary>
public sealed class HistoryModel(JobShelf jobs, TimeProvider time) : PageModel
{
    /// <summary>The job's number.</summary>
    public string Number { get; private set; } = "";

    /// <summary>The lines, the newest first.</summary>
    public IReadOnlyList<HistoryLine> Lines { get; private set; } = [];

    /// <summary>The clock.</summary>
    public TimeProvider Time => time;

    /// <summary>Shows the history.</summary>
    public IActionResult OnGet(string number)
    {
        (Number, Lines) = (number, jobs.History(number));
        return Lines.Count > 0 ? Page() : NotFound();
    }
}
