using static CutShop.Shop.Tests.Benches.PlannedShop;

namespace CutShop.Shop.Tests.Benches;

/// <summary>A tap that got no answer is sent again with the same key: it counts once, at every operation of every bench.</summary>
public sealed class RequestsSentTwiceTests : IDisposable
{
    private readonly PlannedShop _shop = new();
    private PieceCode _code;

    public enum Operation
    {
        Next,
        Take,
        Tick,
        Measure,
        MeasureLong,
        PutAside,
        HandBack,
        TakeOver,
        Undo,
        UndoStep,
        MeasureAgain,
        Scan,
        CoilEnds,
        BadStretch,
        CoilNotFound,
        TakeCoilBack,
        Reject,
        RecordCut,
        Pack,
        Unpack,
        NextPost,
        TakePost,
        TickDrilling,
        Fits,
        Damage,
        NewPost,
        HandBackPost,
        TakeOverPost,
        UndoPost,
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static TheoryData<Operation> All => [.. Enum.GetValues<Operation>()];

    [Theory]
    [MemberData(nameof(All))]
    public async Task A_request_sent_twice_counts_once(Operation operation)
    {
        await _shop.HangAsync("50 ft");
        _code = await _shop.TakeInAsync("LQ-1", "100");
        await _shop.PlanAsync();
        await PrepareAsync(operation);
        var before = Lines();
        var first = await DoAsync(operation, "the key");
        AssertDone(first);
        var (lines, rope) = (Lines(), Rope());
        Assert.True(lines > before);
        _shop.Shop.Time.Advance(TimeSpan.FromDays(3));
        Assert.Equal(first, await DoAsync(operation, "the key"));
        Assert.Equal((lines, rope), (Lines(), Rope()));
        Assert.Empty(_shop.Missing());
    }

    public void Dispose() => _shop.Dispose();

    private async Task PrepareAsync(Operation operation)
    {
        if (operation is Operation.TakeCoilBack or Operation.CoilEnds or Operation.BadStretch or Operation.CoilNotFound or Operation.Scan or Operation.UndoStep or Operation.Tick or Operation.HandBack or Operation.TakeOver or Operation.Measure or Operation.MeasureLong or Operation.PutAside)
            AssertDone(await _shop.Cut.TakeAsync(_code, "Cai", _shop.Key(), Cancel));
        if (operation is Operation.UndoStep or Operation.Measure or Operation.MeasureLong or Operation.PutAside)
            await _shop.CutOffAsync(_code);
        if (operation is Operation.Undo or Operation.MeasureAgain or Operation.Reject or Operation.Pack or Operation.Unpack)
            await _shop.FinishAsync(_code, Inches("100"));
        if (operation == Operation.TakeCoilBack)
            AssertDone(await DoAsync(Operation.CoilEnds, "ended"));
        if (operation == Operation.Unpack)
            AssertDone(await DoAsync(Operation.Pack, "packed"));
        if (operation is Operation.TickDrilling or Operation.Fits or Operation.Damage or Operation.NewPost or Operation.HandBackPost or Operation.TakeOverPost or Operation.UndoPost)
            AssertDone(await DoAsync(Operation.TakePost, "taken"));
        if (operation is Operation.Fits or Operation.UndoPost)
            AssertDone(await DoAsync(Operation.TickDrilling, "ticked"));
        if (operation == Operation.UndoPost)
            AssertDone(await DoAsync(Operation.Fits, "fits"));
        if (operation == Operation.NewPost)
            AssertDone(await DoAsync(Operation.Damage, "spoiled"));
    }

    private Task<BenchAnswer> DoAsync(Operation operation, string key) => operation switch
    {
        Operation.Next => _shop.Cut.NextAsync("Cai", key, Cancel),
        Operation.Take => _shop.Cut.TakeAsync(_code, "Cai", key, Cancel),
        Operation.Tick => _shop.Cut.TickAsync(_code, CutStep.Mark, "Cai", key, Cancel),
        Operation.Measure => _shop.Cut.MeasureAsync(_code, Inches("100"), isSure: false, "Cai", key, Cancel),
        Operation.MeasureLong => _shop.Cut.MeasureAsync(_code, Inches("102"), isSure: false, "Cai", key, Cancel),
        Operation.PutAside => _shop.Cut.MeasureAsync(_code, Inches("98"), isSure: true, "Cai", key, Cancel),
        Operation.HandBack => _shop.Cut.HandBackAsync(_code, "Cai", key, Cancel),
        Operation.TakeOver => _shop.Cut.TakeOverAsync(_code, "Ada", key, Cancel),
        Operation.UndoStep => _shop.Cut.UndoStepAsync(_code, CutStep.Cut, "Cai", key, Cancel),
        Operation.MeasureAgain => _shop.Cut.MeasureAgainAsync(_code, "Cai", key, Cancel),
        Operation.Scan => _shop.Cut.ScanAsync(_code, "K0001", "Cai", key, Cancel),
        Operation.CoilEnds => _shop.Cut.CoilEndsAsync(_code, Inches("20"), "Cai", key, Cancel),
        Operation.BadStretch => _shop.Cut.BadStretchAsync(_code, Inches("20"), "Cai", key, Cancel),
        Operation.CoilNotFound => _shop.Cut.CoilNotFoundAsync(_code, "Cai", key, Cancel),
        Operation.TakeCoilBack => _shop.Cut.TakeCoilBackAsync("K0001", "Cai", key, Cancel),
        Operation.Undo => _shop.Cut.UndoAsync(_code, "a slip", "Cai", key, Cancel),
        Operation.Reject => _shop.Cut.RejectAsync(_code, "frayed", isSound: false, "Cai", key, Cancel),
        Operation.RecordCut => _shop.Cut.RecordCutAsync(_code, "Cai", key, Cancel),
        Operation.Pack => _shop.Packing.PackAsync("LQ-1", _code, "Eva", key, Cancel),
        Operation.Unpack => _shop.Packing.UnpackAsync(_code, "Eva", key, Cancel),
        Operation.NextPost => _shop.Drill.NextAsync("Dov", key, Cancel),
        Operation.TakePost => _shop.Drill.TakeAsync(("LQ-1", "A1"), "Dov", key, Cancel),
        Operation.TickDrilling => _shop.Drill.TickAsync(("LQ-1", "A1"), 1, "Dov", key, Cancel),
        Operation.Fits => _shop.Drill.FitsAsync(("LQ-1", "A1"), "Dov", key, Cancel),
        Operation.Damage => _shop.Drill.DamageAsync(("LQ-1", "A1"), "split", "Dov", key, Cancel),
        Operation.NewPost => _shop.Drill.NewPostAsync(("LQ-1", "A1"), "Dov", key, Cancel),
        Operation.HandBackPost => _shop.Drill.HandBackAsync(("LQ-1", "A1"), "Dov", key, Cancel),
        Operation.TakeOverPost => _shop.Drill.TakeOverAsync(("LQ-1", "A1"), "Ada", key, Cancel),
        Operation.UndoPost => _shop.Drill.UndoAsync(("LQ-1", "A1"), "a slip", "Dov", key, Cancel),
        _ => throw new ArgumentOutOfRangeException(nameof(operation), operation, message: null),
    };

    private long Lines() => _shop.Shop.Count("history");

    private long Rope() => _shop.Shop.Count("rope_uses") + _shop.Shop.Count("coils") + _shop.Shop.Count("re_cuts") + _shop.Shop.Count("damages");
}
