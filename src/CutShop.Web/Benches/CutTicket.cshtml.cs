using CutShop.Paper.Words;
using CutShop.Shop.Benches;
using CutShop.Shop.Jobs;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;

using static CutShop.Web.Benches.BenchWords;

namespace CutShop.Web.Benches;

/// <summary>One piece at the cut bench: what to cut from which coil, and one step after the other.</summary>
[MaySend(Rights.CutRope)]
public sealed class CutTicketModel(CutBench bench, JobShelf jobs, BenchSettingsShelf settings, TimeProvider time) : BenchPage
{
    /// <summary>The ticket.</summary>
    public CutWork? Work { get; private set; }

    /// <summary>The piece as it was promised; null where a change took it out before a program kept that.</summary>
    public Piece? Piece { get; private set; }

    /// <summary>Its rope.</summary>
    public Rope Rope => Piece?.Rope ?? new(Rope.Materials[Work!.Material], Work.Diameter);

    /// <summary>What its cuts left beside it.</summary>
    public LeftOver LeftOver { get; private set; } = new([], Length.Zero);

    /// <summary>A length that was too short to be taken, or null.</summary>
    public Length? TooShort { get; private set; }

    /// <summary>The shop's clock.</summary>
    public TimeProvider Time => time;

    /// <summary>True where this person may cut.</summary>
    public bool MaySend => Rights.Do(HttpContext, Rights.CutRope);

    /// <summary>True where this person has it at the bench.</summary>
    public bool IsMine => Work!.State == TicketStates.AtTheBench && Work.ClaimedBy == Me;

    /// <summary>What the tape may say beside the length itself, within the tolerance: one tap each, in marks of the tape that the cutter reads.</summary>
    public IEnumerable<Length> Readings
    {
        get
        {
            var (over, under) = (settings.Current.Over, settings.Current.Under);
            var marks = Figures.First == UnitsFirst.FeetInches
                ? new[] { -8, -4, 0, 4, 8, 16, 32 }.Select(sixtyFourths => Length.FromSixtyFourths(sixtyFourths))
                : new[] { -3, -1, 0, 1, 3, 6, 12 }.Select(millimetres => millimetres * Length.Millimetre);
            return marks.Where(off => off >= -under && off <= over);
        }
    }

    /// <summary>What can be corrected afterwards: address, heading, explanation, reasons to tap, each as it is kept and with its key.</summary>
    public IEnumerable<(string Handler, string Heading, string What, IReadOnlyList<(string Kept, string Key)> Reasons)> Corrections =>
    [
        ("Undo", T["UndoCut"], T["UndoCutResult"], [("wrong ticket", "WrongTicket"), ("tapped by mistake", "TappedByMistake")]),
        ("Reject", T["RejectCut"], T["RejectCutResult"], [("frayed", "Frayed"), ("wrong length", "WrongLength"), ("wrong rope", "WrongRope"), ("bad end", "BadEnd")]),
    ];

    /// <summary>A step in a few words.</summary>
    public string NameOf(CutStep step) => step switch
    {
        CutStep.PullAndMark => T["PullAndMark"],
        CutStep.PrepareEnds => T["PrepareEnds"],
        CutStep.Cut => Rope.IsNatural ? T["CutCold"] : T["CutHot"],
        CutStep.Measure => T["Measure"],
        CutStep.Label => T["Label"],
        CutStep.CoilAndTie => T["CoilAndTie"],
        _ => throw new ArgumentOutOfRangeException(nameof(step), step, message: null),
    };

    /// <summary>What a step asks for.</summary>
    public IEnumerable<string> Says(CutStep step)
    {
        var words = Paper.Text;
        var natural = Rope.IsNatural;
        var steps = words.CuttingSteps(natural, Figures.LongLead(Work!.Cut), hasCode: true);
        return step switch
        {
            CutStep.PullAndMark => [steps[0]],
            CutStep.PrepareEnds => [steps[1], .. (Piece is null ? [] : (AtPost[])[Piece.AtPosts[0], Piece.AtPosts[^1]]).Select(at =>
                $"{at.Post.Mark}, {words.AtPost(at)}: {words.EndPreparation(natural, at.Kind)}")],
            CutStep.Cut => [steps[2], natural ? words.CuttingNaturalCautions[0] : words.CuttingSyntheticCautions[0]],
            CutStep.Measure => [T["MeasureEndToEnd"]],
            CutStep.Label => [T["PutLabelOn", Work.Code]],
            CutStep.CoilAndTie => [steps[5]],
            _ => throw new ArgumentOutOfRangeException(nameof(step), step, message: null),
        };
    }

