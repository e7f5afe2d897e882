using CutShop.CutPlan;
using CutShop.Paper.Words;
using CutShop.Shop.Benches;
using CutShop.Shop.Jobs;
using CutShop.Shop.Orders;
using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;
using CutShop.Takeoff.Tables;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;

using static CutShop.Web.Benches.BenchWords;

namespace CutShop.Web.Benches;

/// <summary>One piece at the cut bench: what to cut from which coil, and one step after the other.</summary>
[MaySend(Rights.CutRope)]
public sealed class CutTicketModel(
    CutBench bench, ScanResolver scans, JobShelf jobs, CoilShelf stock, StalePlans fit, CutPlanDesk desk, BenchSettingsShelf settings, TimeProvider time) : BenchPage
{
    /// <summary>How long a plan is searched for while somebody waits at the bench.</summary>
    internal static readonly PlanBudget Mending = new(TimeSpan.FromSeconds(5), UseSolver: false);

    /// <summary>The ticket.</summary>
    public CutWork? Work { get; private set; }

    /// <summary>The piece as it was promised; null where a change took it out before a program kept that.</summary>
    public Piece? Piece { get; private set; }

    /// <summary>Its rope.</summary>
    public Rope Rope => Piece?.Rope ?? new(Rope.Materials[Work!.Material], Work.Diameter);

    /// <summary>Its rope in words, by its nominal size.</summary>
    public string RopeInWords => RopeWords.Shrunk(Piece is { IsPreshrunk: true }, RopeWords.Of(Rope with { Measured = null }, Paper, Figures), Paper);

    /// <summary>What its cuts left beside it.</summary>
    public LeftOver LeftOver { get; private set; } = new([], Length.Zero);

    /// <summary>A length that is asked about before it is taken, or null.</summary>
    public TapeQuestion? Question { get; private set; }

    /// <summary>How much of the coil is to be cut out as bad, asked once more, or null.</summary>
    public Length? Bad { get; private set; }

    /// <summary>The coil that the last tap set right, and whether that can be taken back; or null.</summary>
    public CoilSetRight? SetRight { get; private set; }

    /// <summary>The piece that was done just before this one, or null.</summary>
    public CutWork? Done { get; private set; }

    /// <summary>The shop's clock.</summary>
    public TimeProvider Time => time;

    /// <summary>True where this person may cut.</summary>
    public bool MaySend => Rights.Do(HttpContext, Rights.CutRope);

    /// <summary>True where this person has it at the bench.</summary>
    public bool IsMine => Work!.IsOf(Me);

    /// <summary>True where nothing is cut of the coil yet, so that it can be changed for another.</summary>
    public bool MayChangeCoil => IsMine && Work!.Steps < (int)CutStep.Cut;

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

    /// <summary>The bad stretches that are cut out with one tap, in the units that the cutter reads; any other is typed.</summary>
    public IEnumerable<Length> BadStretches => Figures.First == UnitsFirst.FeetInches
        ? [Length.Foot, 3 * Length.Foot, 6 * Length.Foot]
        : [300 * Length.Millimetre, Length.Metre, 2 * Length.Metre];

    /// <summary>What can be corrected afterwards: address, heading, explanation, reasons to tap, each as it is kept and in words.</summary>
    public IEnumerable<(string Handler, string Heading, string What, IReadOnlyList<(string Kept, string Said)> Reasons)> Corrections =>
    [
        ("Undo", T["UndoCut"], T["UndoCutResult"], [("wrong ticket", T["WrongTicket"]), ("tapped by mistake", T["TappedByMistake"])]),
        ("Reject&sound=true", T["RejectPiece"], T["RejectPieceResult"], [.. CutReasons.BadPiece.Select(reason => (reason, SaidOf(reason)))]),
        ("Reject", T["RejectRope"], T["RejectRopeResult"], [.. CutReasons.BadRope.Select(reason => (reason, SaidOf(reason)))]),
    ];

    /// <summary>A step in a few words.</summary>
    public string NameOf(CutStep step) => step switch
    {
        CutStep.Mark => T["PullAndMark"],
        CutStep.Cut => Rope.IsNatural ? T["EndsAndCutCold"] : T["EndsAndCutHot"],
        CutStep.Measure => T["Measure"],
        CutStep.LabelAndTie => T["LabelAndTie"],
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
            CutStep.Mark => [.. Piece is not null && words.WettingOfCoil(Piece, Figures.Both) is { } coil ? [coil] : (string[])[], steps[0]],
            CutStep.Cut => [steps[1], .. (Piece is null ? [] : (AtPost[])[Piece.AtPosts[0], Piece.AtPosts[^1]]).Select(at =>
                $"{at.Post.Mark}, {words.AtPost(at)}: {words.EndPreparation(Piece!, at)}"), steps[2], natural ? words.CuttingNaturalCautions[0] : words.CuttingSyntheticCautions[0]],
            CutStep.Measure => [T["MeasureEndToEnd"]],
            CutStep.LabelAndTie =>
            [
                .. Piece is null ? [] : words.Splices(Piece, Figures).SelectMany(splice => splice.Steps.Prepend(splice.Caption)),
                T["PutLabelOn", Work.Code],
                steps[5],
                .. Lifting.TakesTwo(Piece?.WeightLb) ? [words.WeightToLift(Piece!.WeightLb)] : (string[])[],
                .. Piece is null ? [] : words.WettingOfPiece(Piece, Figures.Both),
            ],
            _ => throw new ArgumentOutOfRangeException(nameof(step), step, message: null),
        };
    }

    /// <summary>Shows the piece.</summary>
    /// <param name="code">Its code.</param>
    /// <param name="read">A length as it was typed, to be asked about.</param>
    /// <param name="bad">A bad stretch as it was typed, to be asked about.</param>
    /// <param name="coil">The coil that was set right.</param>
    /// <param name="done">The code of the piece done before.</param>
    public IActionResult OnGet(string code, string? read, string? bad, string? coil, string? done)
    {
        var shown = Shown(code);
        if (Work is null)
            return shown;
        if (IsMine && Work.Next == CutStep.Measure)
            Question = QuestionOf(Work, read ?? "");
        if (MayChangeCoil && PersonUnits.Read(HttpContext, bad ?? "") is { IsGood: true, Value.IsPositive: true } stretch)
            Bad = stretch.Value;
        SetRight = CoilSetRight.Of(coil, stock, bench);
        Done = PieceCode.Parse(done ?? "") is { IsGood: true } before && bench.Find(before.Value) is { IsFinished: true } piece ? piece : null;
        if (Done is not null)
            LeftOver = bench.LeftOver(Done.Code);
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
        code, (piece, key) => bench.TickAsync(piece, step, Me, key, cancel), done: step == CutStep.LabelAndTie ? $"/cut?done={code}" : null);

    /// <summary>Undoes the step that was done last.</summary>
    public Task<IActionResult> OnPostUndoStepAsync(string code, CutStep step, CancellationToken cancel) =>
        DoAsync(code, (piece, key) => bench.UndoStepAsync(piece, step, Me, key, cancel));

    /// <summary>Takes the measured length back, to measure again.</summary>
    public Task<IActionResult> OnPostMeasureAgainAsync(string code, CancellationToken cancel) =>
        DoAsync(code, (piece, key) => bench.MeasureAgainAsync(piece, Me, key, cancel));

    /// <summary>Takes a scan at the bench; the label that ends a piece gives the next one.</summary>
    public async Task<IActionResult> OnPostScanAsync(string code, string? text, CancellationToken cancel)
    {
        if (!HasKey || PieceCode.Parse(code) is not { IsGood: true } piece)
            return BadRequest();
        if (bench.Find(piece.Value) is not { } before)
            return NotFound();
        var scan = (text ?? "").Trim();
        var answer = await bench.ScanAsync(piece.Value, scan, Me, RequestKey!, cancel);
        var isDone = answer.IsDone && bench.Find(piece.Value) is { IsFinished: true };
        Shown(code);
        if (isDone || before.IsOf(Me))
            Verdict = isDone ? new(IsRight: true, T["LabelRight"], T["PieceDone", before.Run, before.Job, T[BenchReplies.State(TicketStates.Cut)]])
                : VerdictOf(before, bench.Look(before, scan));
        var to = isDone ? await NextAsync($"done={code}", cancel) : $"/cut/{code}";
        // What a wrong scan is, the verdict says.
        return Answered(Verdict is null ? answer : BenchAnswer.Nothing, to, Page);
    }

    /// <summary>The coil ends before its books say so.</summary>
    public Task<IActionResult> OnPostCoilEndsAsync(string code, string? left, CancellationToken cancel) =>
        CoilAsync(code, left ?? "0", (piece, length, key) => bench.CoilEndsAsync(piece, length, Me, key, cancel), cancel);

    /// <summary>A bad stretch of the coil is cut out, once it was asked about.</summary>
    public async Task<IActionResult> OnPostBadStretchAsync(string code, string? bad, bool sure, CancellationToken cancel)
    {
        if (!HasKey)
            return BadRequest();
        var typed = (bad ?? "").Trim();
        return sure || !PersonUnits.Read(HttpContext, typed).IsGood
            ? await CoilAsync(code, typed, (piece, length, key) => bench.BadStretchAsync(piece, length, Me, key, cancel), cancel)
            : Answered(BenchAnswer.Nothing, $"/cut/{code}?bad={Uri.EscapeDataString(typed)}", () => Shown(code));
    }

    /// <summary>The coil is not where it hangs.</summary>
    public Task<IActionResult> OnPostCoilNotFoundAsync(string code, CancellationToken cancel) =>
        CoilAsync(code, "0", (piece, _, key) => bench.CoilNotFoundAsync(piece, Me, key, cancel), cancel);

    /// <summary>Undoes the cut.</summary>
    public Task<IActionResult> OnPostUndoAsync(string code, string? reason, CancellationToken cancel) =>
        WithReasonAsync(code, reason, (piece, why, key) => bench.UndoAsync(piece, why, Me, key, cancel), cancel);

    /// <summary>Refuses the piece.</summary>
    public Task<IActionResult> OnPostRejectAsync(string code, string? reason, bool sound, CancellationToken cancel) =>
        WithReasonAsync(code, reason, (piece, why, key) => bench.RejectAsync(piece, why, sound, Me, key, cancel), cancel);

    /// <summary>Enters the measured length; a bare number is in the unit that leads for this person.</summary>
    public async Task<IActionResult> OnPostMeasureAsync(string code, string? measured, bool sure, CancellationToken cancel)
    {
        if (!HasKey || PieceCode.Parse(code) is not { IsGood: true } piece)
            return BadRequest();
        var typed = (measured ?? "").Trim();
        var length = PersonUnits.Read(HttpContext, typed);
        if (!length.IsGood)
            return await NotALengthAsync(code, typed, cancel);
        var answer = await bench.MeasureAsync(piece.Value, length.Value, sure, Me, RequestKey!, cancel);
        if (!answer.IsDone && !sure && bench.Find(piece.Value) is { Next: CutStep.Measure } work && work.IsOf(Me) && QuestionOf(work, typed) is not null)
            return Answered(BenchAnswer.Nothing, $"/cut/{code}?read={Uri.EscapeDataString(typed)}", () => Shown(code));
        return Answered(answer, $"/cut/{code}", () => Shown(code));
    }

    private static string SaidOf(string reason) => reason switch
    {
        "frayed" => T["Frayed"],
        "damaged" => T["Damaged"],
        "wrong length" => T["WrongLength"],
        "wrong rope" => T["WrongRope"],
        "bad end" => T["BadEnd"],
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, message: null),
    };

    /// <summary>What is to be asked about a length before it is taken, or null where nothing is.</summary>
    private TapeQuestion? QuestionOf(CutWork work, string typed)
    {
        if (PersonUnits.Read(HttpContext, typed) is not { IsGood: true, Value.IsPositive: true } length)
            return null;
        var reading = TapeReadings.Of(work, settings.Current, length.Value);
        if (reading is TapeReading.Good or TapeReading.TooLong)
            return null;
        // A number without a unit may be right in another: the marks of the tape's other side, or feet for inches.
        var others = TypedLength.IsBare(typed)
            ? TypedLength.Units.Keys.Select(unit => $"{typed.Trim()} {unit}")
                .Where(text => LengthText.Parse(text) is { IsGood: true } other && other.Value != length.Value && TapeReadings.IsAbout(work.Cut, other.Value))
            : [];
        return new(typed, length.Value, reading, [.. others.Select(text => (text, LengthText.Parse(text).OrThrow()))]);
    }

    private Verdict VerdictOf(CutWork work, (CutScan Is, Scanned? What) seen)
    {
        var wanted = work.Next == CutStep.LabelAndTie ? T["WantedLabel", work.Job, work.Run, work.Code] : T["WantedCoil", work.Coil, work.Lot, work.HangsAt];
        return seen switch
        {
            (CutScan.RightCoil, { Coil: { } coil }) => new(IsRight: true, T["CoilRight", coil.Mark], T["LotHangsAt", coil.Lot, coil.Place]),
            (CutScan.OtherCoil, { Coil: { } coil }) => new(IsRight: false, T["ThisIsCoil", coil.Mark], T["LotHangsAt", coil.Lot, coil.Place], wanted),
            (CutScan.OtherPiece, { Code: { } piece } found) => new(
                IsRight: false,
                T["ThisIsLabel", found.Job, bench.Find(piece)?.Run],
                T["Code", piece],
                bench.Find(piece) is { } other ? T[BenchReplies.State(other.State)] : "–",
                wanted),
            (CutScan.LabelNotDue or CutScan.RightLabel, _) => new(IsRight: false, T["LabelNotDue"], T["NowIs", work.Next is { } next ? NameOf(next) : "–"]),
            (_, { Post: { } post } found) => new(IsRight: false, T["ThisIsPost", found.Job, post], wanted),
            _ => new(IsRight: false, T["NotKnown"], wanted),
        };
    }

    /// <summary>Sets a coil right, makes its plan anew and goes on to the next piece, or stays at this one where the coil still gives it.</summary>
    private async Task<IActionResult> CoilAsync(
        string code, string typed, Func<PieceCode, Length, string, Task<BenchAnswer>> work, CancellationToken cancel)
    {
        if (!HasKey || PieceCode.Parse(code) is not { IsGood: true } piece)
            return BadRequest();
        var length = typed.Trim() == "0" ? Parsed.Good(Length.Zero) : PersonUnits.Read(HttpContext, typed);
        if (!length.IsGood)
            return await NotALengthAsync(code, typed, cancel);
        var coil = bench.Find(piece.Value)?.Coil;
        var answer = await work(piece.Value, length.Value, RequestKey!);
        if (!answer.IsDone)
            return Answered(answer, $"/cut/{code}", () => Shown(code));
        foreach (var plan in fit.Stale().Where(plan => plan.State == PlanStates.Accepted && plan.Coil == coil).Select(plan => plan.PlanId).Distinct())
            await desk.MendAsync(plan, Mending, Me, cancel);
        var said = $"coil={coil}";
        var to = bench.Find(piece.Value) is { } left && left.IsOf(Me) ? $"/cut/{code}?{said}" : await NextAsync(said, cancel);
        return Answered(answer, to, () => Shown(code));
    }

    /// <summary>What does not read as a length may be a scan, made while the field had the focus: it is taken as one.</summary>
    private async Task<IActionResult> NotALengthAsync(string code, string typed, CancellationToken cancel) => scans.InsteadOfLength(typed) is { } scan
        ? await ScannedAsync(code, scan, cancel)
        : Answered(new BenchAnswer(BenchReplies.NotALength(typed)), $"/cut/{code}", () => Shown(code));

    /// <summary>A reason that is no scan, which a field for a reason may take.</summary>
    private Task<IActionResult> WithReasonAsync(
        string code, string? reason, Func<PieceCode, string, string, Task<BenchAnswer>> work, CancellationToken cancel) => ScanResolver.InsteadOfWords(reason ?? "") is { } scan
        ? ScannedAsync(code, scan, cancel)
        : DoAsync(code, (piece, key) => work(piece, reason ?? "", key));

    /// <summary>A scan that another field took, for the piece that this person has; elsewhere it opens what was scanned.</summary>
    private Task<IActionResult> ScannedAsync(string code, string scan, CancellationToken cancel) =>
        PieceCode.Parse(code) is { IsGood: true } piece && bench.Find(piece.Value)?.IsOf(Me) == true
            ? OnPostScanAsync(code, scan, cancel)
            : Task.FromResult(OpenScanned(scan, "cut", () => Shown(code)));

    /// <summary>The page of the next piece, which is given with this, or of the bench where none is.</summary>
    private async Task<string> NextAsync(string said, CancellationToken cancel) =>
        await bench.NextAsync(Me, $"{RequestKey}-next", cancel) is { IsDone: true } next ? $"/cut/{next.Outcome}?{said}" : $"/cut?{said}";

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
