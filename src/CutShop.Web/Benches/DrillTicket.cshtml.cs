using CutShop.Paper.Drawings;
using CutShop.Paper.Installing;
using CutShop.Paper.Words;
using CutShop.Shop.Benches;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;

using static CutShop.Web.Benches.BenchWords;

namespace CutShop.Web.Benches;

/// <summary>One post at the drill bench: where to drill with which bit, one drilling after the other, then the rope.</summary>
[MaySend(Rights.DrillPosts)]
public sealed class DrillTicketModel(DrillBench bench, TimeProvider time) : BenchPage
{
    /// <summary>The ticket.</summary>
    public DrillWork? Work { get; private set; }

    /// <summary>All that is done to the post; null where a change took it out before a program kept that.</summary>
    public PostWork? Post { get; private set; }

    /// <summary>What such a program kept of its bores.</summary>
    public IReadOnlyList<OldBore> OldBores { get; private set; } = [];

    /// <summary>The other tickets that its mark ever had, the newest first.</summary>
    public IReadOnlyList<DrillWork> Others { get; private set; } = [];

    /// <summary>The address of its ticket as a PDF.</summary>
    public string PdfAddress => $"/drill/{DrillBench.AddressOf(Work!.Job, Work.Post)}/ticket.pdf?ticket={Work.Id}";

    /// <summary>What is ticked one after the other: its drillings, then its screw holes.</summary>
    public IReadOnlyList<DrillStep> Steps { get; private set; } = [];

    /// <summary>The shop's clock.</summary>
    public TimeProvider Time => time;

    /// <summary>True where this person may drill.</summary>
    public bool MaySend => Rights.Do(HttpContext, Rights.DrillPosts);

    /// <summary>True where this person has it at the bench.</summary>
    public bool IsMine => Work!.State == TicketStates.AtTheBench && Work.ClaimedBy == Me;

    /// <summary>The drilling to do now, or the first one where nobody has the ticket; null where all bores are in.</summary>
    public Drilling? Now => Work!.State == TicketStates.Drilled ? null : Post?.Drillings().FirstOrDefault(drilling => drilling.Number > Work.Steps);

    /// <summary>The screw hole to drill now where this person has come so far, else null.</summary>
    public Fixing? NowHole => IsMine && Work!.Next is { } next && next > Work.Drillings ? Post!.ScrewHoles[next - (int)Work.Drillings - 1] : null;

    /// <summary>The ropes that must pass.</summary>
    public string Ropes => string.Join(", ", (Post?.Bores ?? []).Select(bore => bore.Rope).Distinct().Select(rope => Paper.Text.RopeName(
        Paper.Text.Material(rope.Material), Figures.Lead(rope.Diameter), rope.Measured is { } measured ? Figures.Lead(measured) : null)));

    /// <summary>What can be done with the ticket beside drilling: address, label, whether it is the main thing.</summary>
    public IEnumerable<(string Handler, string Label, bool IsMain)> Moves => !MaySend ? [] : Work!.State switch
    {
        TicketStates.Waiting => [("Take", T["TakePost"], true)],
        TicketStates.ReOrdered => [("NewPost", T["NewPostHere"], true)],
        TicketStates.AtTheBench when IsMine => [("HandBack", T["HandBack"], false)],
        TicketStates.AtTheBench when Rights.Do(HttpContext, Rights.TakeTicketsOver) => [("TakeOver", T["TakeOver", Work.ClaimedBy], false)],
        _ => [],
    };

    /// <summary>What can be corrected: address, heading, reasons to tap, each as it is kept and with its key.</summary>
    public IEnumerable<(string Handler, string Heading, IReadOnlyList<(string Kept, string Key)> Reasons)> Corrections
    {
        get
        {
            if (!MaySend)
                yield break;
            if (Work!.State == TicketStates.Drilled)
                yield return ("Undo", T["UndoDrilling"], [("wrong ticket", "WrongTicket"), ("tapped by mistake", "TappedByMistake")]);
            if (IsMine || Work.State == TicketStates.Drilled)
            {
                yield return (
                    "Damage",
                    T["PostSpoiled"],
                    [
                        ("split", "Split"), ("bored in the wrong place", "BoredInWrongPlace"), ("wrong bit", "WrongBit"), ("rope does not fit", "RopeDoesNotFit"),
                        ("bad timber", "BadTimber"),
                    ]);
            }
        }
    }

    /// <summary>True where a step is done and the work on the post goes on, or the post is drilled.</summary>
    public bool IsDone(DrillStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return Work!.State != TicketStates.Waiting && Work.Done >= step.Number;
    }

