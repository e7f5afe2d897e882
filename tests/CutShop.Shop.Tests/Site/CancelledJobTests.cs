using CutShop.Shop.Tests.Benches;

namespace CutShop.Shop.Tests.Site;

public sealed class CancelledJobTests : IDisposable
{
    private readonly PlannedShop _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private ShopDatabase Database => _shop.Shop.Database;

    [Fact]
    public async Task The_labels_and_the_pack_of_a_cancelled_job_lead_to_nothing_to_hang()
    {
        await _shop.HangAsync("50 ft");
        var cut = await _shop.TakeInAsync("LQ-1", "100");
        await _shop.PlanAsync();
        await _shop.FinishAsync(cut, PlannedShop.Inches("100"));
        var packs = new SitePackShelf(Database);
        var pack = (await packs.CodeOfAsync("LQ-1", "Ada", Cancel))!.Value;
        var pieces = new PieceShelf(Database);
        Assert.Equal(LabelState.Good, pieces.Find(cut)!.Label);
        Assert.NotNull(packs.Find(pack));

        await new JobRelease(Database).CancelAsync("LQ-1", "no longer wanted", "Ada", Cancel);
        Assert.Null(packs.Find(pack));
        var marked = await new InstalledMarks(Database).MarkAsync(cut, new(InstalledState.Installed, InstalledState.NotInstalled, DateTimeOffset.UtcNow), "site", "k1", Cancel);
        Assert.Equal(SiteOutcome.NoLongerWanted, marked.Outcome);
        var found = pieces.Find(cut)!;
        Assert.Equal((LabelState.NoLongerWanted, "surplus", true, true), (found.Label, found.Ticket, found.IsJobCancelled, found.WasCut));

        // Hung up as an offcut the piece is none any more, and its label, if it still hangs there, says so.
        await new SurplusShelf(Database).HangUpAsync(cut, "Ada", _shop.Key(), Cancel);
        found = pieces.Find(cut)!;
        Assert.Equal((LabelState.NoLongerWanted, "cancelled", true), (found.Label, found.Ticket, found.WasCut));
    }

    public void Dispose() => _shop.Dispose();
}
