namespace CutShop.Shop.Tests.Store;

public sealed class SettingsTests : IDisposable
{
    private readonly ShopOnDisk _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private IEnumerable<string> History =>
        new HistoryShelf(_shop.Database).Of("setting", 0).Select(line => $"{line.Who}: {line.What}, {line.Before} -> {line.After}");

    [Fact]
    public async Task What_somebody_sets_is_in_the_history_and_what_stays_the_same_is_not()
    {
        var benches = new BenchSettingsShelf(_shop.Database);
        Assert.Empty(await benches.SetAsync(new("1/2 in", "1/8 in", "45", "10", "10"), "Ada", Cancel));
        Assert.Empty(await benches.SetAsync(new("1/2 in", "1/4 in", "45", "10", "10"), "Bo", Cancel));
        Assert.Equal("Bo: bench under set, 1/8 in -> 1/4 in", History.Last());
        Assert.Equal(6, History.Count());
    }

    [Fact]
    public async Task The_head_of_the_quotes_is_kept_with_its_lines()
    {
        var heads = new LetterheadShelf(_shop.Database);
        Assert.Equal(new Letterhead("", ""), heads.Current);
        Assert.Empty(await heads.SetAsync(new(" Lantern Quay Ropes ", "Quay 1\r\nLantern Quay"), "Ada", Cancel));
        Assert.Equal(new Letterhead("Lantern Quay Ropes", "Quay 1\nLantern Quay"), heads.Current);
    }

    [Theory]
    [InlineData("Lantern\u0007", "", "Name")]
    [InlineData("Lantern\nQuay", "", "Name")]
    [InlineData("", "Quay\u0000", "Address")]
    public async Task A_head_that_cannot_be_printed_is_refused_with_its_field(string name, string address, string field)
    {
        var problem = Assert.Single(await new LetterheadShelf(_shop.Database).SetAsync(new(name, address), "Ada", Cancel));
        Assert.Equal((field, "accepted: letters, digits, signs and spaces"), (problem.Field, problem.Text));
        Assert.Empty(History);
    }

    [Fact]
    public async Task A_head_that_is_too_long_is_refused()
    {
        var typed = new Letterhead(new string('q', LetterheadShelf.LongestName + 1), new string('q', LetterheadShelf.LongestAddress + 1));
        Assert.Equal(["Name", "Address"], (await new LetterheadShelf(_shop.Database).SetAsync(typed, "Ada", Cancel)).Select(problem => problem.Field));
    }

    public void Dispose() => _shop.Dispose();
}
