using CutShop.Shop.Tests.Orders;
using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Jobs;

/// <summary>A change compares the work itself, and says what can be saved of what was made.</summary>
public sealed class WhatDiffersTests : IDisposable
{
    private readonly DeskShop _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    // By hand: 12 in over 77 1/2 in of centres is a slope of 0.15484, which is 8.8017 degrees.
    [Fact]
    public async Task A_drilled_post_whose_bore_must_be_raked_now_is_not_kept()
    {
        await _shop.ReleasedJobAsync(SmallJobs.FourPosts());
        await _shop.DrillAsync("A1");
        var (_, change) = await ChangeAsync(Section(SmallJobs.FourPosts(), 0, section => section with { Rise = "12" }));
        var post = change.Posts.Single(one => one.Name == "A1");
        Assert.Equal((ChangeKind.Changed, true), (post.Kind, post.BecomesSurplus));
        var rake = post.Differences.First(difference => difference.Field == WorkField.Rake);
        Assert.Equal((0, 8.8017), (Degrees(rake.Was), Math.Round(Degrees(rake.Becomes), 4)));
        // A raked bore at the height of the level one runs into it.
        Assert.Empty(post.Savings);
    }

    [Fact]
    public async Task After_a_change_of_less_than_paper_shows_the_shop_is_well()
    {
        var form = Row(SmallJobs.FourPosts(), 0, row => row with { Height = "914.36 mm" });
        await _shop.ReleasedJobAsync(form);
        var (draft, change) = await ChangeAsync(Row(form, 0, row => row with { Height = "914.44 mm" }));
        Assert.All(change.Posts, post => Assert.Equal(ChangeKind.Changed, post.Kind));
        Assert.Null((await _shop.Intake.AcceptChangeAsync(draft, change.Token, "test", cancel: Cancel)).Problem);
        Assert.Empty(_shop.Database.Read(session => TicketsAgainstParts.Of(session).ToList()));
        Assert.Equal(914_440_000, _shop.Jobs.Find("LQ-3001")!.Takeoff.Bores[0].Height.Nanometres);
    }

    // By hand: an end post becomes a line post, so its stopped bore of 2 3/4 in goes to 2 7/8 (half the post and 1/8 in), and as deep from the other face.
    [Fact]
    public async Task A_stopped_bore_that_goes_through_now_is_drilled_on()
    {
        await _shop.ReleasedJobAsync(SmallJobs.FourPosts());
        await _shop.DrillAsync("A4");
        var (_, change) = await ChangeAsync(DraftEdits.AddPost(SmallJobs.FourPosts(), 0, 3));
        var post = change.Posts.Single(one => one.Name == "A4");
        Assert.True(post.BecomesSurplus);
        var deeper = post.Savings.OfType<Saving.DrillDeeper>().First();
        Assert.Equal(("toward A3", 0.125, 2.875), (deeper.Face.ToString(), deeper.By.Inches, deeper.To.Inches));
        var also = post.Savings.OfType<Saving.DrillAlso>().First();
        Assert.Equal(("toward A5", 2.875), (also.Face.ToString(), also.Depth.Inches));
    }

    // By hand: rows 36 and 20 in high, bits 1 9/16 in: a row 4 in lower leaves 4 - 1 9/16 = 2 7/16 in of wood between the two holes.
    [Fact]
    public async Task A_row_that_is_lower_now_is_bored_beside_the_old_hole()
    {
        var form = Row(SmallJobs.FourPosts(), 0, row => row with { Height = "36" });
        await _shop.ReleasedJobAsync(form);
        await _shop.DrillAsync("A2");
        var (_, change) = await ChangeAsync(Row(form, 0, row => row with { Height = "32" }));
        var beside = change.Posts.Single(one => one.Name == "A2").Savings.OfType<Saving.BoreBeside>().Single();
        Assert.Equal((32, 2.375), (beside.Height.Inches, beside.Wood.Inches));
    }

    [Fact]
    public async Task A_row_only_an_inch_lower_would_run_into_the_old_hole_so_another_post_is_taken()
    {
        var form = Row(SmallJobs.FourPosts(), 0, row => row with { Height = "36" });
        await _shop.ReleasedJobAsync(form);
        await _shop.DrillAsync("A2");
        var (_, change) = await ChangeAsync(Row(form, 0, row => row with { Height = "35" }));
        Assert.Empty(change.Posts.Single(one => one.Name == "A2").Savings);
    }

    [Fact]
    public async Task A_piece_that_is_shorter_now_is_cut_shorter()
    {
        await _shop.ReleasedJobAsync(SmallJobs.FourPosts());
        await _shop.CutAsync("A-top-1");
        var (_, change) = await ChangeAsync(Section(SmallJobs.FourPosts(), 0, section => section with { Width = "60" }));
        var piece = change.Pieces.Single(one => one.Name == "A-top-1");
        var shorter = piece.Savings.OfType<Saving.CutShorter>().Single();
        Assert.Equal(piece.Was!.Piece.Cut - piece.Becomes!.Piece.Cut, shorter.By);
    }

