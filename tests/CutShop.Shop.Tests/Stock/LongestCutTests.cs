using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Stock;

/// <summary>What is offered as a job's longest cut.</summary>
public sealed class LongestCutTests : IDisposable
{
    private static readonly RopeKind Manila = new(RopeMaterial.Manila, Length.FromInches(2), RopeKind.ThreeStrand);

    private readonly ShopOnDisk _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private LongestCut Longest => new(_shop.Database);

    public void Dispose() => _shop.Dispose();

    // By hand: 600 ft are 7200 in, less 1 in off the end, 1/8 in of kerf and 1/4 in of squaring: 7198 5/8, whole inches 7198.
    [Fact]
    public async Task Without_coils_it_is_what_a_bought_coil_gives()
    {
        await BuyAsync("300 ft; 600 ft");
        Assert.Equal(new LongestPiece(Length.FromInches(7198), Coil: null), Longest.Of(Manila));
    }

    // A full coil of 700 ft: 8400 in less 1 3/8; an opened one is trimmed already, less 3/8.
    [Fact]
    public async Task A_longer_coil_on_hand_gives_more_and_one_of_another_rope_does_not_count()
    {
        await BuyAsync("600 ft");
        await ReceiveAsync(Manila with { Diameter = Length.Inch }, "900 ft");
        Assert.Null(Longest.Of(Manila)!.Coil);
        var mark = await ReceiveAsync(Manila, "700 ft");
        Assert.Equal(new LongestPiece(Length.FromInches(8398), mark), Longest.Of(Manila));
        var opened = await ReceiveAsync(Manila, "701 ft", whenFull: "900 ft");
        Assert.Equal(new LongestPiece(Length.FromInches(8411), opened), Longest.Of(Manila));
    }

    [Fact]
    public async Task With_neither_nothing_is_offered()
    {
        await BuyAsync("");
        Assert.Null(Longest.Of(Manila));
    }

    // 81 sections of 72 in and more are over 300 ft; three are not.
    [Theory]
    [InlineData(82, true)]
    [InlineData(4, false)]
    public async Task A_draft_with_a_longer_run_is_told_the_longest_piece(int posts, bool isTold)
    {
        await BuyAsync("300 ft");
        var runs = new DraftPreviews(_shop.Database, new ShopTablesShelf(_shop.Database, ShopTables.Standard)).Of(SmallJobs.Posts(posts, "LQ-1")).LongRuns;
        Assert.Equal(isTold ? [new LongestPiece(Length.FromInches(3598), Coil: null)] : [], runs.Select(run => run.Longest));
    }

    private async Task BuyAsync(string lengths) =>
        Assert.Empty(await new CuttingSettingsShelf(_shop.Database).SetCuttingAsync(new("1/8 in", "1/4 in", "1 in", "36 in", lengths), "Ada", Cancel));

    private async Task<string> ReceiveAsync(RopeKind kind, string length, string? whenFull = null) =>
        (await _shop.Stock.ReceiveAsync(
            new(kind, "L1", LengthText.Parse(length).OrThrow(), "rack 1", whenFull is null ? null : LengthText.Parse(whenFull).OrThrow()), "Ada", Guid.NewGuid().ToString(), Cancel)).Mark;
}
