using CutShop.Shop.Tests.Orders;
using CutShop.Testing.Jobs;
using CutShop.Testing.Trust;

namespace CutShop.Shop.Tests.Jobs;

public sealed class JobChangingTests
{
    /// <summary>The low row's sag changes, a post and a section come at the end.</summary>
    private static DraftForm Changed()
    {
        var form = DraftEdits.AddPost(SmallJobs.FourPosts(), 0, 3);
        return form with { Customer = "Lantern Quay harbour", Changes = form.Number };
    }

    private static async Task<(long Draft, JobChange Change)> ChangeAsync(DeskShop shop, DraftForm form)
    {
        var draft = await shop.StartAsync(form with { Changes = form.Number }, "the change");
        return (draft, shop.Changing.Compare(DraftReading.Of(form, ShopTables.Standard).Takeoff!.Job)!);
    }

    [Fact]
    public async Task The_same_job_again_changes_nothing()
    {
        using var shop = new DeskShop();
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        Assert.True((await ChangeAsync(shop, SmallJobs.FourPosts())).Change.IsNothing);
    }

    [Fact]
    public async Task A_change_shows_what_is_added_changed_and_gone_and_what_was_made_already()
    {
        using var shop = new DeskShop();
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        await shop.CutAsync("A-top-1");
        await shop.DrillAsync("A4");
        await shop.DrillAsync("A2");
        var (_, change) = await ChangeAsync(shop, Changed());
        Assert.Equal(["Customer: Lantern Quay boardwalk → Lantern Quay harbour"], change.Facts.Select(fact => fact.ToString()));
        Assert.Equal([("A-top-1", ChangeKind.Changed), ("A-low-1", ChangeKind.Changed)], change.Pieces.Select(piece => (piece.Name, piece.Kind)));
        Assert.Equal(
            [("A1", ChangeKind.Kept), ("A2", ChangeKind.Kept), ("A3", ChangeKind.Kept), ("A4", ChangeKind.Changed), ("A5", ChangeKind.Added)],
            change.Posts.Select(post => (post.Name, post.Kind)));
        Assert.Equal(["A-top-1", "A4"], change.Surplus.Select(thing => thing.Name));
    }

    [Fact]
    public async Task A_change_names_a_packed_piece_among_what_becomes_surplus()
    {
        using var shop = new DeskShop();
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        await shop.CutAsync("A-top-1");
        await shop.ExecuteAsync("UPDATE cut_tickets SET state = 'packed' WHERE state = 'cut'");
        Assert.Equal(["A-top-1"], (await ChangeAsync(shop, Changed())).Change.Surplus.Select(thing => thing.Name));
    }

    [Fact]
    public async Task An_accepted_change_keeps_what_stays_and_makes_what_was_made_surplus()
    {
        using var shop = new DeskShop();
        var before = await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        await shop.CutAsync("A-top-1");
        await shop.DrillAsync("A2");
        await shop.DrillAsync("A4");
        var (draft, change) = await ChangeAsync(shop, Changed());
        var answer = await shop.Intake.AcceptChangeAsync(draft, change.Token, "test", cancel: DeskShop.Cancel);
        Assert.Equal("LQ-3001", answer.Number);

        var job = shop.Jobs.Find("LQ-3001")!;
        Assert.Equal("Lantern Quay harbour", job.Takeoff.Job.Customer);
        Assert.Equal(["waiting", "waiting"], job.Pieces.Select(piece => piece.State));
        Assert.Equal([("A-top-1", "surplus"), ("A-low-1", "cancelled")], job.Dropped.Select(piece => (piece.Run, piece.State)));
        Assert.Equal(before.Codes, job.Dropped.Select(piece => piece.Code));
        Assert.Equal(
            ["A1 waiting", "A2 drilled", "A3 waiting", "A4 waiting", "A5 waiting"],
            shop.All<string>("SELECT mark || ' ' || state FROM drill_tickets JOIN posts ON posts.id = post_id WHERE dropped_at IS NULL ORDER BY position"));
        Assert.Equal(["surplus"], shop.All<string>("SELECT state FROM drill_tickets JOIN posts ON posts.id = post_id WHERE dropped_at IS NOT NULL"));
        var told = new JobFeed(shop.Database).Job("LQ-3001")!;
        Assert.Equal((2L, 0L, 5L, 1L), (told.Pieces, told.Cut, told.Posts, told.Drilled));
        Assert.Equal(["A1", "A2", "A3", "A4", "A5"], new JobFeed(shop.Database).DrillTickets("LQ-3001").Select(ticket => ticket.Post));
        // Each bore is of a run that is wanted, and the job's totals count them.
        Assert.Equal(10, job.Takeoff.Bores.Count);
        Assert.Empty(job.Takeoff.Bores.Select(bore => bore.Run).Except(job.Pieces.Select(piece => piece.Run)));
    }

