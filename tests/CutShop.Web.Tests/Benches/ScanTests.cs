using CutShop.Web.Tests.Orders;

namespace CutShop.Web.Tests.Benches;

public sealed class ScanTests
{
    [Theory]
    [InlineData("cut", "en", "ABCD", "Nothing is marked \"ABCD\".")]
    [InlineData("drill", "en", "A1", "Several are marked \"A1\": write the job's number before it.")]
    [InlineData("pack", "es", "ABCD", "Nada lleva la marca «ABCD».")]
    [InlineData("cut", "es", "A1", "Varios llevan la marca «A1»: escriba antes el número del trabajo.")]
    public async Task A_mark_of_nothing_and_a_mark_of_several_are_told_apart(string bench, string language, string mark, string said)
    {
        await using var shop = await RunningShop.StartAsync();
        foreach (var number in new[] { "LQ-1", "LQ-2" })
        {
            var draft = await shop.DraftAsync(form => form with { Number = number });
            var tables = new ShopTablesShelf(shop.Database, ShopTables.Standard);
            Assert.Null((await new DraftIntake(shop.Database, tables).TakeInAsync(draft, 1, "test", TestContext.Current.CancellationToken)).Problem);
            await new JobRelease(shop.Database).ReleaseAsync(number, "test", TestContext.Current.CancellationToken);
        }
        using (await shop.Client.AskAsync($"/language/{language}?back=/{bench}")) { }
        using var answer = await shop.Client.AskAsync($"/scan?text={mark}&at={bench}");
        Assert.Contains(said, await answer.TextAsync(), StringComparison.Ordinal);
    }
}