    /// <summary>A drilling's rake in words.</summary>
    public string RakeOf(Drilling drilling)
    {
        ArgumentNullException.ThrowIfNull(drilling);
        return RakeText.Of(drilling.Bore, Post!, Paper);
    }

    /// <summary>Shows the post.</summary>
    public IActionResult OnGet(string job, string post, long? ticket) => Shown(job, post, ticket);

    /// <summary>Takes a post that waits.</summary>
    public Task<IActionResult> OnPostTakeAsync(string job, string post, CancellationToken cancel) =>
        DoAsync(job, post, key => bench.TakeAsync((job, post), Me, key, cancel));

    /// <summary>Takes it over from someone else.</summary>
    public async Task<IActionResult> OnPostTakeOverAsync(string job, string post, CancellationToken cancel) => Rights.Do(HttpContext, Rights.TakeTicketsOver)
        ? await DoAsync(job, post, key => bench.TakeOverAsync((job, post), Me, key, cancel))
        : Forbid();

    /// <summary>Hands it back.</summary>
    public Task<IActionResult> OnPostHandBackAsync(string job, string post, CancellationToken cancel) =>
        DoAsync(job, post, key => bench.HandBackAsync((job, post), Me, key, cancel), "/drill");

    /// <summary>Ticks a drilling or a screw hole.</summary>
    public Task<IActionResult> OnPostTickAsync(string job, string post, int drilling, CancellationToken cancel) =>
        DoAsync(job, post, key => bench.TickAsync((job, post), drilling, Me, key, cancel));

    /// <summary>The rope fits.</summary>
    public Task<IActionResult> OnPostFitsAsync(string job, string post, CancellationToken cancel) => DoAsync(
        job, post, key => bench.FitsAsync((job, post), Me, key, cancel), $"/drill?job={Uri.EscapeDataString(job)}&post={Uri.EscapeDataString(post)}");

    /// <summary>The post is spoiled.</summary>
    public Task<IActionResult> OnPostDamageAsync(string job, string post, string? reason, CancellationToken cancel) =>
        DoAsync(job, post, key => bench.DamageAsync((job, post), reason ?? "", Me, key, cancel));

    /// <summary>The new post is here.</summary>
    public Task<IActionResult> OnPostNewPostAsync(string job, string post, CancellationToken cancel) =>
        DoAsync(job, post, key => bench.NewPostAsync((job, post), Me, key, cancel));

    /// <summary>Undoes a post that was finished by mistake.</summary>
    public Task<IActionResult> OnPostUndoAsync(string job, string post, string? reason, CancellationToken cancel) =>
        DoAsync(job, post, key => bench.UndoAsync((job, post), reason ?? "", Me, key, cancel));

    private async Task<IActionResult> DoAsync(string job, string post, Func<string, Task<BenchAnswer>> work, string? done = null)
    {
        if (!HasKey)
            return BadRequest();
        var answer = await work(RequestKey!);
        return Answered(answer, answer.IsDone && done is not null ? done : $"/drill/{DrillBench.AddressOf(job, post)}", () => Shown(job, post));
    }

    private IActionResult Shown(string job, string post, long? ticket = null)
    {
        var all = bench.AllOf(job, post);
        if (all.FirstOrDefault(one => ticket is null || one.Id == ticket) is not { } work)
            return NotFound();
        Work = work;
        Others = [.. all.Where(one => one.Id != work.Id)];
        (Post, OldBores) = bench.PostOf(work);
        if (Post is not null)
            Steps = [.. Post.Drillings().Select(StepOf), .. Post.ScrewHoles.Select((hole, i) => StepOf(hole, (int)work.Drillings + i + 1))];
        return Page();
    }

    private DrillStep StepOf(Drilling drilling) => new(
        drilling.Number,
        $"{Paper.Text.FaceName(drilling.Operation.Face)}, {T["Row", drilling.Bore.Row]}",
        T["BitSetting", Figures.ToTheTenth.Lead(drilling.Bore.Bit), Figures.Lead(drilling.Mark), Figures.Lead(drilling.Collar), RakeOf(drilling)],
        IsScrewHole: false);

    private DrillStep StepOf(Fixing hole, int number) => new(
        number,
        T["ScrewHole", Paper.Text.FaceName(hole.Face), hole.Row],
        $"{InstallLines.ScrewsOf(hole, Paper)}. {T["CounterboreFirst"]}",
        IsScrewHole: true);
}

/// <summary>One thing to tick at a post.</summary>
/// <param name="Number">Its number on the ticket, from 1.</param>
/// <param name="Name">Face and row.</param>
/// <param name="Says">What is drilled.</param>
/// <param name="IsScrewHole">True for the hole of a screw.</param>
public sealed record DrillStep(int Number, string Name, string Says, bool IsScrewHole);
