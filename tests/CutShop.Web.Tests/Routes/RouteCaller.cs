using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using CutShop.Testing.Trust;

namespace CutShop.Web.Tests.Routes;

/// <summary>Somebody who calls routes: a stranger, a person or a program. A person who is signed out by what a route does signs in again.</summary>
internal sealed class RouteCaller(RunningShop shop, Role? role, KeyScope? key) : IAsyncDisposable
{
    private const string ForwardedFor = "X-Forwarded-For";

    private static int _addresses;

    private HttpClient? _client;
    private string _token = "";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>Sends a request with a form's token, and what is asked of it as a query or a form.</summary>
    /// <returns>The status, and where the answer leads.</returns>
    public async Task<(HttpStatusCode Status, string? To)> SendAsync(
        string method, string address, string? handler, IReadOnlyList<(string Name, string Value)> fields, (string Type, string Text)? body = null)
    {
        if (_client is null)
            await EnterAsync();
        var isRead = method is "GET" or "HEAD" or "OPTIONS";
        var query = fields.Where(_ => isRead).Append(("handler", handler ?? "")).Where(pair => pair.Item1 != "handler" || pair.Item2.Length > 0)
            .Select(pair => $"{Uri.EscapeDataString(pair.Item1)}={Uri.EscapeDataString(pair.Item2)}");
        using var request = new HttpRequestMessage(new HttpMethod(method), $"{address}?{string.Join('&', query)}".TrimEnd('?'));
        request.Headers.Add("RequestVerificationToken", _token);
        // The proxy on this machine says who asks: each from elsewhere, so that no limit on guessing counts.
        request.Headers.Add(ForwardedFor, AnotherAddress());
        if (body is var (type, text))
        {
            request.Content = new ByteArrayContent(System.Text.Encoding.UTF8.GetBytes(text));
            if (type.Length > 0)
                request.Content.Headers.ContentType = MediaTypeHeaderValue.Parse(type);
        }
        else if (!isRead)
        {
            request.Content = new FormUrlEncodedContent(fields.Select(pair => KeyValuePair.Create(pair.Name, pair.Value)));
        }
        using var answer = await _client!.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, Cancel);
        if (answer.Headers.TryGetValues("Set-Cookie", out var cookies) && cookies.Any(cookie => cookie.StartsWith("cutshop=;", StringComparison.Ordinal)))
            await LeaveAsync();
        return (answer.StatusCode, answer.Headers.Location?.OriginalString);
    }

    public async ValueTask DisposeAsync() => await LeaveAsync();

    private static string AnotherAddress()
    {
        var number = Interlocked.Increment(ref _addresses);
        return string.Create(CultureInfo.InvariantCulture, $"10.{number >> 16 & 255}.{number >> 8 & 255}.{number & 255}");
    }

    private Task LeaveAsync()
    {
        _client?.Dispose();
        _client = null;
        return Task.CompletedTask;
    }

    private async Task EnterAsync()
    {
        _client = key is { } scope ? await shop.WithKeyAsync(scope) : shop.NewClient();
        _client.DefaultRequestHeaders.Add(ForwardedFor, AnotherAddress());
        if (role is { } person)
            await SignInAsync(person);
        using var form = await _client.AskAsync(role is null ? "/sign-in" : "/me");
        _token = PageText.TokenIn(await form.Content.ReadAsStringAsync(Cancel));
        _client.DefaultRequestHeaders.Remove(ForwardedFor);
    }

    private async Task SignInAsync(Role person)
    {
        var name = RunningShop.NameOf(person);
        await shop.PasswordOfAsync(person);
        var (people, password) = (shop.People, PeopleShelf.DrawPassword());
        var id = people.Find(name)!.Id;
        await people.SwitchAsync(id, on: true, "test", Cancel);
        await people.ChangeRoleAsync(id, person, "test", Cancel);
        await people.SetPasswordAsync(id, password, "test", Cancel);
        using var entered = await _client!.SendFormAsync("/sign-in", ("way", "password"), ("name", name), ("password", password));
        Assert.Equal(WorkPlace.Of(person), entered.Headers.Location?.OriginalString);
    }
}
