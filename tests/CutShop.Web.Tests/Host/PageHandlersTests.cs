using System.Net;
using CutShop.Testing.Trust;
using CutShop.Web.Tests.Benches;

namespace CutShop.Web.Tests.Host;

/// <summary>Pages that are sent what they have no handler for, or what is no form.</summary>
public sealed class PageHandlersTests
{
    [Theory]
    [InlineData("POST", "/board", HttpStatusCode.MethodNotAllowed, "Not possible here")]
    [InlineData("POST", "/board?handler=x", HttpStatusCode.MethodNotAllowed, "Not possible here")]
    [InlineData("PUT", "/people/1", HttpStatusCode.MethodNotAllowed, "Not possible here")]
    [InlineData("DELETE", "/me", HttpStatusCode.MethodNotAllowed, "Not possible here")]
    [InlineData("POST", "/people/1?handler=x", HttpStatusCode.NotFound, "Not here")]
    [InlineData("POST", "/people/1", HttpStatusCode.NotFound, "Not here")]
    public async Task What_a_page_does_not_take_is_answered_in_words(string method, string address, HttpStatusCode status, string said)
    {
        await using var shop = await RunningShop.StartAsync();
        using var answer = await SendAsync(shop, method, address, new FormUrlEncodedContent([]));
        Assert.Equal(status, answer.StatusCode);
        Assert.Contains($"<h1>{said}</h1>", await answer.TextAsync(), StringComparison.Ordinal);
        Assert.Equal(status == HttpStatusCode.MethodNotAllowed, answer.Content.Headers.Allow.Contains("GET"));
    }

    [Fact]
    public async Task A_strangers_form_to_a_labels_page_that_takes_none_is_answered_in_words()
    {
        await using var shop = await RunningShop.StartAsync();
        var code = (await shop.TakeInDemoAsync(BenchShop.NorthWalk)).Codes[0].Plain;
        foreach (var page in new[] { "", "/line", "/bores", "/set-out", "/dropped" })
        {
            using var answer = await shop.Stranger.SendFormAsync("/sign-in?handler=none");
            using var request = new HttpRequestMessage(HttpMethod.Post, $"/p/{code}{page}") { Content = new FormUrlEncodedContent([]) };
            request.Headers.Add("RequestVerificationToken", PageText.TokenIn(await answer.TextAsync()));
            using var sent = await shop.Stranger.SendAsync(request, TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.MethodNotAllowed, sent.StatusCode);
        }
    }

    [Theory]
    [InlineData("text/plain", HttpStatusCode.UnsupportedMediaType, "Not a form")]
    [InlineData("application/json", HttpStatusCode.UnsupportedMediaType, "Not a form")]
    [InlineData("multipart/form-data; boundary=x", HttpStatusCode.BadRequest, "Not understood")]
    public async Task What_is_no_form_or_cannot_be_read_is_answered_in_words(string type, HttpStatusCode status, string said)
    {
        await using var shop = await RunningShop.StartAsync();
        using var body = new StringContent("a=b") { Headers = { ContentType = System.Net.Http.Headers.MediaTypeHeaderValue.Parse(type) } };
        using var answer = await SendAsync(shop, "POST", "/settings/cutting", body);
        Assert.Equal(status, answer.StatusCode);
        Assert.Contains($"<h1>{said}</h1>", await answer.TextAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/cut/%09")]
    [InlineData("/p/%20")]
    [InlineData("/jobs/%C2%A0")]
    [InlineData("/stock/%09")]
    [InlineData("/drill/%20/%09")]
    public async Task Blank_space_in_an_address_leads_nowhere_and_says_so(string address)
    {
        await using var shop = await RunningShop.StartAsync();
        using var answer = await shop.Client.AskAsync(address);
        Assert.True(answer.StatusCode is HttpStatusCode.NotFound or HttpStatusCode.OK, $"{(int)answer.StatusCode}");
        Assert.Contains("<h1>", await answer.TextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plan_of_an_unknown_construction_is_refused_by_that_field_alone()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.PlanDemoAsync();
        using var answer = await shop.Client.SendFormAsync("/plans", ("material", "Polypropylene"), ("diameter", "1 1/2 in"), ("construction", "plaited"), ("seconds", "1"));
        var page = await answer.TextAsync();
        Assert.Contains("Construction: \"plaited\" is not known", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Seconds: from", page, StringComparison.Ordinal);
        using var other = await shop.Client.SendFormAsync("/plans", ("material", "Polypropylene"), ("diameter", "1 1/2 in"), ("construction", RopeKind.ThreeStrand), ("seconds", "0"));
        page = await other.TextAsync();
        Assert.Contains("Seconds: from 1 to 120.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("is not known", page, StringComparison.Ordinal);
    }

    private static async Task<HttpResponseMessage> SendAsync(RunningShop shop, string method, string address, HttpContent content)
    {
        var token = PageText.TokenIn(await shop.Client.GetStringAsync(new Uri("/me", UriKind.Relative), TestContext.Current.CancellationToken));
        using var request = new HttpRequestMessage(new HttpMethod(method), address) { Content = content };
        request.Headers.Add("RequestVerificationToken", token);
        return await shop.Client.SendAsync(request, TestContext.Current.CancellationToken);
    }
}
