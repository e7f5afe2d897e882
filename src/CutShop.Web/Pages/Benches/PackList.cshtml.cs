using CutShop.Paper;
using CutShop.Shop;
using CutShop.Web.Benches;
using CutShop.Web.Words;
using Microsoft.AspNetCore.Mvc;

namespace CutShop.Web.Pages.Benches;

/// <summary>A job's packing list on screen.</summary>
public sealed class PackListModel(PackingBench packing, JobShelf jobs, BenchText text) : BenchPage(text)
{
    /// <summary>The job.</summary>
    public string Number { get; private set; } = "";

    /// <summary>The list.</summary>
    public Sheet? Sheet { get; private set; }

    /// <summary>Shows the list.</summary>
    public IActionResult OnGet(string job)
    {
        if (packing.Find(job) is not { } parcel || jobs.Find(job) is not { } stored)
            return NotFound();
        (Number, Sheet) = (job, PackingPaper.Of(parcel, stored, Paper));
        return Page();
    }
}