    /// <summary>Shows the piece.</summary>
    public IActionResult OnGet(string code, string? refused)
    {
        var shown = Shown(code);
        if (Work?.Next == CutStep.Measure && LengthText.Parse(refused ?? "") is { IsGood: true } measured && measured.Value < Work.Cut - settings.Current.Under)
            TooShort = measured.Value;
        return shown;
    }

    /// <summary>Takes a piece that waits.</summary>
    public Task<IActionResult> OnPostTakeAsync(string code, CancellationToken cancel) =>
        DoAsync(code, (piece, key) => bench.TakeAsync(piece, Me, key, cancel));

    /// <summary>Records a piece that was cut from its paper ticket.</summary>
    public Task<IActionResult> OnPostFromPaperAsync(string code, CancellationToken cancel) =>
        DoAsync(code, (piece, key) => bench.RecordCutAsync(piece, Me, key, cancel));

    /// <summary>Takes it over from someone else.</summary>
    public async Task<IActionResult> OnPostTakeOverAsync(string code, CancellationToken cancel) => Rights.Do(HttpContext, Rights.TakeTicketsOver)
        ? await DoAsync(code, (piece, key) => bench.TakeOverAsync(piece, Me, key, cancel))
        : Forbid();

    /// <summary>Hands it back.</summary>
    public Task<IActionResult> OnPostHandBackAsync(string code, CancellationToken cancel) =>
        DoAsync(code, (piece, key) => bench.HandBackAsync(piece, Me, key, cancel), done: "/cut");

    /// <summary>Ticks a step.</summary>
    public Task<IActionResult> OnPostTickAsync(string code, CutStep step, CancellationToken cancel) => DoAsync(
        code, (piece, key) => bench.TickAsync(piece, step, Me, key, cancel), done: step == CutStep.CoilAndTie ? $"/cut?done={code}" : null);

    /// <summary>Undoes the cut.</summary>
    public Task<IActionResult> OnPostUndoAsync(string code, string? reason, CancellationToken cancel) =>
        DoAsync(code, (piece, key) => bench.UndoAsync(piece, reason ?? "", Me, key, cancel));

    /// <summary>Refuses the piece.</summary>
    public Task<IActionResult> OnPostRejectAsync(string code, string? reason, CancellationToken cancel) =>
        DoAsync(code, (piece, key) => bench.RejectAsync(piece, reason ?? "", Me, key, cancel));

    /// <summary>Enters the measured length; a bare number is in the unit that leads for this person.</summary>
    public async Task<IActionResult> OnPostMeasureAsync(string code, string? measured, bool putAside, CancellationToken cancel)
    {
        if (!HasKey || PieceCode.Parse(code) is not { IsGood: true } piece)
            return BadRequest();
        var typed = (measured ?? "").Trim();
        var length = PersonUnits.Read(HttpContext, typed);
        if (!length.IsGood)
            return Answered(new BenchAnswer(BenchReplies.NotALength(typed)), $"/cut/{code}", () => Shown(code));
        var answer = await bench.MeasureAsync(piece.Value, length.Value, putAside, Me, RequestKey!, cancel);
        if (!answer.IsDone && bench.Find(piece.Value) is { Next: CutStep.Measure } work && work.ClaimedBy == Me && length.Value < work.Cut)
            return Answered(BenchAnswer.Nothing, $"/cut/{code}?refused={Uri.EscapeDataString(length.Value.ToString())}", () => Shown(code));
        return Answered(answer, $"/cut/{code}", () => Shown(code));
    }

    private async Task<IActionResult> DoAsync(string code, Func<PieceCode, string, Task<BenchAnswer>> work, string? done = null)
    {
        if (!HasKey || PieceCode.Parse(code) is not { IsGood: true } piece)
            return BadRequest();
        var answer = await work(piece.Value, RequestKey!);
        return Answered(answer, answer.IsDone && done is not null ? done : $"/cut/{code}", () => Shown(code));
    }

    private IActionResult Shown(string code)
    {
        var parsed = PieceCode.Parse(code);
        if (!parsed.IsGood || bench.Find(parsed.Value) is not { } work || jobs.Ticket(work.Code) is not { } ticket)
            return NotFound();
        Work = work;
        LeftOver = bench.LeftOver(work.Code);
        Piece = ticket.Work?.Piece;
        return Page();
    }
}
