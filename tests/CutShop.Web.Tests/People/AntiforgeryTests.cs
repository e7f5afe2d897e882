using System.Net;
using CutShop.Testing.Trust;
using Microsoft.AspNetCore.Routing;

namespace CutShop.Web.Tests.People;

/// <summary>Another site's page may make a browser send a form with the person's cookie: it is refused on every route.</summary>
public sealed class AntiforgeryTests
{
    /// <summary>Routes that take a form without a token, and why that harms nobody.</summary>
    private static readonly Dictionary<string, string> Exempt = new()
    {
        ["p/{code}/bored"] = "the label's code is the key, and signing in adds nothing to it",
        ["p/{code}/installed"] = "the label's code is the key, and signing in adds nothing to it",
        ["p/{code}/measure"] = "the label's code is the key, and signing in adds nothing to it",
        ["p/{code}/report"] = "the label's code is the key, and signing in adds nothing to it",
        ["trouble"] = "it only tells what went wrong and changes nothing",
    };

    [Fact]
    public async Task Every_route_that_takes_more_than_questions_asks_for_the_forms_token_or_for_a_key()
    {
        await using var shop = await RunningShop.StartAsync();
        var wrong = new List<string>();
        var tried = 0;
        foreach (var route in shop.Routes.Where(TakesForms))
        {
            var name = route.RoutePattern.RawText!.TrimStart('/');
            using var form = new FormUrlEncodedContent([KeyValuePair.Create("key", "one")]);
            using var answer = await shop.Client.PostAsync(new Uri(RightsTests.AddressOf(route), UriKind.Relative), form, TestContext.Current.CancellationToken);
            // A program's route knows nobody by a cookie.
            var expected = name.StartsWith("api/", StringComparison.Ordinal) ? HttpStatusCode.Unauthorized : HttpStatusCode.BadRequest;
            if (!Exempt.ContainsKey(name) && answer.StatusCode != expected)
                wrong.Add($"{name}: {(int)answer.StatusCode}");
            tried++;
        }
        Assert.Empty(wrong);
        Assert.True(tried > 30, $"Only {tried} routes take forms.");
        Assert.Empty(Exempt.Keys.Except(shop.Routes.Select(route => route.RoutePattern.RawText!.TrimStart('/'))));
    }

    [Fact]
    public async Task Another_persons_token_is_refused()
    {
        await using var shop = await RunningShop.StartAsync();
        var cutter = await shop.SignInAsync(CutShop.Shop.People.Role.Cutter);
        var token = PageText.TokenIn(await cutter.GetStringAsync(new Uri("/me", UriKind.Relative), TestContext.Current.CancellationToken));
        using var form = new FormUrlEncodedContent([KeyValuePair.Create("name", "Intruder"), KeyValuePair.Create("role", "owner"), KeyValuePair.Create("__RequestVerificationToken", token)]);
        using var answer = await shop.Client.PostAsync(new Uri("/people", UriKind.Relative), form, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Null(shop.People.Find("Intruder"));
    }

    /// <summary>A page says no methods: it takes forms where it has a handler for them, and is asked all the same.</summary>
    private static bool TakesForms(RouteEndpoint route) =>
        route.Metadata.GetMetadata<IHttpMethodMetadata>() is not { } methods || methods.HttpMethods.Any(method => method is not ("GET" or "HEAD"));
}
