using System.Net;
using CutShop.Web.Tests.Benches;

namespace CutShop.Web.Tests.Site;

/// <summary>Codes of labels and packs tried by guess.</summary>
public sealed class GuessedCodesTests
{
    [Fact]
    public async Task Codes_from_one_address_are_limited_by_rate_over_all_pages_that_take_one_and_told_when_to_come_again()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        string[] addresses = ["/p/{0}", "/p/{0}/line", "/p/{0}/bores", "/p/{0}/set-out", "/p/{0}/report", "/s/{0}", "/s/{0}/pages", "/s/{0}/pack.html"];
        for (var i = 0; i < GuessLimits.CodesAMinute; i++)
        {
            using var guess = await shop.Stranger.AskAsync(string.Format(System.Globalization.CultureInfo.InvariantCulture, addresses[i % addresses.Length], PieceCode.Draw().Plain));
            Assert.Equal(HttpStatusCode.NotFound, guess.StatusCode);
        }
        // The right one is not looked at either.
        using var late = await shop.Stranger.AskAsync($"/p/{job.Codes[0].Plain}");
        Assert.Equal(HttpStatusCode.TooManyRequests, late.StatusCode);
        Assert.InRange(late.Headers.RetryAfter!.Delta!.Value.TotalSeconds, 1, 60);
        using var tap = await shop.Stranger.PostAsync(new Uri($"/p/{job.Codes[0].Plain}/installed", UriKind.Relative), content: null, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.TooManyRequests, tap.StatusCode);
    }

    [Fact]
    public async Task Guesses_count_for_the_address_that_the_proxy_saw_whatever_was_sent_before_it()
    {
        await using var shop = await RunningShop.StartAsync();
        for (var i = 0; i < GuessLimits.CodesAMinute; i++)
            Assert.Equal(HttpStatusCode.NotFound, await GuessAsync(shop, $"203.0.113.{i % 250}, 198.51.100.7"));
        Assert.Equal(HttpStatusCode.TooManyRequests, await GuessAsync(shop, "203.0.113.251, 198.51.100.7"));
        Assert.Equal(HttpStatusCode.NotFound, await GuessAsync(shop, "198.51.100.8"));
    }

    [Fact]
    public async Task A_code_that_nobody_has_and_one_of_another_kind_get_the_same_answer()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        var pack = await shop.PackOfAsync(job);
        foreach (var (kind, other) in new[] { ("/p/{0}", pack), ("/p/{0}/line", pack), ("/p/{0}/report", pack), ("/s/{0}", job.Codes[0]), ("/s/{0}/pages", job.Codes[0]) })
            Assert.Equal(await AnswerAsync(shop, kind, PieceCode.Draw()), await AnswerAsync(shop, kind, other));
    }

    private static async Task<HttpStatusCode> GuessAsync(RunningShop shop, string forwardedFor)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, $"/p/{PieceCode.Draw().Plain}");
        request.Headers.Add("X-Forwarded-For", forwardedFor);
        using var answer = await shop.Stranger.SendAsync(request, TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }

    /// <summary>All of an answer but the code that was asked for.</summary>
    private static async Task<string> AnswerAsync(RunningShop shop, string kind, PieceCode code)
    {
        using var answer = await shop.Stranger.AskAsync(string.Format(System.Globalization.CultureInfo.InvariantCulture, kind, code.Plain));
        var headers = answer.Headers.Concat(answer.Content.Headers).Where(header => header.Key != "Date").Select(header => $"{header.Key}: {string.Join(", ", header.Value)}");
        return $"{(int)answer.StatusCode}\n{string.Join('\n', headers)}\n{(await answer.TextAsync()).Replace(code.Plain, "CODE", StringComparison.Ordinal)}";
    }
}
