using CutShop.Takeoff;
using CutShop.Trust;

namespace CutShop.Shop.Tests;

public sealed class KeptTakeoffsTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_job_is_worked_out_once_until_it_changes()
    {
        using var shop = new DeskShop();
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        var first = shop.Jobs.Find("LQ-3001")!.Takeoff;
        Assert.Same(first, shop.Jobs.Find("LQ-3001")!.Takeoff);

        var longer = DraftEdits.AddPost(SmallJobs.FourPosts(), 0, 3);
        var draft = await shop.StartAsync(longer, "the change");
        var change = shop.Changing.Compare(DraftReading.Of(longer, ShopTables.Standard).Takeoff!.Job)!;
        Assert.True((await shop.Changing.AcceptAsync(draft, change.Token, "Jory", cancel: Cancel)).IsDone);
        Assert.Equal((4, 5), (first.Job.Lines[0].Posts.Count, shop.Jobs.Find("LQ-3001")!.Takeoff.Job.Lines[0].Posts.Count));
    }

    [Fact]
    public async Task No_two_job_files_have_the_same_version()
    {
        using var shop = new DeskShop();
        foreach (var number in new[] { "LQ-3001", "LQ-3002" })
            await shop.ReleasedJobAsync(SmallJobs.FourPosts(number));
        var before = shop.All<long>("SELECT version FROM jobs ORDER BY id");
        var longer = DraftEdits.AddPost(SmallJobs.FourPosts(), 0, 3);
        var draft = await shop.StartAsync(longer, "the change");
        await shop.Changing.AcceptAsync(draft, shop.Changing.Compare(DraftReading.Of(longer, ShopTables.Standard).Takeoff!.Job)!.Token, "Jory", cancel: Cancel);
        Assert.Equal(3, before.Concat(shop.All<long>("SELECT version FROM jobs ORDER BY id")).Distinct().Count());
    }

    [Fact]
    public async Task A_bit_that_is_hung_on_the_rack_is_seen_at_once()
    {
        using var shop = new DeskShop();
        var job = await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        var bore = job.Takeoff.Bores[0];
        var rack = new RackOfBits(shop.Database, shop.Tables);
        await rack.TakeOffAsync(new(bore.BitChoice.Kind, bore.Bit), "Jory", Cancel);
        Assert.NotEqual(bore.BitChoice, shop.Jobs.Find(job.Number)!.Takeoff.Bores[0].BitChoice);
        await rack.HangAsync(new(bore.BitChoice.Kind, bore.Bit), "Jory", Cancel);
        Assert.Equal(bore.BitChoice, shop.Jobs.Find(job.Number)!.Takeoff.Bores[0].BitChoice);
    }

    [Fact]
    public async Task Beyond_the_bound_what_was_used_longest_ago_goes()
    {
        using var shop = new DeskShop();
        var size = 0;
        foreach (var number in new[] { "LQ-1", "LQ-2", "LQ-3" })
        {
            var takeoff = (await shop.ReleasedJobAsync(SmallJobs.FourPosts(number))).Takeoff;
            size = takeoff.Pieces.Count + takeoff.Bores.Count + takeoff.Fixings.Count;
        }
        var kept = new KeptTakeoffs(shop.Tables, 2 * size);
        JobTakeoff Of(long id) => shop.Database.Read(session => kept.Of(session, id, version: 1));
        var (one, two) = (Of(1), Of(2));
        Assert.Same(one, Of(1));
        Of(3);
        Assert.Equal(2, kept.Count);
        Assert.Same(one, Of(1));
        Assert.NotSame(two, Of(2));

        var tight = new KeptTakeoffs(shop.Tables, size - 1);
        shop.Database.Read(session => tight.Of(session, 1, version: 1));
        Assert.Equal(0, tight.Count);
    }
}
