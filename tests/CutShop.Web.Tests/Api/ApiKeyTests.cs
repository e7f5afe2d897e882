using System.Net;
using CutShop.Testing.Trust;
using Microsoft.Extensions.Time.Testing;

namespace CutShop.Web.Tests.Api;

public sealed class ApiKeyTests
{
    private static readonly DateTimeOffset Morning = new(2027, 3, 1, 7, 0, 0, TimeSpan.Zero);

    [Fact]
    public async Task A_key_is_shown_once_works_at_once_and_ends_when_it_is_revoked()
    {
        await using var shop = await RunningShop.StartAsync();
        using var made = await shop.Client.SendFormAsync("/keys?handler=Make", ("name", "Order desk program"), ("scope", "read"));
        var key = PageText.SecretIn(await made.TextAsync());
        Assert.DoesNotContain(key, await shop.Client.GetStringAsync(new Uri("/keys", UriKind.Relative), TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.DoesNotContain(key, shop.Database.Read(session => session.Value<string>("SELECT key_hash FROM api_keys")), StringComparison.Ordinal);

        var program = shop.NewClient();
        program.DefaultRequestHeaders.Authorization = new("Bearer", key);
        using var good = await program.AskAsync("/api/jobs");
        Assert.Equal(HttpStatusCode.OK, good.StatusCode);
        using (await shop.Client.SendFormAsync("/keys?handler=Revoke", ("id", "1"))) { }
        using var ended = await program.AskAsync("/api/jobs");
        Assert.Equal(HttpStatusCode.Unauthorized, ended.StatusCode);
    }

    [Fact]
    public async Task The_last_use_is_kept_to_the_minute()
    {
        var time = new FakeTimeProvider(Morning);
        await using var shop = await RunningShop.StartAsync(time);
        var program = await shop.WithKeyAsync(KeyScope.Read);
        foreach (var (seconds, kept) in new[] { (10, 10), (30, 10), (60, 70) })
        {
            time.SetUtcNow(Morning.AddSeconds(seconds == 60 ? 70 : seconds));
            using (await program.AskAsync("/api/jobs")) { }
            Assert.Equal(Morning.AddSeconds(kept), Assert.Single(new ApiKeyShelf(shop.Database).All()).LastUsedAt);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("Bearer ")]
    [InlineData("Bearer cutshop_guessed")]
    [InlineData("Basic b3duZXI6b3duZXI=")]
    public async Task Without_a_right_key_the_answer_is_401_and_asks_for_one(string header)
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = shop.NewClient();
        program.DefaultRequestHeaders.TryAddWithoutValidation("Authorization", header);
        using var answer = await program.AskAsync("/api/jobs");
        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        Assert.Equal("Bearer", Assert.Single(answer.Headers.WwwAuthenticate).Scheme);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
    }

    [Fact]
    public async Task A_key_of_its_own_scope_cannot_take_jobs_in()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.Read);
        using var answer = await program.SendJobAsync(await RunningShop.DemoFileAsync("lq-1042-north-walk.json"));
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Equal(403, (await answer.JsonAsync()).GetProperty("status").GetInt32());
        Assert.Empty(shop.AllJobs());
    }
}
