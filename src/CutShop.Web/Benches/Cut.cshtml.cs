using CutShop.Shop.Benches;
using CutShop.Shop.Stock;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;

namespace CutShop.Web.Benches;

/// <summary>The cut bench between two pieces: one large button that gives the next.</summary>
[MaySend(Rights.CutRope)]
public sealed class CutModel(CutBench bench, CoilShelf stock, StalePlans fit, CutPlanDesk desk, TimeProvider time) : BenchPage
{
    /// <summary>Pieces at the benches.</summary>
    public IReadOnlyList<CutWork> Others { get; private set; } = [];

    /// <summary>Pieces cut last.</summary>
    public IReadOnlyList<CutWork> Latest { get; private set; } = [];

    /// <summary>Pieces that wait, and those of them that a plan gives a coil.</summary>
    public (long Planned, long All) Queue { get; private set; }

    /// <summary>Accepted plans that no longer fit.</summary>
    public IReadOnlyList<StalePlan> Stale { get; private set; } = [];

    /// <summary>The piece just done, or null.</summary>
    public CutWork? Done { get; private set; }

    /// <summary>What the piece just done left beside it.</summary>
    public LeftOver LeftOver { get; private set; } = new([], Length.Zero);

    /// <summary>The coil that the last tap set right, and whether that can be taken back; or null.</summary>
    public CoilSetRight? SetRight { get; private set; }

    /// <summary>A scan that led nowhere, or null.</summary>
    public string? Lost { get; private set; }

    /// <summary>The shop's clock.</summary>
    public TimeProvider Time => time;

    /// <summary>Shows the bench, or the piece that this person has.</summary>
    public IActionResult OnGet(string? done, string? lost, string? coil)
    {
        if (bench.Of(Me) is { } mine && lost is null)
            return Redirect($"/cut/{mine.Code.Plain}");
        Lost = lost;
        SetRight = CoilSetRight.Of(coil, stock, bench);
        Done = PieceCode.Parse(done ?? "") is { IsGood: true } code ? bench.Find(code.Value) : null;
        if (Done is not null)
            LeftOver = bench.LeftOver(Done.Code);
        return Shown();
    }

    /// <summary>Gives the next piece.</summary>
    public async Task<IActionResult> OnPostNextAsync(CancellationToken cancel)
    {
        if (!HasKey)
            return BadRequest();
        var answer = await bench.NextAsync(Me, RequestKey!, cancel);
        return Answered(answer, answer.IsDone ? $"/cut/{answer.Outcome}" : "/cut", Shown);
    }

    /// <summary>Takes back what was said of a coil, and makes its plan anew.</summary>
    public async Task<IActionResult> OnPostCoilBackAsync(string? coil, CancellationToken cancel)
    {
        if (!HasKey)
            return BadRequest();
        var answer = await bench.TakeCoilBackAsync(coil ?? "", Me, RequestKey!, cancel);
        if (answer.IsDone && stock.Find(answer.Outcome) is { } back && desk.AcceptedPlan(back.Kind) is { } plan)
            await desk.MendAsync(plan, CutTicketModel.Mending, Me, cancel);
        var to = bench.Of(Me) is { } mine ? $"/cut/{mine.Code.Plain}" : "/cut";
        return Answered(answer, answer.IsDone ? $"{to}?coil={answer.Outcome}" : to, Shown);
    }

    private IActionResult Shown()
    {
        (Others, Latest, Queue) = (bench.AtTheBench(), bench.Latest(), bench.Waiting());
        Stale = [.. fit.Stale().Where(plan => plan.State == "accepted")];
        return Page();
    }
}
