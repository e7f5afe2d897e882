using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Orders;

public sealed class DraftPreviewsTests
{
    [Fact]
    public async Task A_preview_shows_what_was_typed_since_and_keeps_none_of_it()
    {
        using var shop = new DeskShop();
        var previews = Previews(shop);
        var id = await shop.StartAsync(SmallJobs.FourPosts());
        Assert.Equal("7 1/2 in", Across(previews.Of(id, 1, Typed("lines[0].posts[2].across", "7 1/2"))));
        Assert.Equal("5 1/2 in", Across(previews.Of(id, 1, Typed("customer", "Pier"))));
        Assert.Null(previews.Of(id, 1, Typed("lines[0].posts[2].across", "wide"))!.Reading.Takeoff);
        Assert.Equal("5 1/2 in", Across(previews.Of(id, 1, Typed("customer", "Pier"))));
        Assert.Equal(DraftFields.ToJson(SmallJobs.FourPosts()), DraftFields.ToJson(shop.Drafts.Find(id)!.Form));
    }

    [Fact]
    public async Task A_preview_sees_every_change_in_the_shop_and_the_next_day_s_prices()
    {
        using var shop = new DeskShop();
        var previews = Previews(shop);
        var id = await shop.StartAsync(SmallJobs.FourPosts());
        Assert.Null(Seen().Prices);
        await shop.KeepPricesAsync(new(2027, 1, 11));
        await shop.KeepPricesAsync(new(2027, 1, 12), "3");
        Assert.Equal("2.125", Seen().Prices!.Ropes[0].Foot.ToString());
        shop.Time.Advance(TimeSpan.FromDays(1));
        Assert.Equal("3.00", Seen().Prices!.Ropes[0].Foot.ToString());
        await shop.Prices.SetCurrencyAsync("US$", "test", DeskShop.Cancel);
        Assert.Equal("US$", Seen().Currency);
        Assert.Empty(Seen().Reading.Problems);
        foreach (var bit in shop.Tables.Current().Rack.Bits)
            await shop.Tables.TakeBitOffAsync(bit, "test", DeskShop.Cancel);
        Assert.Contains(Seen().Reading.Problems.SelectMany(field => field.Value), note => note.Text.Contains("bit on the rack", StringComparison.Ordinal));

        DraftPreview Seen() => previews.Of(id, 1, Typed("lines[0].posts[2].across", "5 1/2"))!;
    }

    [Fact]
    public async Task A_preview_says_that_the_job_of_the_number_was_cancelled_whichever_way_the_number_came()
    {
        using var shop = new DeskShop();
        var previews = Previews(shop);
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        var id = await shop.StartAsync(SmallJobs.FourPosts() with { Number = "LQ-3002" }, "another");
        var same = await shop.StartAsync(SmallJobs.FourPosts(), "the same number");
        Assert.False(previews.Of(same, 1, Typed("customer", "Pier"))!.IsCancelled);
        await shop.Release.CancelAsync("LQ-3001", "The pier was sold.", "test", DeskShop.Cancel);
        Assert.True(previews.Of(same, 1, Typed("customer", "Pier"))!.IsCancelled);
        Assert.False(previews.Of(id, 1, Typed("customer", "Pier"))!.IsCancelled);
        Assert.True(previews.Of(id, 1, Typed("number", " LQ-3001 "))!.IsCancelled);
        Assert.False(previews.Of(same, 1, Typed("number", "LQ-3003"))!.IsCancelled);
    }

    [Fact]
    public async Task A_number_of_a_stored_job_is_asked_about_until_the_draft_says_that_it_changes_it()
    {
        using var shop = new DeskShop();
        var previews = Previews(shop);
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        var id = await shop.StartAsync(SmallJobs.FourPosts() with { Number = "LQ-3002" }, "another");
        Assert.Empty(previews.Of(id, 1, Typed("customer", "Pier"))!.DeskNotes);
        var asked = previews.Of(id, 1, Typed("number", "LQ-3001"))!;
        Assert.Equal((true, false), (asked.IsAsked, asked.IsChange));
        Assert.Equal("LQ-3001 is Lantern Quay boardwalk's released job.", Assert.Single(asked.DeskNotes[JobPlace.Job["number"]]).Text);
        var change = previews.Of(SmallJobs.FourPosts() with { Changes = "LQ-3001" });
        Assert.Equal((false, true), (change.IsAsked, change.IsChange));
        Assert.Empty(change.DeskNotes);
    }

    [Fact]
    public async Task A_pull_over_the_shop_s_limit_warns_at_the_span_and_a_straight_rope_does_not()
    {
        using var shop = new DeskShop();
        var previews = Previews(shop);
        var line = SmallJobs.FourPosts().Lines[0];
        var form = SmallJobs.FourPosts() with { Unit = "in", Lines = [line with { Sections = [line.Sections[0] with { Width = "2000" }, .. line.Sections.Skip(1)] }] };
        var notes = previews.Of(form).DeskNotes;
        Assert.Equal(["lines[0].sections[0].width"], notes.Keys.Select(place => place.Name));
        Assert.All(notes.Values.SelectMany(some => some), note => Assert.Contains("lb from A1 to A2, over the shop's limit of 200 lb", note.Text, StringComparison.Ordinal));

        var straight = form with { Lines = [line with { Sections = form.Lines[0].Sections, Rows = [.. line.Rows.Select(row => row with { Sag = "0", Slack = "" })] }] };
        Assert.Empty(previews.Of(straight).DeskNotes);

        Assert.Equal(["pull"], (await new PullLimit(shop.Database).SetAsync("0", "test", DeskShop.Cancel)).Select(problem => problem.Field));
        Assert.Empty(await new PullLimit(shop.Database).SetAsync(" 1 ", "test", DeskShop.Cancel));
        Assert.Equal(["lines[0].rows[0].sag", "lines[0].rows[1].sag"], previews.Of(SmallJobs.FourPosts()).DeskNotes.Keys.Select(place => place.Name));
        Assert.All(previews.Of(SmallJobs.FourPosts()).DeskNotes.Values, some => Assert.Equal(NoteKind.Warning, Assert.Single(some).Kind));
    }

    [Fact]
    public async Task There_is_no_preview_of_a_draft_or_a_version_that_is_not_there()
    {
        using var shop = new DeskShop();
        var previews = Previews(shop);
        var id = await shop.StartAsync(SmallJobs.FourPosts());
        Assert.NotNull(previews.Of(id, 1, Typed("customer", "Pier")));
        Assert.Null(previews.Of(id, 2, Typed("customer", "Pier")));
        Assert.Null(previews.Of(id + 1, 1, Typed("customer", "Pier")));
        Assert.Null(previews.Of(long.MinValue, 1, Typed("customer", "Pier")));
    }

    private static DraftPreviews Previews(DeskShop shop) => new(shop.Database, shop.Tables);

    private static Dictionary<string, string> Typed(string field, string text) => new() { [field] = text };

    private static string Across(DraftPreview? preview) => LengthText.Brief(preview!.Reading.Takeoff!.Job.Lines[0].Posts[2].Across);
}