    [Fact]
    public async Task A_change_accepted_twice_is_done_once()
    {
        using var shop = new DeskShop();
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        var (draft, change) = await ChangeAsync(shop, Changed());
        await shop.Intake.AcceptChangeAsync(draft, change.Token, "test", cancel: DeskShop.Cancel);
        var after = shop.Dump();
        Assert.True((await shop.Intake.AcceptChangeAsync(draft, change.Token, "test", cancel: DeskShop.Cancel)).IsDone);
        Assert.Equal(after, shop.Dump());
    }

    /// <summary>
    /// The job as it is costs what <c>QuoteDeskTests</c> works out by hand, 299.37. A section more of 72 in, twice with 6 in of sag and a post of
    /// 5 1/2 in, and two bores of 4.25: what the new takeoff's cut lengths come to, at 2.125 a foot with 6.25 % tax.
    /// </summary>
    [Fact]
    public async Task A_change_shows_what_the_job_costs_before_and_after_by_todays_list()
    {
        using var shop = new DeskShop();
        var job = await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        var (_, change) = await ChangeAsync(shop, Changed());
        Assert.Null(shop.Prices.Of(change));
        await shop.KeepPricesAsync(new(2027, 1, 1));
        var price = shop.Prices.Of(change)!;
        Assert.Equal(("299.37", "$", 0), (price.Was.Total.ToString(), price.Currency, price.Missing.Count));
        var feet = change.Pieces.Sum(piece => (decimal)piece.Becomes!.Piece.Cut.Inches) / 12;
        var bores = change.Posts.Sum(post => post.Becomes!.Bores.Sum(bore => bore.Bit <= Length.FromSixtyFourths(80) ? 3m : 4.25m));
        var net = Math.Round(feet * 2.125m, 2, MidpointRounding.AwayFromZero) + bores + (change.Pieces.Count * 4.50m) + 35 + 120;
        Assert.Equal(net, price.Becomes.Net.Amount);
        Assert.True(price.Becomes.Total.Amount - 299.37m > 20);
        Assert.Equal(price.Becomes.Total.Amount - 299.37m, price.Becomes.Total.ApartFrom(price.Was.Total).Amount);
        // What was promised is what it costs, whatever today's rules make of its file.
        await OtherRules.MakeAsync(shop.Database, job.Number, DeskShop.Cancel);
        var promised = shop.Jobs.Find(job.Number)!.Pieces.Sum(piece => (decimal)piece.Cut.Inches) / 12;
        var then = shop.Prices.Of(shop.Changing.Compare(DraftReading.Of(Changed(), ShopTables.Standard).Takeoff!.Job)!)!;
        Assert.Equal(Math.Round(promised * 2.125m, 2, MidpointRounding.AwayFromZero), then.Was.Lines[0].Amount.Amount);
    }

    [Fact]
    public async Task A_change_to_what_has_no_price_names_it()
    {
        using var shop = new DeskShop();
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        await shop.KeepPricesAsync(new(2027, 1, 1));
        var (_, change) = await ChangeAsync(shop, SmallJobs.FourPosts() with { Rope = new() { Material = "manila", Diameter = "2 in" } });
        Assert.Equal(["2 in manila rope"], shop.Prices.Of(change)!.Missing.Where(missing => missing.ToString().Contains("rope", StringComparison.Ordinal)).Select(missing => missing.ToString()));
    }

