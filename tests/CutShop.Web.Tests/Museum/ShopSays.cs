using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace CutShop.Web.Tests.Museum;

/// <summary>What a shop says: exact texts for programs, and the figures of each page and each ticket. The same shop always says the same.</summary>
/// <param name="site">The shop.</param>
/// <param name="views">Pages as somebody sees who has the ticket at the bench: name and address.</param>
internal sealed partial class ShopSays(MuseumSite site, IReadOnlyList<(string Who, string Address)> views)
{
    /// <summary>The file of figures in a job's folder.</summary>
    public const string FiguresFile = "figures.txt";

    /// <summary>What programs read of a job: the end of the address, and the file that keeps it.</summary>
    private static readonly (string Address, string File)[] ForPrograms =
    [
        ("", "job.json"), ("/takeoff", "takeoff.json"), ("/tickets", "tickets.json"), ("/labels", "labels.json"),
        ("/pieces.csv", "pieces.csv"), ("/bores.csv", "bores.csv"), ("/fixings.csv", "fixings.csv"),
    ];

    private static readonly string[] Paper = ["summary", "cut-tickets", "drill-tickets"];

    /// <summary>The numbers of all jobs, as programs are told.</summary>
    public async Task<IReadOnlyList<string>> JobsAsync()
    {
        using var jobs = JsonDocument.Parse(await MuseumSite.TextAsync(await site.AskAsProgramAsync("/api/jobs?since=0&most=1000")));
        return [.. jobs.RootElement.GetProperty("jobs").EnumerateArray().Select(job => job.GetProperty("number").GetString()!).Distinct().Order(StringComparer.Ordinal)];
    }

    /// <summary>All that the shop says of a job, by the name of the file that keeps it.</summary>
    public async Task<IReadOnlyDictionary<string, string>> OfJobAsync(string number)
    {
        var said = new Dictionary<string, string>();
        foreach (var (end, file) in ForPrograms)
            said[file] = await MuseumSite.TextAsync(await site.AskAsProgramAsync($"/api/jobs/{Uri.EscapeDataString(number)}{end}"));
        var job = JobParts.Read(number, said["takeoff.json"], said["tickets.json"], said["labels.json"]);
        var figures = new FigureText(job.Posts.Concat(job.Pieces.Select(piece => piece.Run)));
        var text = new StringBuilder();
        foreach (var (address, who) in PagesOf(job))
            Add(text, figures, address, who, await MuseumSite.TextAsync(await site.AskAsync(address, who)), job);
        if (!job.IsCancelled && await SitePackAsync(number) is { } pack)
            Add(text, figures, $"/jobs/{Uri.EscapeDataString(number)}/site-pack", MuseumSite.Owner, pack, job);
        foreach (var piece in job.Pieces)
            AddPart(text, $"label {piece.Run}", figures.OfText(await LabelAsync(number, piece.Code)));
        said[FiguresFile] = text.ToString();
        return said;
    }

    /// <summary>The figures of the shop's own pages, which are of no one job.</summary>
    public async Task<string> OfTheShopAsync(IEnumerable<string> addresses)
    {
        var text = new StringBuilder();
        var figures = new FigureText([]);
        foreach (var address in addresses)
            Add(text, figures, address, MuseumSite.Owner, await MuseumSite.TextAsync(await site.AskAsync(address)), job: null);
        return text.ToString();
    }

    /// <summary>The figures of one page, by the marks and runs that may stand on it.</summary>
    public async Task<IReadOnlyList<string>> OfPageAsync(string address, IEnumerable<string> marks) =>
        new FigureText(marks).OfPage(await MuseumSite.TextAsync(await site.AskAsync(address)));

    /// <summary>The posts and pieces of a job.</summary>
    public async Task<JobParts> PartsOfAsync(string number)
    {
        var address = $"/api/jobs/{Uri.EscapeDataString(number)}";
        return JobParts.Read(
            number,
            await MuseumSite.TextAsync(await site.AskAsProgramAsync($"{address}/takeoff")),
            await MuseumSite.TextAsync(await site.AskAsProgramAsync($"{address}/tickets")),
            await MuseumSite.TextAsync(await site.AskAsProgramAsync($"{address}/labels")));
    }

