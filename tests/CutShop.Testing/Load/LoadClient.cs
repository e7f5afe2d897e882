using System.Diagnostics;
using System.Net;

namespace CutShop.Testing.Load;

/// <summary>One device at an address of its own, as a proxy on this machine tells it.</summary>
internal abstract class LoadClient : IDisposable
{
    private readonly HttpClient _http;
    private readonly TimeSpan _between;
    private readonly List<double> _seconds = [];

    /// <param name="site">Where the site is.</param>
    /// <param name="number">The device's number, of which its address is made.</param>
    /// <param name="between">How long it waits between two requests.</param>
    /// <param name="notes">Where it writes down what happens.</param>
    protected LoadClient(Uri site, int number, TimeSpan between, LoadNotes notes)
    {
        (_between, Notes) = (between, notes);
        _http = new(new SocketsHttpHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer(), UseProxy = false }) { BaseAddress = site };
        _http.DefaultRequestHeaders.Add("X-Forwarded-For", $"10.0.{number / 250}.{number % 250 + 1}");
    }

    /// <summary>How long each request took.</summary>
    public IReadOnlyList<double> Seconds => _seconds;

    protected LoadNotes Notes { get; }

    /// <summary>Makes ready, before the time runs.</summary>
    public virtual Task BeginAsync() => Task.CompletedTask;

    /// <summary>Works until the moment comes; what is under way then is ended.</summary>
    public async Task WorkAsync(Func<bool> isOver)
    {
        // Not all at once.
        await Task.Delay(_between * Random.Shared.NextDouble());
        while (!isOver())
            await StepAsync();
    }

    public void Dispose() => _http.Dispose();

    /// <summary>One request, or a few that belong together.</summary>
    protected abstract Task StepAsync();

    /// <summary>Sends a request, measures it, and waits as a person does.</summary>
    protected async Task<string> SendAsync(HttpMethod method, string address, HttpContent? content = null, bool isMeasured = true)
    {
        using var request = new HttpRequestMessage(method, new Uri(address, UriKind.Relative)) { Content = content };
        if (content is not null)
            request.Headers.Add("X-Tap", "1");
        var start = Stopwatch.GetTimestamp();
        try
        {
            using var answer = await _http.SendAsync(request);
            var body = await answer.Content.ReadAsStringAsync();
            if (isMeasured)
                _seconds.Add(Stopwatch.GetElapsedTime(start).TotalSeconds);
            if ((int)answer.StatusCode >= 400)
                Notes.Errors.Enqueue($"{method} {address}: {(int)answer.StatusCode}");
            return body;
        }
        catch (HttpRequestException e)
        {
            Notes.Errors.Enqueue($"{method} {address}: {e.Message}");
            return "";
        }
        finally
        {
            if (isMeasured)
                await Task.Delay(_between);
        }
    }
}
