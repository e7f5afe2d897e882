using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Benches;

/// <summary>A shop with coils hung, jobs taken in and a plan accepted: what a bench starts from.</summary>
public sealed class PlannedShop : IDisposable
{
    private static readonly PlanBudget Budget = new(TimeSpan.FromSeconds(10), UseSolver: false);

    private int _key;

    public static RopeKind Poly { get; } = new(RopeMaterial.Polypropylene, Inches("1 1/2"), RopeKind.ThreeStrand);

    public ShopOnDisk Shop { get; } = new();

    public CutBench Cut => new(Shop.Database);

    public DrillBench Drill => new(Shop.Database);

    public PackingBench Packing => new(Shop.Database);

    public CutPlanDesk Desk => new(Shop.Database);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static Length Inches(string number) => LengthText.Parse(number + " in").OrThrow();

    /// <summary>A key that no request had before.</summary>
    public string Key() => $"k{Interlocked.Increment(ref _key)}";

    public Task<StockAnswer> HangAsync(string length, string lot = "L1") =>
        Shop.Stock.ReceiveAsync(new(Poly, lot, LengthText.Parse(length).OrThrow(), "rack 1"), "Ada", Key(), Cancel);

    /// <summary>A job of one piece, its cut length as given, with two posts to drill.</summary>
    public async Task<PieceCode> TakeInAsync(string number, string cut, string? due = null)
    {
        var clear = Inches(cut) - Inches("5 1/2");
        var more = due is null ? "" : $"\"due\": \"{due}\",";
        await Shop.Intake.TakeInAsync(SmallJobs.OnePiece(number, LengthText.Brief(clear), more), "Ada", cancel: Cancel);
        var piece = Shop.Jobs.Find(number)!.Pieces[0];
        Assert.Equal(Inches(cut), piece.Cut);
        return piece.Code;
    }

    /// <summary>What jobs and tickets carry that is not what it is counted or copied from.</summary>
    public IReadOnlyList<CheckFinding> WrongCounts() => Shop.Database.Read(session => StoredCounts.Of(session).ToList());

    /// <summary>Plans all that waits and accepts it.</summary>
    public async Task<PlanAnswer> PlanAsync()
    {
        var draft = await Desk.DraftAsync(Poly, dueBy: null, Budget, "Ada", cancel: Cancel);
        return draft.IsDone ? await Desk.AcceptAsync(draft.PlanId, "Ada", Cancel) : draft;
    }

    /// <summary>One coil, and one piece planned from it.</summary>
    public async Task<PieceCode> OnePieceAsync()
    {
        await HangAsync("50 ft");
        var code = await TakeInAsync("LQ-1", "100");
        await PlanAsync();
        return code;
    }

    /// <summary>One piece at Cai's bench, cut and not yet measured.</summary>
    public async Task<PieceCode> OneCutOffAsync()
    {
        var code = await OnePieceAsync();
        AssertDone(await Cut.TakeAsync(code, "Cai", Key(), Cancel));
        await CutOffAsync(code);
        return code;
    }

    /// <summary>Ticks the two steps before measuring.</summary>
    public async Task CutOffAsync(PieceCode code, string who = "Cai")
    {
        foreach (var step in new[] { CutStep.Mark, CutStep.Cut })
            AssertDone(await Cut.TickAsync(code, step, who, Key(), Cancel));
    }

    /// <summary>Takes a piece, cuts it to a length and finishes it.</summary>
    public async Task FinishAsync(PieceCode code, Length measured, string who = "Cai")
    {
        AssertDone(await Cut.TakeAsync(code, who, Key(), Cancel));
        await CutOffAsync(code, who);
        AssertDone(await Cut.MeasureAsync(code, measured, isSure: false, who, Key(), Cancel));
        AssertDone(await Cut.TickAsync(code, CutStep.LabelAndTie, who, Key(), Cancel));
    }

    /// <summary>Rope that came in as bought coils, less where all of it is now by the ledger and the racks: zero in a shop that lost none.</summary>
    public IReadOnlyList<(string Mark, long Missing)> Missing() => Shop.Database.Read(session => session.All<(string, long)>(
        """
        SELECT mark, missing
        FROM (SELECT mark, CAST(whole_nm - left_nm - (SELECT coalesce(sum(nm), 0) FROM rope_uses WHERE coil_id = coils.id) AS bigint) AS missing FROM coils) AS ropes
        WHERE missing <> 0
        """));

    public static void AssertDone(BenchAnswer answer) => Assert.Null(answer.Problem);

    public void Dispose() => Shop.Dispose();
}
