using CutShop.Testing.Stores;

namespace CutShop.Shop.Tests.Store;

/// <summary>The number by which what is kept is known to be old: another after each change, whichever program makes it.</summary>
public sealed class ChangeNumberTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task It_is_another_after_each_change_of_this_program_and_of_another(bool onServer)
    {
        using var store = onServer ? TestStore.OnServer() : TestStore.InFile();
        using var first = store.Open();
        using var second = store.Open();
        var seen = new HashSet<(long, long)> { (first.ChangeNumber, second.ChangeNumber) };
        foreach (var (writer, i) in new[] { first, second, first, first, second }.Select((writer, i) => (writer, i)))
        {
            var before = (first.ChangeNumber, second.ChangeNumber);
            await writer.WriteAsync(session => { session.Record("job", i, "Ada", HistoryCodes.JobReleased); return i; }, Cancel);
            var after = (first.ChangeNumber, second.ChangeNumber);
            Assert.NotEqual(before.Item1, after.Item1);
            Assert.NotEqual(before.Item2, after.Item2);
            Assert.True(seen.Add(after), "A number came again.");
        }
        await first.TakeTicketAsync("Cai", session => { session.Record("job", 9, "Cai", HistoryCodes.JobReleased); return 0; }, Cancel);
        Assert.True(seen.Add((first.ChangeNumber, second.ChangeNumber)));
    }

    /// <summary>On a server others' databases count too, so there it may change for nothing: what is kept is made anew, no more.</summary>
    [Fact]
    public async Task In_a_file_reading_and_a_write_that_throws_change_nothing()
    {
        using var store = TestStore.InFile();
        using var shop = store.Open();
        var before = shop.ChangeNumber;
        new JobShelf(shop).Find("LQ-1");
        await Assert.ThrowsAsync<IOException>(() => shop.WriteAsync<int>(
            session =>
            {
                session.Record("job", 1, "Ada", HistoryCodes.JobReleased);
                throw new IOException("the disk is gone");
            },
            Cancel));
        Assert.Equal(before, shop.ChangeNumber);
    }
}