    [Fact]
    public async Task A_job_can_change_again_and_back()
    {
        using var shop = new DeskShop();
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        var (there, change) = await ChangeAsync(shop, Changed());
        await shop.Intake.AcceptChangeAsync(there, change.Token, "test", cancel: DeskShop.Cancel);
        var back = await shop.StartAsync(SmallJobs.FourPosts() with { Changes = "LQ-3001" }, "back");
        var again = shop.Changing.Compare(DraftReading.Of(SmallJobs.FourPosts(), ShopTables.Standard).Takeoff!.Job)!;
        Assert.True((await shop.Intake.AcceptChangeAsync(back, again.Token, "test", cancel: DeskShop.Cancel)).IsDone);
        var job = shop.Jobs.Find("LQ-3001")!;
        Assert.Equal(2, job.Pieces.Count);
        Assert.Equal(4, job.Dropped.Count);
    }

    [Fact]
    public async Task A_number_alone_turns_no_draft_into_a_change_and_into_no_quote_of_one()
    {
        using var shop = new DeskShop();
        await shop.KeepPricesAsync(new(2027, 1, 11));
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        var form = Changed() with { Changes = "" };
        var draft = await shop.StartAsync(form, "another job");
        var change = shop.Changing.Compare(DraftReading.Of(form, ShopTables.Standard).Takeoff!.Job)!;
        var before = shop.Dump();
        const string Why = "LQ-3001 is Lantern Quay boardwalk's released job. Say that this draft changes it, or give the draft another number.";
        Assert.Equal(Why, (await shop.Intake.AcceptChangeAsync(draft, change.Token, "test", cancel: DeskShop.Cancel)).Problem?.ToString());
        Assert.Equal(Why, (await shop.Quotes.MakeAsync(draft, 1, "test", DeskShop.Cancel)).Problem?.ToString());
        Assert.False((await shop.Intake.TakeInAsync(draft, 1, "test", DeskShop.Cancel)).IsDone);
        Assert.Equal(before, shop.Dump());
        await shop.Drafts.SaveAsync(draft, 1, form with { Changes = "LQ-3001" }, "test", DeskShop.Cancel);
        Assert.True((await shop.Intake.AcceptChangeAsync(draft, change.Token, "test", cancel: DeskShop.Cancel)).IsDone);
    }

