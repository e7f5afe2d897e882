namespace CutShop.Cli.Tests;

public sealed class DemoCommandTests : IDisposable
{
    private readonly string _shop = Directory.CreateTempSubdirectory("cutshop-").FullName;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task After_the_demo_each_station_has_work_that_can_start_at_once_and_a_second_demo_changes_nothing()
    {
        await DemoAsync();
        using (var database = ShopDatabase.Open(ShopFolder.DatabaseIn(_shop), TimeProvider.System))
        {
            Assert.True((await new DrillBench(database).NextAsync("Odo", "drill", Cancel)).IsDone);
            Assert.True((await new CutBench(database).NextAsync("Tamsin", "cut", Cancel)).IsDone);
            Assert.Contains(new JobShelf(database).Find("LQ-1042")!.Pieces, piece => piece.State == "cut");
            Assert.Equal([true, false], new JobShelf(database).Find("LQ-1043")!.Pieces.Select(piece => piece.IsInstalled).Take(2));
        }
        string[] before = [.. Lines()];
        await DemoAsync();
        Assert.Equal(before, Lines());
    }

    public void Dispose() => Directory.Delete(_shop, recursive: true);

    private async Task DemoAsync()
    {
        var ran = await Ran.WithAsync(input: null, "demo", "--no-site", "--shop", _shop);
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
    }

    private IReadOnlyList<string> Lines()
    {
        using var database = ShopDatabase.Open(ShopFolder.DatabaseIn(_shop), TimeProvider.System);
        return [.. new JobFeed(database).ChangesSince(0, 100_000).Select(line => $"{line.Id} {line.What}")];
    }
}
