using System.Text;
using CutShop.Shop.Tests.Orders;
using CutShop.Testing.Fuzz;
using CutShop.Testing.Jobs;
using CutShop.Testing.Trust;

namespace CutShop.Shop.Tests.Jobs;

/// <summary>What was promised stays, whatever the rules become.</summary>
public sealed class PromisedWorkTests : IDisposable
{
    private readonly DeskShop _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_job_comes_back_from_its_parts_as_it_was_worked_out()
    {
        foreach (var name in (string[])["lq-1042-north-walk.json", "lq-1043-beach-ramp.json", "lq-1044-lamp-pier.json"])
        {
            var takeoff = JobTakeoff.Of(ShopOnDisk.Demo(name), ShopTables.Standard);
            await new JobIntake(_shop.Database, ShopTables.Standard).TakeInAsync(takeoff.Job, "test", cancel: Cancel);
            Assert.Equal(Json(takeoff), Json(_shop.Jobs.Find(takeoff.Job.Number)!.Takeoff));
        }
    }

    [Fact]
    public async Task Under_other_rules_every_open_ticket_stays_as_it_was_and_the_shop_is_well()
    {
        var job = await ByOtherRulesAsync();
        Assert.Empty(Check());
        // Half of 5 1/2 in is 2 3/4 by the rules of today; the tickets said 2 5/8.
        Assert.Equal(2.625, Depth(job.Takeoff, "A1"));
        var work = new DrillBench(_shop.Database).Find(("LQ-3001", "A1"))!;
        Assert.Equal(2.625, new DrillBench(_shop.Database).PostOf(work).Work!.Bores[0].Operations[0].Depth.Inches);
        Assert.Equal(job.Pieces[0].Cut, _shop.Jobs.Ticket(job.Codes[0])!.Work!.Piece.Cut);
        Assert.Equal(job.Pieces[0].Cut, new PieceShelf(_shop.Database).Find(job.Codes[0])!.Piece!.Cut);
    }

    [Fact]
    public async Task Taken_in_again_under_other_rules_it_is_the_same_job_and_nothing_changes()
    {
        await ByOtherRulesAsync();
        var before = _shop.Dump();
        var intake = new JobIntake(_shop.Database, ShopTables.Standard);
        Assert.Equal(IntakeOutcome.HadItAlready, await intake.TakeInAsync(_shop.Jobs.AsOrdered("LQ-3001")!, "test", cancel: Cancel));
        Assert.Equal(before, _shop.Dump());
    }

    [Fact]
    public async Task A_new_day_of_delivery_leaves_the_work_as_it_was_promised()
    {
        await ByOtherRulesAsync();
        var change = await ChangeAsync(SmallJobs.FourPosts() with { Due = "2027-04-01" });
        Assert.False(change.TouchesWork);
        Assert.Equal(2.625, Depth(_shop.Jobs.Find("LQ-3001")!.Takeoff, "A1"));
        Assert.Empty(Check());
    }

    [Fact]
    public async Task A_change_leaves_what_it_does_not_touch_as_it_was_promised()
    {
        await ByOtherRulesAsync();
        var form = SmallJobs.FourPosts();
        // Only the last post gets higher, which touches no rope and no other post.
        var line = form.Lines[0];
        var posts = line.Posts.ToList();
        posts[3] = posts[3] with { Height = "44" };
        var change = await ChangeAsync(form with { Lines = [line with { Posts = posts }] });
        Assert.Equal(["A4"], change.Things.Where(thing => thing.Kind != ChangeKind.Kept).Select(thing => thing.Name));
        var takeoff = _shop.Jobs.Find("LQ-3001")!.Takeoff;
        Assert.Equal((2.625, 2.75), (Depth(takeoff, "A1"), Depth(takeoff, "A4")));
        Assert.Empty(Check());
    }