    [Fact]
    public async Task A_piece_cut_off_and_a_post_begun_at_the_bench_are_shown_as_made_already()
    {
        using var shop = new DeskShop();
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        const string AtTheBench = "state = 'at the bench', claimed_by = 'Cai', claimed_at = '2027-01-11', touched_at = '2027-01-11'";
        await shop.ExecuteAsync($"UPDATE cut_tickets SET {AtTheBench}, steps = 3 WHERE piece_id = (SELECT id FROM pieces WHERE run = 'A-low-1')");
        await shop.ExecuteAsync($"UPDATE cut_tickets SET {AtTheBench}, steps = 1 WHERE piece_id = (SELECT id FROM pieces WHERE run = 'A-top-1')");
        await shop.ExecuteAsync($"UPDATE drill_tickets SET {AtTheBench}, steps = 1 WHERE post_id = (SELECT id FROM posts WHERE mark = 'A4')");
        await shop.ExecuteAsync($"UPDATE drill_tickets SET {AtTheBench} WHERE post_id = (SELECT id FROM posts WHERE mark = 'A1')");
        var (_, change) = await ChangeAsync(shop, SmallJobs.FourPosts() with { Lines = [DraftEdits.RemovePost(SmallJobs.FourPosts(), 0, 3).Lines[0]] });
        Assert.Equal(["A-low-1", "A4"], change.Surplus.Select(thing => thing.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_piece_cut_after_the_change_was_shown_sends_it_back_to_be_looked_at_again()
    {
        using var shop = new DeskShop();
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        var (draft, change) = await ChangeAsync(shop, Changed());
        await shop.CutAsync("A-low-1");
        var before = shop.Dump();
        var answer = await shop.Intake.AcceptChangeAsync(draft, change.Token, "test", cancel: DeskShop.Cancel);
        Assert.StartsWith("Something was cut", answer.Problem?.ToString(), StringComparison.Ordinal);
        Assert.Equal(["A-low-1"], answer.Change!.Surplus.Select(thing => thing.Name));
        Assert.Equal(before, shop.Dump());
    }

    [Fact]
    public async Task A_cancelled_job_does_not_change()
    {
        using var shop = new DeskShop();
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        await shop.Release.CancelAsync("LQ-3001", "a reason", "test", DeskShop.Cancel);
        var (draft, change) = await ChangeAsync(shop, Changed());
        Assert.Equal("Job LQ-3001 was cancelled and cannot change.", (await shop.Intake.AcceptChangeAsync(draft, change.Token, "test", cancel: DeskShop.Cancel)).Problem?.ToString());
    }

    [Fact]
    public async Task A_change_is_all_or_nothing_whichever_statement_breaks()
    {
        using var shop = new DeskShop();
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        await shop.CutAsync("A-top-1");
        var (draft, change) = await ChangeAsync(shop, Changed());
        var statements = await shop.BreakEachStatementAsync(() => shop.Intake.AcceptChangeAsync(draft, change.Token, "test", cancel: DeskShop.Cancel));
        Assert.InRange(statements, 20, 60);
        Assert.Equal("Lantern Quay harbour", shop.Jobs.Find("LQ-3001")!.Takeoff.Job.Customer);
    }

    [Fact]
    public async Task A_quote_of_a_change_is_accepted_with_the_change_and_stays_with_the_job()
    {
        using var shop = new DeskShop();
        await shop.KeepPricesAsync(new(2027, 1, 11));
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        var (draft, change) = await ChangeAsync(shop, Changed());
        var quote = long.Parse((await shop.Quotes.MakeAsync(draft, 1, "test", DeskShop.Cancel)).Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal([quote], shop.Quotes.Open().Select(listed => listed.Id));
        Assert.NotNull((await shop.Quotes.AcceptAsync(quote, "test", DeskShop.Cancel)).Problem);
        for (var times = 0; times < 2; times++)
            Assert.Equal("LQ-3001", (await shop.Intake.AcceptChangeAsync(draft, change.Token, "test", quote, DeskShop.Cancel)).Number);
        Assert.Equal([(quote, "accepted")], shop.Quotes.AcceptedFor("LQ-3001").Select(listed => (listed.Id, listed.State)));
        Assert.Empty(shop.Quotes.Open());
    }

    [Fact]
    public async Task A_quote_of_something_else_or_one_that_no_longer_stands_stops_the_change()
    {
        using var shop = new DeskShop();
        await shop.KeepPricesAsync(new(2027, 1, 11));
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        var (draft, _) = await ChangeAsync(shop, SmallJobs.FourPosts());
        await shop.Quotes.MakeAsync(draft, 1, "test", DeskShop.Cancel);
        await shop.Drafts.SaveAsync(draft, 1, Changed(), "test", DeskShop.Cancel);
        var change = shop.Changing.Compare(DraftReading.Of(Changed(), ShopTables.Standard).Takeoff!.Job)!;
        var before = shop.Dump();
        var answer = await shop.Intake.AcceptChangeAsync(draft, change.Token, "test", quoteId: 1, DeskShop.Cancel);
        Assert.Equal("The draft has changed since quote 1. Make a new quote of it.", answer.Problem?.ToString());
        await shop.Quotes.MakeAsync(draft, 2, "test", DeskShop.Cancel);
        shop.Time.Advance(TimeSpan.FromDays(31));
        Assert.StartsWith("This quote was valid until 2027-02-10.", (await shop.Intake.AcceptChangeAsync(draft, change.Token, "test", quoteId: 2, DeskShop.Cancel)).Problem?.ToString(), StringComparison.Ordinal);
        Assert.Equal("There is no such open quote.", (await shop.Intake.AcceptChangeAsync(draft, change.Token, "test", quoteId: 7, DeskShop.Cancel)).Problem?.ToString());
        Assert.Contains("LQ-3001|Lantern Quay boardwalk|2027-03-12", before, StringComparison.Ordinal);
        Assert.Equal(4, shop.Jobs.Find("LQ-3001")!.Takeoff.Job.Lines[0].Posts.Count);
    }
}