    /// <summary>The parts of a file of figures: what each page, sheet or label is about, and its lines.</summary>
    public static IReadOnlyDictionary<string, IReadOnlyList<string>> Parts(string figures)
    {
        var parts = new Dictionary<string, IReadOnlyList<string>>();
        var lines = new List<string>();
        foreach (var line in figures.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line is ['[', .., ']'])
                parts.Add(line[1..^1], lines = []);
            else
                lines.Add(line);
        }
        return parts;
    }

    /// <summary>The pages of a job, and who looks at each.</summary>
    private IEnumerable<(string Address, string Who)> PagesOf(JobParts job)
    {
        var number = Uri.EscapeDataString(job.Number);
        List<string> addresses =
        [
            $"/jobs/{number}", $"/jobs/{number}/labels", .. Paper.Select(paper => $"/jobs/{number}/{paper}"),
            $"/pack/{number}", $"/pack/{number}/list",
            .. job.DrillTickets.Select(post => $"/drill/{number}/{Uri.EscapeDataString(post)}"),
            .. job.Pieces.SelectMany(piece => new[] { $"/cut/{piece.Plain}", $"/p/{piece.Plain}", $"/p/{piece.Plain}/measure" }),
            .. job.Pieces.DistinctBy(piece => piece.Line).Select(piece => $"/p/{piece.Plain}/line"),
        ];
        return [.. addresses.Where(address => !job.IsCancelled || !address.StartsWith("/p/", StringComparison.Ordinal)).Select(address => (address, MuseumSite.Owner)),
            .. views.Where(view => addresses.Contains(view.Address)).Select(view => (view.Address, view.Who))];
    }

    private static void Add(StringBuilder text, FigureText figures, string address, string who, string page, JobParts? job)
    {
        var name = who == MuseumSite.Owner ? address : $"{address} as {who}";
        var sheets = Sheet().Matches(page);
        if (sheets.Count == 0 || job is null)
        {
            AddPart(text, name, figures.OfPage(page), isLines: true);
            return;
        }
        foreach (var sheet in sheets.GroupBy(sheet => AboutOf(sheet.Groups["about"].Value, job)))
            AddPart(text, sheet.Key.Length == 0 ? name : $"{name} {sheet.Key}", sheet.SelectMany(one => figures.OfPage(one.Value)), isLines: true);
    }

    /// <summary>The piece or post that stands in a sheet's head.</summary>
    private static string AboutOf(string head, JobParts job)
    {
        var said = System.Net.WebUtility.HtmlDecode(head).Replace('\u00A0', ' ');
        return job.Pieces.Select(piece => piece.Run).Where(run => said == run || said.EndsWith($" {run}", StringComparison.Ordinal) || said.StartsWith($"{run}:", StringComparison.Ordinal) || said.StartsWith($"{run} ", StringComparison.Ordinal)).MaxBy(run => run.Length)
            ?? job.Posts.Where(mark => said == mark || said.EndsWith($" {mark}", StringComparison.Ordinal)).MaxBy(mark => mark.Length)
            ?? "";
    }

    private static void AddPart(StringBuilder text, string name, IEnumerable<string> figures, bool isLines = false)
    {
        text.Append(CultureInfo.InvariantCulture, $"[{name}]\n");
        List<string> lines = isLines ? [.. figures] : [string.Join("; ", figures)];
        foreach (var line in lines)
            text.Append(line).Append('\n');
    }

    /// <summary>The one file of a job's site pack; null where the job has none, as a cancelled one.</summary>
    private async Task<string?> SitePackAsync(string number)
    {
        using var pack = await site.AskAsync($"/jobs/{Uri.EscapeDataString(number)}/site-pack");
        return pack.Headers.Location is { } place ? await MuseumSite.TextAsync(await site.AskAsync($"{place.OriginalString}/pack.html")) : null;
    }

    private async Task<string> LabelAsync(string number, string code)
    {
        using var answer = await site.AskAsync($"/jobs/{Uri.EscapeDataString(number)}/labels.pdf?piece={code.Replace("-", "", StringComparison.Ordinal)}");
        var file = Path.GetTempFileName();
        try
        {
            await File.WriteAllBytesAsync(file, await answer.EnsureSuccessStatusCode().Content.ReadAsByteArrayAsync());
            using var reader = Process.Start(new ProcessStartInfo("pdftotext", ["-layout", file, "-"]) { UseShellExecute = false, RedirectStandardOutput = true, StandardOutputEncoding = Encoding.UTF8 })!;
            var text = await reader.StandardOutput.ReadToEndAsync();
            await reader.WaitForExitAsync();
            return text;
        }
        finally
        {
            File.Delete(file);
        }
    }

    [GeneratedRegex("<article class=\"sheet\".*?<h1>(?<about>.*?)</h1>.*?</article>", RegexOptions.ExplicitCapture | RegexOptions.Singleline, matchTimeoutMilliseconds: 10_000)]
    private static partial Regex Sheet();
}

/// <summary>A job's posts and pieces as programs are told of them.</summary>
internal sealed record JobParts(string Number, bool IsCancelled, IReadOnlyList<string> Posts, IReadOnlyList<string> DrillTickets, IReadOnlyList<JobPiece> Pieces)
{
    public static JobParts Read(string number, string takeoff, string tickets, string labels)
    {
        using var worked = JsonDocument.Parse(takeoff);
        using var ticketed = JsonDocument.Parse(tickets);
        using var labelled = JsonDocument.Parse(labels);
        var posts = new List<string>();
        var lines = new Dictionary<string, string>();
        foreach (var piece in worked.RootElement.GetProperty("pieces").EnumerateArray())
        {
            lines[piece.GetProperty("run").GetString()!] = piece.GetProperty("line").GetString()!;
            posts.AddRange(piece.GetProperty("atPosts").EnumerateArray().Select(at => at.GetProperty("post").GetString()!));
        }
        var cut = ticketed.RootElement.GetProperty("cut").EnumerateArray().ToList();
        return new(
            number,
            cut.Count > 0 && cut.All(ticket => ticket.GetProperty("state").GetString() is "cancelled" or "surplus"),
            [.. posts.Distinct()],
            [.. ticketed.RootElement.GetProperty("drill").EnumerateArray().Select(ticket => ticket.GetProperty("post").GetString()!)],
            [.. labelled.RootElement.EnumerateArray().Select(label => (Run: label.GetProperty("run").GetString()!, Code: label.GetProperty("code").GetString()!))
                .Select(label => new JobPiece(label.Run, label.Code, lines[label.Run]))]);
    }
}

/// <summary>A piece: its run, the code on its label, and its line.</summary>
internal sealed record JobPiece(string Run, string Code, string Line)
{
    public string Plain => Code.Replace("-", "", StringComparison.Ordinal);
}
