using System.Net;

namespace CutShop.Web.Tests.People;

public sealed class FirstOwnerTests
{
    [Fact]
    public async Task The_link_makes_the_owner_once_and_then_leads_nowhere()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var token = await new FirstOwner(shop.Database).DrawLinkAsync(TestContext.Current.CancellationToken);
        var client = shop.NewClient();
        using var made = await client.SendFormAsync($"/set-up/{token}", ("name", "Berrin"), ("password", "four short words here"), ("again", "four short words here"));
        Assert.Equal("/people", made.Headers.Location!.OriginalString);
        Assert.Equal(Role.Owner, shop.People.Find("berrin")!.Role);
        using var people = await client.AskAsync("/people");
        Assert.Equal(HttpStatusCode.OK, people.StatusCode);
        using var again = await shop.Stranger.AskAsync($"/set-up/{token}");
        Assert.Equal(HttpStatusCode.NotFound, again.StatusCode);
        Assert.Null(await new FirstOwner(shop.Database).DrawLinkAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_new_link_ends_the_one_before_and_neither_is_kept_in_plain()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var firstOwner = new FirstOwner(shop.Database);
        var first = await firstOwner.DrawLinkAsync(TestContext.Current.CancellationToken);
        var second = await firstOwner.DrawLinkAsync(TestContext.Current.CancellationToken);
        using var old = await shop.Stranger.AskAsync($"/set-up/{first}");
        Assert.Equal(HttpStatusCode.NotFound, old.StatusCode);
        using var fresh = await shop.Stranger.AskAsync($"/set-up/{second}");
        Assert.Equal(HttpStatusCode.OK, fresh.StatusCode);
        Assert.DoesNotContain(second!, shop.Database.Read(session => session.Value<string>("SELECT string_agg(value, ',') FROM settings")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Berrin", "too short", "too short", "10 to 200 characters")]
    [InlineData("Berrin", "berrin's own password", "berrin's own password", "without the name in it")]
    [InlineData("Berrin", "aaaaaaaaaaaaaa", "aaaaaaaaaaaaaa", "too easily guessed")]
    [InlineData("Berrin", "four short words here", "four short words there", "the same password twice")]
    [InlineData("", "four short words here", "four short words here", "1 to 60 characters")]
    public async Task What_is_wrong_is_said_beside_its_field_and_nobody_is_made(string name, string password, string again, string said)
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var token = await new FirstOwner(shop.Database).DrawLinkAsync(TestContext.Current.CancellationToken);
        using var answer = await shop.NewClient().SendFormAsync($"/set-up/{token}", ("name", name), ("password", password), ("again", again));
        Assert.Contains(said, await answer.TextAsync(), StringComparison.Ordinal);
        Assert.Empty(shop.People.All());
    }
}
