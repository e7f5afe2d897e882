using CutShop.Paper.Drawings;
using CutShop.Paper.Installing;
using CutShop.Paper.Words;
using CutShop.Shop.Benches;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;

using static CutShop.Web.Benches.BenchWords;

namespace CutShop.Web.Benches;

/// <summary>One post at the drill bench: where to drill with which bit, one drilling after the other, then the rope.</summary>
[MaySend(Rights.DrillPosts)]
public sealed class DrillTicketModel(DrillBench bench, TimeProvider time) : BenchPage
{
    private PostWork? _last;

    /// <summary>The ticket.</summary>
    public DrillWork? Work { get; private set; }

    /// <summary>All that is done to the post; null where a change took it out before a program kept that.</summary>
    public PostWork? Post { get; private set; }

    /// <summary>What such a program kept of its bores.</summary>
    public IReadOnlyList<OldBore> OldBores { get; private set; } = [];

    /// <summary>The other tickets that its mark ever had, the newest first.</summary>
    public IReadOnlyList<DrillWork> Others { get; private set; } = [];

    /// <summary>The address of its label as a PDF.</summary>
    public string LabelAddress => $"/drill/{DrillBench.AddressOf(Work!.Job, Work.Post)}/label.pdf";

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

    /// <summary>The step to do now, or the first one where nobody has the ticket; null where all are done.</summary>
    public DrillStep? Now => Work!.State == TicketStates.Drilled ? null : Steps.FirstOrDefault(step => step.Last > Work.Steps);

    /// <summary>How many posts of the job are bored alike, and how many of them are drilled.</summary>
    public (long All, long Drilled) Alike { get; private set; }

    /// <summary>True where it is drilled just as the post that this person drilled last, so that one tap says that it is done.</summary>
    public bool IsLikeLast => IsMine && _last?.IsDrilledLike(Post!) == true;

    /// <summary>Another post that this person has at the bench, or null.</summary>
    public DrillWork? AtMyBench { get; private set; }

    /// <summary>The job and the post that this person finished with the tap that led here, or null.</summary>
    public (string Job, string Post)? JustDone { get; private set; }

    /// <summary>The ropes that must pass.</summary>
    public string Ropes => string.Join(", ", (Post?.Bores ?? []).Select(bore => bore.Rope).Distinct().Select(rope => Paper.Text.RopeName(
        Paper.Text.Material(rope.Material), Figures.Lead(rope.Diameter), rope.Measured is { } measured ? Figures.Lead(measured) : null)));

    /// <summary>What can be done with the ticket beside drilling: address, label, whether it is the main thing.</summary>
    public IEnumerable<(string Handler, string Label, bool IsMain)> Moves => !MaySend ? [] : Work!.State switch
    {
        TicketStates.Waiting => [("Take", T["TakePost"], true)],
        TicketStates.ReOrdered => [("NewPost", T["NewPostHere"], true), ("UndoDamage", T["NotSpoiled"], false)],
        TicketStates.AtTheBench when IsMine && Work.Steps > 0 => [("HandBack", T["HandBackAsItIs"], false), ("HandBackUndrilled", T["HandBackUndrilled"], false)],
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
        return Work!.State != TicketStates.Waiting && Work.Done >= step.Last;
    }

    /// <summary>What a step is called: its face and its rows.</summary>
    public string NameOf(DrillStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        var rows = string.Join(", ", step.Drillings.Select(drilling => drilling.Bore.Row).Concat(step.ScrewHoles.Select(hole => hole.Row)));
        return T[step.ScrewHoles.Count > 0 ? "ScrewHoles" : "Bores", Paper.Text.FaceName(step.Face), rows];
    }

    /// <summary>What is changed on the drill before a step.</summary>
    public IEnumerable<string> ChangesBefore(DrillStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        var isBore = step.Drillings.Count > 0;
        var before = Steps.LastOrDefault(other => other.First < step.First && other.Drillings.Count > 0 == isBore)
            ?? _last?.Steps().LastOrDefault(other => other.Drillings.Count > 0 == isBore);
        return DrillChanges.Before(step, before, Post!, Paper);
    }

    /// <summary>The heights of a step's marks: the row, from the datum, and from the top.</summary>
    public IEnumerable<(string Row, Length Told, Length FromTop)> MarksOf(DrillStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return HeightsOf(step).Select(at => (at.Row, Post!.Post.HeightFrom(Post.Datum, at.Mark), Post.Post.HeightFrom(Datum.Top, at.Mark)));
    }

    private static IEnumerable<(string Row, Length Mark)> HeightsOf(DrillStep step) =>
        step.Drillings.Select(drilling => (drilling.Bore.Row, drilling.Mark)).Concat(step.ScrewHoles.Select(hole => (hole.Row, hole.Mark)));

    /// <summary>A step on one line.</summary>
    public string InShort(DrillStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        var marks = string.Join("; ", HeightsOf(step).Select(at => $"{at.Row} {Paper.Text.HeightOn(Post!.Post, Post.Datum, at.Mark, Figures.Lead)}"));
        return step is { Drillings: [var drilling, ..] }
            ? $"{T["BoresInShort", Paper.Text.FaceName(step.Face), Figures.ToTheTenth().Lead(drilling.Bore.Bit), Figures.Lead(drilling.Collar), marks]}; {string.Join("; ", [RakeOf(drilling), .. LiesOf(step)])}"
            : string.Join("; ", [T["HolesInShort", Paper.Text.FaceName(step.Face), marks], .. LiesOf(step)]);
    }