    [Fact]
    public async Task A_piece_that_is_longer_now_goes_to_another_run_that_it_is_long_enough_for()
    {
        await _shop.ReleasedJobAsync(SmallJobs.FourPosts());
        await _shop.CutAsync("A-top-1");
        // Each row is longer by a section, so the piece fits none of them and is hung up.
        var (_, longer) = await ChangeAsync(DraftEdits.AddPost(SmallJobs.FourPosts(), 0, 3));
        Assert.IsType<Saving.HangUp>(Assert.Single(longer.Pieces.Single(one => one.Name == "A-top-1").Savings));
    }

    [Fact]
    public async Task Another_sag_that_gives_the_same_cut_keeps_the_piece_and_gives_the_site_its_new_sag()
    {
        await _shop.ReleasedJobAsync(SmallJobs.FourPosts());
        await _shop.CutAsync("A-top-1");
        var code = _shop.Jobs.Find("LQ-3001")!.Codes[0];
        var before = _shop.Jobs.Ticket(code)!.Work!.Piece;
        var (draft, change) = await ChangeAsync(Row(SmallJobs.FourPosts(), 0, row => row with { Sag = "6 1/64" }));
        var piece = change.Pieces.Single(one => one.Name == "A-top-1");
        Assert.Equal((before.Cut, ChangeKind.Kept, true), (piece.Becomes!.Piece.Cut, piece.Kind, piece.IsRevised));
        Assert.Null((await _shop.Intake.AcceptChangeAsync(draft, change.Token, "test", cancel: Cancel)).Problem);
        var after = _shop.Jobs.Ticket(code)!.Work!.Piece;
        Assert.Equal((before.Cut, 6.015625), (after.Cut, after.Sections[0].Sag.Inches));
        Assert.Empty(_shop.Database.Read(session => TicketsAgainstParts.Of(session).ToList()));
    }

    [Fact]
    public async Task A_row_that_is_taken_out_leaves_its_tickets_readable()
    {
        var before = await _shop.ReleasedJobAsync(SmallJobs.FourPosts());
        var gone = before.Pieces.Single(piece => piece.Run == "A-low-1");
        var form = SmallJobs.FourPosts();
        var line = form.Lines[0];
        var (draft, change) = await ChangeAsync(form with { Lines = [line with { Rows = [line.Rows[0]] }] });
        Assert.Null((await _shop.Intake.AcceptChangeAsync(draft, change.Token, "test", cancel: Cancel)).Problem);
        var ticket = _shop.Jobs.Ticket(gone.Code)!;
        Assert.Equal((gone.Cut, TicketStates.Cancelled), (ticket.Work!.Piece.Cut, ticket.Stored.State));
        Assert.Equal(before.Takeoff.Pieces[1].AtPosts.Select(at => at.Length), ticket.Work.Piece.AtPosts.Select(at => at.Length));
    }

    [Fact]
    public async Task A_post_that_is_taken_out_keeps_its_ticket_under_its_mark()
    {
        await _shop.ReleasedJobAsync(DraftEdits.AddPost(SmallJobs.FourPosts(), 0, 3));
        await _shop.DrillAsync("A5");
        var bench = new DrillBench(_shop.Database);
        var promised = bench.PostOf(bench.Find(("LQ-3001", "A5"))!).Work!;
        var (draft, change) = await ChangeAsync(SmallJobs.FourPosts());
        Assert.Null((await _shop.Intake.AcceptChangeAsync(draft, change.Token, "test", cancel: Cancel)).Problem);
        var ended = bench.Find(("LQ-3001", "A5"))!;
        Assert.Equal(("A5", TicketStates.Surplus, true), (ended.Post, ended.State, ended.IsDropped));
        Assert.Equal(PartText.Write(promised), PartText.Write(bench.PostOf(ended).Work!));
        // Where a post has the mark again, its own ticket comes first and the old one is found beside it.
        Assert.Equal([(false, "waiting"), (true, "cancelled")], bench.AllOf("LQ-3001", "A4").Select(work => (work.IsDropped, work.State)));
    }

    private async Task<(long Draft, JobChange Change)> ChangeAsync(DraftForm form)
    {
        var draft = await _shop.StartAsync(form with { Changes = form.Number }, $"a change {form.GetHashCode()}");
        return (draft, _shop.Changing.Compare(DraftReading.Of(form, ShopTables.Standard).Takeoff!.Job)!);
    }

    private static DraftForm Section(DraftForm form, int index, Func<DraftSection, DraftSection> change)
    {
        var line = form.Lines[0];
        return form with { Lines = [line with { Sections = [.. line.Sections.Select((section, i) => i == index ? change(section) : section)] }] };
    }

    private static DraftForm Row(DraftForm form, int index, Func<DraftRow, DraftRow> change)
    {
        var line = form.Lines[0];
        return form with { Lines = [line with { Rows = [.. line.Rows.Select((row, i) => i == index ? change(row) : row)] }] };
    }

    private static double Degrees(WorkValue? value) => ((WorkValue.Angle)value!).Degrees;

    public void Dispose() => _shop.Dispose();
}
