using System.Globalization;
using System.Text.RegularExpressions;

namespace CutShop.Benchmarks.OnSite;

/// <summary>A phone that asks the site as a browser does: what it takes compressed comes so, and is counted so.</summary>
internal sealed partial class PhoneOnSite : IDisposable
{
    /// <summary>Fewer than an address may ask for in a minute: then the phone goes by another.</summary>
    private const int AsksOfAnAddress = 200;

    private readonly HttpClient _client;
    private int _asks;

    public PhoneOnSite(Uri site, string codings)
    {
        _client = new(new SocketsHttpHandler()) { BaseAddress = site };
        if (codings.Length > 0)
            _client.DefaultRequestHeaders.AcceptEncoding.ParseAdd(codings);
    }

    /// <summary>What comes over the network for a path.</summary>
    public byte[] Get(string path)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        var address = _asks++ / AsksOfAnAddress;
        request.Headers.Add("X-Forwarded-For", string.Create(CultureInfo.InvariantCulture, $"10.{address / 65536 % 256}.{address / 256 % 256}.{address % 256}"));
        using var answer = _client.Send(request);
        answer.EnsureSuccessStatusCode();
        using var body = new MemoryStream();
        answer.Content.CopyTo(body, context: null, CancellationToken.None);
        return body.ToArray();
    }

    public void Dispose() => _client.Dispose();

    /// <summary>The addresses that a browser loads with a page: style sheets, scripts, icons, pictures.</summary>
    public static IReadOnlyList<string> LoadedWith(string html) =>
        [.. Loaded().Matches(html).Select(match => match.Groups["address"].Value).Distinct(StringComparer.Ordinal)];

    [GeneratedRegex("<(link|script|img)[^>]*?(href|src)=\"(?<address>[^\"]+)\"", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Loaded();
}
