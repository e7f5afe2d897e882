using System.Net;

namespace CutShop.Testing.Fuzz;

/// <summary>
/// Walks through the site by its links, as whoever is signed in, and sends every form it finds with fields that hold what breaks
/// programs, that are missing, doubled or unknown. A crash (500 and above) or no answer is harm.
/// </summary>
/// <param name="client">A browser that follows redirects.</param>
/// <param name="seed">Decides what is put into the fields.</param>
internal sealed class FormFuzz(HttpClient client, int seed)
{
    private const int MostPages = 400;
    private const int LongText = 20_000;

    /// <summary>What would end the walk: signing out, and the walker's own account.</summary>
    private static readonly string[] LeftOut = ["/sign-out", "/people/1", "/me"];

    private readonly Random _random = new(seed);
    private readonly List<string> _harm = [];
    private readonly SortedDictionary<int, int> _statuses = [];

    /// <summary>Pages that were opened.</summary>
    public int Pages { get; private set; }

    /// <summary>Forms that were sent.</summary>
    public int Sent { get; private set; }

    /// <summary>What did harm.</summary>
    public IReadOnlyList<string> Found => _harm;

    /// <summary>How often each status was answered to a form.</summary>
    public IReadOnlyDictionary<int, int> Statuses => _statuses;

    /// <summary>Opens each page once and sends each of its forms so many times.</summary>
    public async Task RunAsync(int timesAForm, CancellationToken cancel)
    {
        var (queue, seen) = (new Queue<string>(["/"]), new HashSet<string>(["/"]));
        while (queue.TryDequeue(out var address) && Pages < MostPages)
        {
            if (await OpenAsync(address, cancel) is not { } page)
                continue;
            Pages++;
            foreach (var link in PageForm.LinksOn(page).Where(link => !IsLeftOut(link) && seen.Add(Kind(link))))
                queue.Enqueue(link);
            foreach (var form in PageForm.On(address, page).Where(form => !IsLeftOut(form.Action)))
            {
                for (var i = 0; i < timesAForm; i++)
                    await SendAsync(form, cancel);
            }
        }
    }

    private async Task<string?> OpenAsync(string address, CancellationToken cancel)
    {
        using var answer = await client.GetAsync(new Uri(address, UriKind.Relative), HttpCompletionOption.ResponseHeadersRead, cancel);
        if ((int)answer.StatusCode >= 500)
            _harm.Add($"GET {address}: {(int)answer.StatusCode}");
        var isPage = answer.IsSuccessStatusCode && answer.Content.Headers.ContentType?.MediaType == "text/html";
        return isPage ? await answer.Content.ReadAsStringAsync(cancel) : null;
    }

    private async Task SendAsync(PageForm form, CancellationToken cancel)
    {
        var fields = Changed(form.Fields);
        using var content = new FormUrlEncodedContent(fields);
        try
        {
            using var answer = await client.PostAsync(new Uri(form.Action, UriKind.Relative), content, cancel);
            Sent++;
            _statuses[(int)answer.StatusCode] = _statuses.GetValueOrDefault((int)answer.StatusCode) + 1;
            if (answer.StatusCode >= HttpStatusCode.InternalServerError)
                _harm.Add($"POST {form.Action}: {(int)answer.StatusCode} for {Shown(fields)}");
        }
        catch (HttpRequestException e)
        {
            _harm.Add($"POST {form.Action}: {e.Message} for {Shown(fields)}");
        }
    }

    private List<KeyValuePair<string, string>> Changed(IReadOnlyList<KeyValuePair<string, string>> fields)
    {
        var sent = new List<KeyValuePair<string, string>>();
        foreach (var field in fields)
        {
            var isToken = field.Key == "__RequestVerificationToken";
            switch (isToken ? 9 : _random.Next(10))
            {
                case 0:
                    break;
                case 1:
                    sent.Add(field);
                    sent.Add(new(field.Key, Hostile.Any(_random)));
                    break;
                case 2:
                    sent.Add(new(field.Key, new string('7', _random.Next(LongText))));
                    break;
                case < 6:
                    sent.Add(new(field.Key, Hostile.Any(_random)));
                    break;
                default:
                    sent.Add(field);
                    break;
            }
        }
        if (_random.Next(3) == 0)
            sent.Add(new(string.Join('.', Enumerable.Repeat("lines[0]", _random.Next(200))), Hostile.Any(_random)));
        return sent;
    }

    private static bool IsLeftOut(string address) => LeftOut.Contains(address.Split('?')[0]) || address.StartsWith("/language/", StringComparison.Ordinal);

    /// <summary>Pages of pieces, lines and the like are all of one kind: a few of each are enough.</summary>
    private string Kind(string address) =>
        address.StartsWith("/p/", StringComparison.Ordinal) || address.StartsWith("/cut/", StringComparison.Ordinal) || address.StartsWith("/drill/", StringComparison.Ordinal)
            ? $"{address.Split('/')[1]} {_random.Next(4)}"
            : address;

    private static string Shown(IEnumerable<KeyValuePair<string, string>> fields) => string.Join(
        " & ", fields.Where(field => field.Key != "__RequestVerificationToken").Select(field => $"{Short(field.Key)}={Short(field.Value)}"));

    private static string Short(string text) => text.Length <= 60 ? text : $"{text[..60]}… ({text.Length})";
}