    /// <summary>A step for who reads the ticket and has it not at the bench: its bores in one line, and a line for each screw hole.</summary>
    public IEnumerable<string> InFull(DrillStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return step.Drillings.Count > 0 ? [InShort(step)] : step.ScrewHoles.Select(hole => InstallLines.ScrewsOf(hole, Paper, Post!.Datum, Post));
    }

    /// <summary>How a step's holes lie beside their rake: skew, bends of the rope, and where the screws of a join go in.</summary>
    public IEnumerable<string> LiesOf(DrillStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return step.Drillings is [var drilling, ..]
            ? new[] { RakeText.SkewOf(Post!, step.Face, drilling.Bore, Paper), RakeText.KinkOf(drilling.Bore, Paper) }.OfType<string>()
            : step.ScrewHoles.SelectMany(hole => RakeText.HolesOf(hole, Post!, Paper)).Distinct();
    }

    /// <summary>The holes that are in the post already, a line each.</summary>
    public IEnumerable<string> AlreadyThere => Post!.Bores.Where(bore => bore.IsExisting).Select(bore => string.Join(
        " · ", $"{bore.Row}: {Figures.Both(bore.Bit)}", Paper.Text.HeightOn(Post.Post, Post.Datum, bore.Height, Figures.Lead), RakeText.Of(bore, Post, Paper)));

    /// <summary>A drilling's rake in words.</summary>
    public string RakeOf(Drilling drilling)
    {
        ArgumentNullException.ThrowIfNull(drilling);
        return RakeText.Of(drilling.Bore, Post!, Paper);
    }

    /// <summary>Shows the post.</summary>
    public IActionResult OnGet(string job, string post, long? ticket, string? doneJob, string? donePost)
    {
        if (doneJob is not null && donePost is not null && bench.Find((doneJob, donePost)) is { State: TicketStates.Drilled } done)
            JustDone = (done.Job, done.Post);
        return Shown(job, post, ticket);
    }

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

    /// <summary>Hands it back with nothing drilled.</summary>
    public Task<IActionResult> OnPostHandBackUndrilledAsync(string job, string post, CancellationToken cancel) =>
        DoAsync(job, post, key => bench.HandBackUndrilledAsync((job, post), Me, key, cancel), "/drill");

    /// <summary>Undoes the step that was ticked last.</summary>
    public Task<IActionResult> OnPostUntickAsync(string job, string post, int drilling, CancellationToken cancel) =>
        DoAsync(job, post, key => bench.UntickAsync((job, post), drilling, Me, key, cancel));

    /// <summary>Ticks a step, by the number of its last hole.</summary>
    public Task<IActionResult> OnPostTickAsync(string job, string post, int drilling, CancellationToken cancel) =>
        DoAsync(job, post, key => bench.TickAsync((job, post), drilling, Me, key, cancel));

    /// <summary>The rope fits.</summary>
    public Task<IActionResult> OnPostFitsAsync(string job, string post, CancellationToken cancel) => DoAsync(
        job, post, key => bench.FitsAsync((job, post), Me, key, cancel), $"/drill?job={Uri.EscapeDataString(job)}&post={Uri.EscapeDataString(post)}");

    /// <summary>The rope fits, and the post is drilled like the one before it: on to the next one like it.</summary>
    public async Task<IActionResult> OnPostFitsLikeAsync(string job, string post, CancellationToken cancel)
    {
        if (!HasKey)
            return BadRequest();
        var answer = await bench.FitsLikeLastAsync((job, post), Me, RequestKey!, cancel);
        var (ofJob, ofPost) = (Uri.EscapeDataString(job), Uri.EscapeDataString(post));
        var to = !answer.IsDone ? $"/drill/{DrillBench.AddressOf(job, post)}"
            : answer.Outcome.Length == 0 ? $"/drill?job={ofJob}&post={ofPost}"
            : $"/drill/{answer.Outcome}?doneJob={ofJob}&donePost={ofPost}";
        return Answered(answer, to, () => Shown(job, post));
    }

    /// <summary>It is not spoiled after all.</summary>
    public Task<IActionResult> OnPostUndoDamageAsync(string job, string post, CancellationToken cancel) =>
        DoAsync(job, post, key => bench.UndoDamageAsync((job, post), Me, key, cancel));

    /// <summary>The post is spoiled.</summary>
    public Task<IActionResult> OnPostDamageAsync(string job, string post, string? reason, CancellationToken cancel) =>
        WithReasonAsync(job, post, reason, (why, key) => bench.DamageAsync((job, post), why, Me, key, cancel));

    /// <summary>The new post is here.</summary>
    public Task<IActionResult> OnPostNewPostAsync(string job, string post, CancellationToken cancel) =>
        DoAsync(job, post, key => bench.NewPostAsync((job, post), Me, key, cancel));

    /// <summary>Undoes a post that was finished by mistake.</summary>
    public Task<IActionResult> OnPostUndoAsync(string job, string post, string? reason, CancellationToken cancel) =>
        WithReasonAsync(job, post, reason, (why, key) => bench.UndoAsync((job, post), why, Me, key, cancel));

    /// <summary>A reason that is no scan, which a field for a reason may take.</summary>
    private async Task<IActionResult> WithReasonAsync(string job, string post, string? reason, Func<string, string, Task<BenchAnswer>> work) =>
        ScanResolver.InsteadOfWords(reason ?? "") is { } scan
            ? OpenScanned(scan, "drill", () => Shown(job, post))
            : await DoAsync(job, post, key => work(reason ?? "", key));

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
        {
            Steps = Post.Steps();
            Alike = bench.Alike(work);
            _last = IsMine ? bench.LastBy(Me) : null;
        }
        AtMyBench = IsMine ? null : bench.Of(Me);
        return Page();
    }
}