    [Fact]
    public async Task The_rules_of_today_are_offered_as_a_change_and_then_nothing_is_left_to_change()
    {
        await ByOtherRulesAsync();
        var rules = new JobsAgainstRules(_shop.Database, ShopTables.Standard);
        var change = Assert.Single(rules.All());
        Assert.Equal(("LQ-3001", true), (change.Number, change.TouchesWork));
        Assert.Equal(["A1", "A4"], change.Posts.Where(post => post.Kind == ChangeKind.Changed).Select(post => post.Name));
        Assert.All(change.Pieces, piece => Assert.Equal([WorkField.CutLength], piece.Differences.Select(difference => difference.Field)));

        Assert.NotNull((await _shop.Changing.AcceptRulesAsync("LQ-3001", "another token", "test", Cancel)).Problem);
        for (var times = 0; times < 2; times++)
            Assert.Equal("LQ-3001", (await _shop.Changing.AcceptRulesAsync("LQ-3001", change.Token, "test", Cancel)).Number);
        Assert.Empty(rules.All());
        Assert.Equal(2.75, Depth(_shop.Jobs.Find("LQ-3001")!.Takeoff, "A1"));
        Assert.Empty(Check());
    }

    [Fact]
    public async Task The_rack_of_today_makes_no_other_ticket()
    {
        var before = Json((await _shop.ReleasedJobAsync(SmallJobs.FourPosts())).Takeoff);
        await _shop.Tables.TakeBitOffAsync(new(BitKind.ThreadedForstner, Length.FromSixtyFourths(100)), "test", Cancel);
        Assert.Equal(before, Json(_shop.Jobs.Find("LQ-3001")!.Takeoff));
        Assert.Empty(new JobsAgainstRules(_shop.Database, ShopTables.Standard).All());
    }

    [Fact]
    public async Task A_quote_keeps_what_it_quoted_and_its_job_is_made_of_that()
    {
        await _shop.KeepPricesAsync(new(2027, 1, 11));
        var id = await _shop.QuoteAsync(SmallJobs.FourPosts());
        var takeoff = _shop.Quotes.Find(id)!.Takeoff;
        var quoted = takeoff with { Pieces = [.. takeoff.Pieces.Select(piece => piece with { Cut = piece.Cut + OtherRules.Longer })] };
        await _shop.Database.WriteAsync(
            session =>
            {
                session.Execute("DELETE FROM quote_documents");
                StoredParts.PutQuote(session, id, quoted);
                return 0;
            },
            Cancel);
        Assert.Equal(Json(quoted), Json(_shop.Quotes.Find(id)!.Takeoff));
        Assert.Null((await _shop.Quotes.AcceptAsync(id, "test", Cancel)).Problem);
        Assert.Equal(quoted.Pieces.Select(piece => piece.Cut), _shop.Jobs.Find("LQ-3001")!.Pieces.Select(piece => piece.Cut));
        Assert.Empty(Check());
    }

    [Fact]
    public async Task The_same_job_in_other_words_is_the_same_job()
    {
        await _shop.ReleasedJobAsync(SmallJobs.FourPosts());
        // As an older program might have written it: without blanks, and with lengths in another unit.
        await _shop.ExecuteAsync("UPDATE jobs SET job_file = replace(replace(job_file, '  ', ''), '72 in', '6 ft')");
        var job = DraftReading.Of(SmallJobs.FourPosts(), ShopTables.Standard).Takeoff!.Job;
        Assert.Equal(IntakeOutcome.HadItAlready, await new JobIntake(_shop.Database, ShopTables.Standard).TakeInAsync(job, "test", cancel: Cancel));
        Assert.True(_shop.Changing.Compare(job)!.IsNothing);
    }

    private async Task<StoredJob> ByOtherRulesAsync()
    {
        await _shop.ReleasedJobAsync(SmallJobs.FourPosts());
        await OtherRules.MakeAsync(_shop.Database, "LQ-3001", Cancel);
        return _shop.Jobs.Find("LQ-3001")!;
    }

    private async Task<JobChange> ChangeAsync(DraftForm form)
    {
        var draft = await _shop.StartAsync(form with { Changes = form.Number }, "the change");
        var change = _shop.Changing.Compare(DraftReading.Of(form, ShopTables.Standard).Takeoff!.Job)!;
        Assert.Null((await _shop.Intake.AcceptChangeAsync(draft, change.Token, "test", cancel: Cancel)).Problem);
        return change;
    }

    private List<CheckFinding> Check() => _shop.Database.Read(session => TicketsAgainstParts.Of(session).ToList());

    private static double Depth(JobTakeoff takeoff, string post) => takeoff.Bores.First(bore => bore.Post.Mark == post).Operations[0].Depth.Inches;

    private static string Json(JobTakeoff takeoff)
    {
        using var stream = new MemoryStream();
        TakeoffJson.Write(takeoff, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    public void Dispose() => _shop.Dispose();
}
