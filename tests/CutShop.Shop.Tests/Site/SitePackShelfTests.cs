using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Site;

public sealed class SitePackShelfTests : IDisposable
{
    private readonly ShopOnDisk _shop = new();

    private SitePackShelf Packs => new(_shop.Database);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_job_s_pack_keeps_the_code_that_was_drawn_when_it_was_first_asked_for()
    {
        await _shop.Intake.TakeInAsync(SmallJobs.OnePiece("LQ-1"), "Ada", cancel: Cancel);
        await _shop.Intake.TakeInAsync(SmallJobs.OnePiece("LQ-2"), "Ada", cancel: Cancel);
        var codes = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Packs.CodeOfAsync("LQ-1", "Ada", Cancel)));
        Assert.Single(codes.Distinct());
        Assert.NotEqual(codes[0], await Packs.CodeOfAsync("LQ-2", "Ada", Cancel));
        Assert.Equal("LQ-1", Packs.Find(codes[0]!.Value)!.Job);
    }

    [Fact]
    public async Task A_job_that_is_not_there_has_no_pack_and_a_piece_s_code_opens_none()
    {
        await _shop.Intake.TakeInAsync(SmallJobs.OnePiece("LQ-1"), "Ada", cancel: Cancel);
        Assert.Null(await Packs.CodeOfAsync("LQ-9", "Ada", Cancel));
        Assert.Null(Packs.Find(_shop.Jobs.Find("LQ-1")!.Codes[0]));
        Assert.Null(Packs.Find(PieceCode.Draw()));
    }

    [Fact]
    public async Task A_pack_that_got_a_new_code_opens_by_that_one_alone_and_asking_twice_is_asking_once()
    {
        await _shop.Intake.TakeInAsync(SmallJobs.OnePiece("LQ-1"), "Ada", cancel: Cancel);
        var old = (await Packs.CodeOfAsync("LQ-1", "Ada", Cancel))!.Value;
        var first = await Packs.ReplaceAsync("LQ-1", "the list was lost", "Ada", "k", Cancel);
        var again = await Packs.ReplaceAsync("LQ-1", "the list was lost", "Ada", "k", Cancel);
        var now = (await Packs.CodeOfAsync("LQ-1", "Ada", Cancel))!.Value;
        Assert.NotEqual(old, now);
        Assert.Equal([now.Plain, now.Plain], [first.Outcome, again.Outcome]);
        Assert.Null(Packs.Find(old));
        Assert.Equal("LQ-1", Packs.Find(now)!.Job);
    }

    [Fact]
    public async Task A_pack_gets_no_new_code_without_a_reason_or_before_it_has_one()
    {
        await _shop.Intake.TakeInAsync(SmallJobs.OnePiece("LQ-1"), "Ada", cancel: Cancel);
        Assert.False((await Packs.ReplaceAsync("LQ-1", "lost", "Ada", "k1", Cancel)).IsDone);
        var code = await Packs.CodeOfAsync("LQ-1", "Ada", Cancel);
        Assert.False((await Packs.ReplaceAsync("LQ-1", " ", "Ada", "k2", Cancel)).IsDone);
        Assert.Equal(code, await Packs.CodeOfAsync("LQ-1", "Ada", Cancel));
    }

    [Fact]
    public async Task A_pack_has_every_piece_with_its_code_and_its_mark()
    {
        await _shop.Intake.TakeInAsync(ShopOnDisk.Demo("lq-1042-north-walk.json"), "Ada", cancel: Cancel);
        var job = _shop.Jobs.Find("LQ-1042")!;
        await new InstalledMarks(_shop.Database).MarkAsync(job.Codes[1], new(InstalledState.Installed, InstalledState.NotInstalled, At: null, IsSure: true), "site", "k", Cancel);
        var pack = Packs.Find((await Packs.CodeOfAsync("LQ-1042", "Ada", Cancel))!.Value)!;
        Assert.Equal(job.Pieces.Select(piece => (piece.Run, piece.Code)), pack.Pieces.Select(piece => (piece.Piece.Run, piece.Code)));
        Assert.Equal([1], pack.Pieces.Index().Where(pair => pair.Item.State == InstalledState.Installed).Select(pair => pair.Index));
    }

    public void Dispose() => _shop.Dispose();
}
