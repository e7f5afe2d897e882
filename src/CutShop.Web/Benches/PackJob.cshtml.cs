using CutShop.Shop.Benches;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;

namespace CutShop.Web.Benches;

/// <summary>A job's parcel: scan what goes in, see what is missing.</summary>
[MaySend(Rights.PackJobs)]
public sealed class PackJobModel(PackingBench packing, ScanResolver scans) : BenchPage
{
    /// <summary>The parcel.</summary>
    public JobParcel? Parcel { get; private set; }

    /// <summary>A piece that was scanned elsewhere, to be put in with one tap.</summary>
    public string? Scan { get; private set; }

    /// <summary>Shows the parcel.</summary>
    public IActionResult OnGet(string job, string? scan)
    {
        Scan = scan;
        return Shown(job);
    }

    /// <summary>Packs the scanned piece.</summary>
    public Task<IActionResult> OnPostPackAsync(string job, string? scan, CancellationToken cancel) =>
        DoAsync(job, scan, (code, key) => packing.PackAsync(job, code, Me, key, cancel));

    /// <summary>Takes a piece out again.</summary>
    public Task<IActionResult> OnPostUnpackAsync(string job, string? scan, CancellationToken cancel) =>
        DoAsync(job, scan, (code, key) => packing.UnpackAsync(code, Me, key, cancel));

    private async Task<IActionResult> DoAsync(string job, string? scan, Func<PieceCode, string, Task<BenchAnswer>> work)
    {
        if (!HasKey)
            return BadRequest();
        var answer = scans.Find(scan ?? "") is { Code: { } code }
            ? await work(code, RequestKey!)
            : new BenchAnswer(ScanResolver.NotFound(scan ?? "", scans.IsOfSeveral(scan ?? "")));
        return Answered(answer, $"/pack/{Uri.EscapeDataString(job)}", () => Shown(job));
    }

    private IActionResult Shown(string job)
    {
        Parcel = packing.Find(job);
        return Parcel is null ? NotFound() : Page();
    }
}
