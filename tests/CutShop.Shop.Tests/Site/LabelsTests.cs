using CutShop.Shop.Tests.Benches;
using static CutShop.Shop.Tests.Benches.PlannedShop;

namespace CutShop.Shop.Tests.Site;

public sealed class LabelsTests : IDisposable
{
    private readonly PlannedShop _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private LabelShelf Labels => new(_shop.Shop.Database);

    private PieceShelf Pieces => new(_shop.Shop.Database);

    [Fact]
    public async Task A_revoked_label_says_only_that_it_counts_no_more_and_the_new_code_is_the_piece()
    {
        var old = await _shop.TakeInAsync("LQ-1", "100");
        var code = await ReplaceAsync(old, "k");
        Assert.Equal(LabelState.Ended, Pieces.Find(old)!.Label);
        Assert.Null(Pieces.Find(old)!.Takeoff);
        Assert.Equal((LabelState.Good, "A-top-1"), (Pieces.Find(code)!.Label, Pieces.Find(code)!.Run));
        Assert.Equal(code, _shop.Shop.Jobs.Find("LQ-1")!.Codes[0]);
        Assert.Equal(
            $"{old}>{code} lost in the van",
            _shop.Shop.Database.Read(session => session.Value<string>("SELECT before || '>' || after || ' ' || reason FROM history WHERE what = 'label-replaced'")));
    }

    [Fact]
    public async Task The_new_code_works_at_the_benches_and_the_old_one_nowhere()
    {
        await _shop.HangAsync("50 ft");
        var old = await _shop.TakeInAsync("LQ-1", "100");
        await _shop.PlanAsync();
        var code = await ReplaceAsync(old, "k");
        var scans = new ScanResolver(_shop.Shop.Database);
        Assert.Equal(code, scans.Read($"HTTPS://SHOP.EXAMPLE/P/{code.Plain}").Found!.Code);
        Assert.Equal(
            $"The label {old} is no longer valid: A-top-1 of job LQ-1 has a new label, {code}. Look for it or print it, and take the old one off.",
            scans.Read($"HTTPS://SHOP.EXAMPLE/P/{old.Plain}") is { Found: null } ended ? $"{ended.Why}" : null);
        await _shop.FinishAsync(code, Inches("100"));
        AssertDone(await _shop.Packing.PackAsync("LQ-1", code, "Cai", _shop.Key(), Cancel));
        Assert.False((await _shop.Packing.UnpackAsync(old, "Cai", _shop.Key(), Cancel)).IsDone);
    }

    [Fact]
    public async Task Sent_twice_the_label_is_replaced_once_and_every_old_one_stays_ended()
    {
        var first = await _shop.TakeInAsync("LQ-1", "100");
        var second = await ReplaceAsync(first, "k1");
        Assert.Equal(second, await ReplaceAsync(first, "k1"));
        var third = await ReplaceAsync(second, "k2");
        Assert.Equal([LabelState.Ended, LabelState.Ended, LabelState.Good], new[] { first, second, third }.Select(code => Pieces.Find(code)!.Label));
    }

    [Fact]
    public async Task Without_a_reason_or_for_a_label_that_is_ended_nothing_changes()
    {
        var code = await _shop.TakeInAsync("LQ-1", "100");
        Assert.False((await Labels.ReplaceAsync(code, "", "Jory", "k1", Cancel)).IsDone);
        Assert.Equal(LabelState.Good, Pieces.Find(code)!.Label);
        await ReplaceAsync(code, "k2");
        Assert.False((await Labels.ReplaceAsync(code, "once more", "Jory", "k3", Cancel)).IsDone);
        Assert.Equal(1, _shop.Shop.Count("ended_labels"));
    }

    public void Dispose() => _shop.Dispose();

    private async Task<PieceCode> ReplaceAsync(PieceCode code, string key)
    {
        var answer = await Labels.ReplaceAsync(code, "lost in the van", "Jory", key, Cancel);
        AssertDone(answer);
        return PieceCode.Parse(answer.Outcome).OrThrow();
    }
}
