using CutShop.Paper.Sheets;
using Microsoft.AspNetCore.Mvc;

namespace CutShop.Web.Benches;

/// <summary>A job's packing list on screen.</summary>
public sealed class PackListModel(PackingPaper packing) : BenchPage
{
    /// <summary>The job.</summary>
    public string Number { get; private set; } = "";

    /// <summary>The list.</summary>
    public Sheet? Sheet { get; private set; }

    /// <summary>Shows the list.</summary>
    public async Task<IActionResult> OnGetAsync(string job, CancellationToken cancel)
    {
        (Number, Sheet) = (job, await packing.OfAsync(job, Me, Paper, cancel));
        return Sheet is null ? NotFound() : Page();
    }
}
