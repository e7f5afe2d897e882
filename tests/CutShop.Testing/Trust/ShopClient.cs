using System.Net;
using System.Text.Json;

namespace CutShop.Testing.Trust;

/// <summary>
/// One person at one device. What gets no answer is sent again, the same with the same key, once the server is back: as the pages'
/// own script does.
/// </summary>
internal abstract class ShopClient(KillRun run, string name, string password) : IDisposable
{
    private readonly HttpClient _http = new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() })
    {
        BaseAddress = run.Address,
        Timeout = TimeSpan.FromSeconds(20),
    };

    private string _token = "";

    protected KillRun Run { get; } = run;

    protected Acknowledged Told => Run.Told;

    protected string Name { get; } = name;

    /// <summary>A page with a form of this person's.</summary>
    protected abstract string FormPage { get; }

    /// <summary>Works until the run ends.</summary>
    public async Task WorkAsync(CancellationToken cancel)
    {
        try
        {
            _token = await TokenAsync("/sign-in", cancel);
            await FormAsync("/sign-in", cancel, ("name", Name), ("password", password));
            _token = await TokenAsync(FormPage, cancel);
            while (!cancel.IsCancellationRequested)
                await DoSomethingAsync(cancel);
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
            // The run is over.
        }
    }

    protected abstract Task DoSomethingAsync(CancellationToken cancel);

    public void Dispose() => _http.Dispose();

    /// <summary>A tap at a bench.</summary>
    /// <returns>Where the page goes on to, and why nothing was done, or null.</returns>
    protected async Task<(string To, string? Problem)> TapAsync(string address, CancellationToken cancel, params (string, string)[] fields)
    {
        var key = Guid.NewGuid().ToString("N");
        var (_, body, _) = await FormAsync(address, cancel, [("key", key), .. fields]);
        using var json = JsonDocument.Parse(body);
        var problem = json.RootElement.GetProperty("problem").GetString();
        if (problem is null)
            Told.Write(key);
        return (json.RootElement.GetProperty("to").GetString()!, problem);
    }

    /// <summary>A tap that must be done, and that moves a ticket to a state.</summary>
    protected async Task MoveAsync(string ticket, string becomes, string address, CancellationToken cancel, params (string, string)[] fields)
    {
        Told.Trying(ticket, becomes);
        var (_, problem) = await TapAsync(address, cancel, fields);
        if (problem is not null)
            Run.Fault($"{Name} at {address}: refused: {problem}");
        Told.Is(ticket, becomes);
    }

    protected Task<(HttpStatusCode Status, string Body, string? To)> FormAsync(string address, CancellationToken cancel, params (string, string)[] fields) =>
        SendAsync(
            () => new HttpRequestMessage(HttpMethod.Post, address)
            {
                Content = new FormUrlEncodedContent([new(PageText.TokenField, _token), .. fields.Select(field => KeyValuePair.Create(field.Item1, field.Item2))]),
                Headers = { { "X-Tap", "1" } },
            },
            cancel);

    protected Task<(HttpStatusCode Status, string Body, string? To)> GetAsync(string address, CancellationToken cancel) =>
        SendAsync(() => new HttpRequestMessage(HttpMethod.Get, address), cancel);

    protected async Task<(HttpStatusCode Status, string Body, string? To)> SendAsync(Func<HttpRequestMessage> request, CancellationToken cancel)
    {
        while (true)
        {
            await Run.Door.PassAsync(cancel);
            try
            {
                using var message = request();
                using var answer = await _http.SendAsync(message, cancel);
                var body = await answer.Content.ReadAsStringAsync(cancel);
                if ((int)answer.StatusCode >= 400)
                    Run.Fault($"{Name} at {message.RequestUri}: {(int)answer.StatusCode}");
                return (answer.StatusCode, body, answer.Headers.Location?.OriginalString);
            }
            catch (Exception e) when (e is HttpRequestException or IOException or TaskCanceledException && !cancel.IsCancellationRequested)
            {
                Run.Unanswered(Name, e);
            }
        }
    }

    private async Task<string> TokenAsync(string page, CancellationToken cancel) => PageText.TokenIn((await GetAsync(page, cancel)).Body);
}
