using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Orders;

public sealed class DraftShelfTests
{
    [Fact]
    public async Task A_draft_put_away_is_listed_until_it_is_taken_up_again()
    {
        using var shop = new DeskShop();
        var id = await shop.StartAsync(SmallJobs.FourPosts());
        Assert.Empty(shop.Drafts.PutAway());
        await shop.Drafts.DropAsync(id, "test", DeskShop.Cancel);
        Assert.Equal((id, "LQ-3001"), (Assert.Single(shop.Drafts.PutAway()).Id, shop.Drafts.PutAway()[0].Number));
        Assert.Empty(shop.Drafts.Open());
        await shop.Drafts.ReopenAsync(id, "test", DeskShop.Cancel);
        Assert.Empty(shop.Drafts.PutAway());
    }

    [Fact]
    public async Task A_draft_started_twice_with_one_key_is_one_draft()
    {
        using var shop = new DeskShop();
        Assert.Equal(await shop.StartAsync(SmallJobs.FourPosts()), await shop.StartAsync(SmallJobs.FourPosts()));
        Assert.Single(shop.Drafts.Open());
    }

    [Fact]
    public async Task What_does_not_read_is_kept_as_typed()
    {
        using var shop = new DeskShop();
        var form = SmallJobs.FourPosts() with { Number = "  ", Due = "soon", Rope = new() { Diameter = "thick" } };
        var id = await shop.StartAsync(form);
        Assert.Equal(DraftFields.ToJson(form), DraftFields.ToJson(shop.Drafts.Find(id)!.Form));
    }

    [Fact]
    public async Task The_second_of_two_people_sees_what_the_first_changed_and_nothing_is_overwritten()
    {
        using var shop = new DeskShop();
        var form = SmallJobs.FourPosts();
        var id = await shop.StartAsync(form);
        var first = await shop.Drafts.SaveAsync(id, 1, form with { Customer = "theirs", Due = "2027-04-01" }, "first", DeskShop.Cancel);
        Assert.True(first!.IsKept);
        var second = await shop.Drafts.SaveAsync(id, 1, form with { Customer = "mine", Number = "LQ-9" }, "second", DeskShop.Cancel);
        Assert.False(second!.IsKept);
        Assert.Equal("first", second.Draft.ChangedBy);
        Assert.True(second.Conflict!.SameShape);
        Assert.Equal(
            [
                new("number", "LQ-3001", "LQ-9", ChangedByMe: true, ChangedByThem: false),
                new("customer", "theirs", "mine", ChangedByMe: true, ChangedByThem: true),
                new("due", "2027-04-01", "2027-03-12", ChangedByMe: false, ChangedByThem: true),
            ],
            second.Conflict.Fields);
        Assert.Equal("theirs", shop.Drafts.Find(id)!.Form.Customer);
    }

    [Fact]
    public async Task The_same_text_from_two_people_is_no_conflict()
    {
        using var shop = new DeskShop();
        var form = SmallJobs.FourPosts() with { Customer = "both" };
        var id = await shop.StartAsync(SmallJobs.FourPosts());
        Assert.True((await shop.Drafts.SaveAsync(id, 1, form, "first", DeskShop.Cancel))!.IsKept);
        Assert.True((await shop.Drafts.SaveAsync(id, 1, form, "second", DeskShop.Cancel))!.IsKept);
        Assert.Equal(2, shop.Drafts.Find(id)!.Version);
    }

    [Fact]
    public void Chosen_fields_are_merged()
    {
        var (theirs, mine) = (SmallJobs.FourPosts() with { Customer = "theirs", Due = "" }, SmallJobs.FourPosts() with { Customer = "mine" });
        var merged = DraftConflict.Merge(theirs, mine, new HashSet<string> { "due" });
        Assert.Equal(("mine", ""), (merged.Customer, merged.Due));
    }

    [Fact]
    public void Drafts_of_unlike_shape_can_only_be_chosen_as_a_whole()
    {
        var form = SmallJobs.FourPosts();
        Assert.False(DraftConflict.Between(form, DraftEdits.AddPost(form, 0, 3), form).SameShape);
    }

    [Fact]
    public async Task A_draft_put_away_keeps_its_text_takes_no_more_and_can_be_taken_up_again()
    {
        using var shop = new DeskShop();
        var id = await shop.StartAsync(SmallJobs.FourPosts());
        Assert.True(await shop.Drafts.DropAsync(id, "test", DeskShop.Cancel));
        Assert.False(await shop.Drafts.DropAsync(id, "test", DeskShop.Cancel));
        var saved = await shop.Drafts.SaveAsync(id, 1, SmallJobs.FourPosts() with { Customer = "late" }, "test", DeskShop.Cancel);
        Assert.False(saved!.IsKept);
        Assert.Equal("Lantern Quay boardwalk", shop.Drafts.Find(id)!.Form.Customer);
        Assert.Empty(shop.Drafts.Open());
        Assert.True(await shop.Drafts.ReopenAsync(id, "test", DeskShop.Cancel));
        Assert.False(await shop.Drafts.ReopenAsync(id, "test", DeskShop.Cancel));
        Assert.Single(shop.Drafts.Open());
    }

    [Fact]
    public async Task A_broken_statement_leaves_the_draft_as_it_was()
    {
        using var shop = new DeskShop();
        var id = await shop.StartAsync(SmallJobs.FourPosts());
        var statements = await shop.BreakEachStatementAsync(() => shop.Drafts.SaveAsync(id, 1, SmallJobs.FourPosts("LQ-8"), "test", DeskShop.Cancel));
        Assert.Equal(3, statements);
        Assert.Equal("LQ-8", shop.Drafts.Find(id)!.Form.Number);
    }
}
