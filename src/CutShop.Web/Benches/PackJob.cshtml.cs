using CutShop.Shop.Benches;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;

using static CutShop.Web.Benches.BenchWords;

namespace CutShop.Web.Benches;

/// <summary>A job's parcel: scan what goes in, tick posts and screws, see what is missing, close it.</summary>
[MaySend(Rights.PackJobs)]
public sealed class PackJobModel(PackingBench packing, ScanResolver scans) : BenchPage
{
    /// <summary>The parcel.</summary>
    public JobParcel? Parcel { get; private set; }

    /// <summary>A piece that was scanned elsewhere, to be put in with one tap.</summary>
    public string? Scan { get; private set; }

    /// <summary>True where somebody wants to close the parcel although something is missing, and is asked.</summary>
    public bool IsAsked { get; private set; }

    /// <summary>The weight of the rope in the last parcel, beside the shop's limit where it has one.</summary>
    public string Weight => Parcel!.MostLb is { } most
        ? T["ParcelWeightOf", Parcel.Parcels, Paper.Text.WeightToLift(Parcel.WeightOf(Parcel.Parcels)), most]
        : T["ParcelWeight", Parcel.Parcels, Paper.Text.WeightToLift(Parcel.WeightOf(Parcel.Parcels))];

    /// <summary>A cut piece that no longer fits into the last parcel, or null.</summary>
    public ParcelPiece? TooHeavy => Parcel!.Missing.FirstOrDefault(piece => piece.State == TicketStates.Cut && Parcel.IsTooHeavyWith(piece));

    /// <summary>True where this person may pack.</summary>
    public bool MaySend => Rights.Do(HttpContext, Rights.PackJobs);

    private static string AddressOf(string job) => $"/pack/{Uri.EscapeDataString(job)}";

    /// <summary>A piece of hardware with its sizes, in the units that the reader wants first.</summary>
    public string NameOf(Hardware hardware) => Paper.Text.HardwareName(hardware, Figures.ToTheTenth().Lead);

    /// <summary>Shows the parcel.</summary>
    public IActionResult OnGet(string job, string? scan, bool ask)
    {
        (Scan, IsAsked) = (scan, ask);
        return Shown(job);
    }

    /// <summary>Puts in what was scanned, a piece or a post, and says across the screen what came of it.</summary>
    public async Task<IActionResult> OnPostPackAsync(string job, string? scan, CancellationToken cancel)
    {
        if (!HasKey)
            return BadRequest();
        if (packing.Find(job) is null)
            return NotFound();
        var reading = scans.Read(scan ?? "");
        var answer = reading.Found switch
        {
            { Code: { } code } => await packing.PackAsync(job, code, Me, RequestKey!, cancel),
            { Post: { } post } found when found.Job == job => await packing.PutPostAsync(job, post, isIn: true, Me, RequestKey!, cancel),
            { Post: { } post } found => new(BenchReplies.PostOfAnotherJob(post, found.Job)),
            _ => new(reading.Why ?? BenchReplies.NothingMarked(scan ?? "")),
        };
        Verdict = VerdictOn(job, reading.Found, answer);
        return Answered(answer, AddressOf(job), () => Shown(job));
    }

    /// <summary>Takes a piece out again.</summary>
    public Task<IActionResult> OnPostUnpackAsync(string job, string? scan, CancellationToken cancel) => DoAsync(
        job,
        key => scans.Read(scan ?? "") is { Found.Code: { } code } ? packing.UnpackAsync(code, Me, key, cancel) : Task.FromResult(new BenchAnswer(BenchReplies.NothingMarked(scan ?? ""))));

    /// <summary>Puts a post in or takes it out.</summary>
    public Task<IActionResult> OnPostPostAsync(string job, string? mark, bool isIn, CancellationToken cancel) =>
        DoAsync(job, key => packing.PutPostAsync(job, mark ?? "", isIn, Me, key, cancel));

    /// <summary>Puts screws or hardware of one kind in or takes them out.</summary>
    public Task<IActionResult> OnPostScrewsAsync(string job, string? kind, bool isIn, CancellationToken cancel) =>
        DoAsync(job, key => packing.PutScrewsAsync(job, kind ?? "", isIn, Me, key, cancel));

    /// <summary>Begins the next parcel of the job.</summary>
    public Task<IActionResult> OnPostBeginAsync(string job, int parcel, CancellationToken cancel) => DoAsync(job, key => packing.BeginParcelAsync(job, parcel, Me, key, cancel));

    /// <summary>Goes back to the parcel before, while the last one is empty.</summary>
    public Task<IActionResult> OnPostBackAsync(string job, int parcel, CancellationToken cancel) => DoAsync(job, key => packing.TakeParcelBackAsync(job, parcel, Me, key, cancel));

    /// <summary>Closes the parcel, or asks first where something is missing.</summary>
    public Task<IActionResult> OnPostCloseAsync(string job, bool asItIs, CancellationToken cancel) =>
        !asItIs && packing.Find(job) is { HasAllRope: true, IsComplete: false }
            ? Task.FromResult(Answered(BenchAnswer.Nothing, $"{AddressOf(job)}?ask=true", () => Shown(job)))
            : DoAsync(job, key => packing.CloseAsync(job, asItIs, Me, key, cancel));

    private async Task<IActionResult> DoAsync(string job, Func<string, Task<BenchAnswer>> work) =>
        HasKey ? Answered(await work(RequestKey!), AddressOf(job), () => Shown(job)) : BadRequest();

    /// <summary>Green for what went in, red for everything else: with what it is, whose it is, and why it stays out.</summary>
    private Verdict VerdictOn(string job, Scanned? scanned, BenchAnswer answer)
    {
        var what = scanned is null ? null : packing.Find(scanned.Job) is { } its ? NameOf(scanned, its) : null;
        if (!answer.IsDone)
            return new(IsRight: false, T["StaysOut"], [T[answer.Said!], .. what is { } known ? [known.Name, known.Whose] : Array.Empty<string>()]);
        var parcel = packing.Find(job)!;
        return new(
            IsRight: true,
            what!.Value.Name,
            what.Value.Whose,
            parcel.HasAllRope ? T["AllRopeIsIn"] : T["MissingCount", parcel.Missing.Count(), parcel.Pieces.Count]);
    }

    private (string Name, string Whose)? NameOf(Scanned scanned, JobParcel its)
    {
        var name = scanned.Post is { } post
            ? Paper.Text.PostName(post)
            : its.Pieces.FirstOrDefault(piece => piece.Code == scanned.Code) is { } piece ? $"{piece.Run} · {Figures.LongLead(piece.Measured ?? piece.Cut)}" : null;
        return name is null ? null : (name, $"{its.Job} · {its.Customer}");
    }

    private IActionResult Shown(string job)
    {
        Parcel = packing.Find(job);
        return Parcel is null ? NotFound() : Page();
    }
}
