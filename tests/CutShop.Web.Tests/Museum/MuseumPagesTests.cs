using System.Globalization;
using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using CutShop.Testing.Museum;
using Microsoft.AspNetCore.Routing;

namespace CutShop.Web.Tests.Museum;

/// <summary>What earlier releases told programs, printed on tickets and showed on pages, they are told, printed and shown now.</summary>
public sealed partial class MuseumPagesTests
{
    /// <summary>Routes that no page of a job leads to: files, the machine's own, and what changes something.</summary>
    private static readonly HashSet<string> NotOfTheShop =
    [
        "assets/{tag}/{name}", "health/live", "health/ready", "language/{tag}", "trouble", "no-network", "worker.js", "board/news", "sign-in", "sign-out", "set-up/{token}", "scan",
        "plans/search/{id:long}", "drafts/{id:long}/change", "api/openapi.json", "api/jobs/csv", "api/changes",
        "jobs/{number}/{handler:regex(^(release|takeback|takeup|change|copy)$)}", "p/{code}/installed", "p/{code}/dropped",
        "p/{code}/bored", "p/{code}/bores", "p/{code}/set-out", // No job of the release has posts that are bored on site, or a curve.
    ];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static TheoryData<string> Releases => [.. MuseumShop.Releases];

    public static TheoryData<string> ReleasesOnServer => [.. MuseumShop.ReleasesOnServer];

    [Theory]
    [MemberData(nameof(Releases))]
    public async Task A_shop_in_a_file_says_what_it_said_then(string release)
    {
        using var shop = MuseumShop.InFile(release);
        AssertNone(await DifferencesAsync(shop, shop.Said(release)));
    }

    [Theory]
    [MemberData(nameof(ReleasesOnServer))]
    public async Task A_shop_on_a_server_says_what_it_said_then(string release)
    {
        using var shop = MuseumShop.OnServer(release);
        AssertNone(await DifferencesAsync(shop, shop.Said(release)));
    }

    [Theory]
    [MemberData(nameof(Releases))]
    public async Task Every_page_that_a_link_leads_to_is_there_and_every_route_is_met(string release)
    {
        using var shop = MuseumShop.InFile(release);
        await using var site = await MuseumSite.StartAsync(shop.Place, shop.Clock);
        var (walk, says) = (new Walk(site), new ShopSays(site, []));
        foreach (var number in await says.JobsAsync())
        {
            walk.Add($"/jobs/{Uri.EscapeDataString(number)}");
            if ((await says.PartsOfAsync(number)).IsCancelled)
                walk.LeaveOut($"/jobs/{Uri.EscapeDataString(number)}/site-pack");
        }
        foreach (var address in Addresses(shop.Said(release)))
            walk.Add(address);
        var wrong = await walk.ToTheEndAsync();
        AssertNone(wrong.Select(found => found.Split(": ")[0]).Except(Broken(shop.Said(release))));
        if (!MuseumShop.ReleasesOnServer.Contains(release))
            return; // A shop of random jobs need not lead everywhere.
        var met = site.Routes.Where(IsRead).Where(route => walk.Seen.Any(seen => Matches(route, seen))).Select(NameOf).ToHashSet();
        AssertNone(site.Routes.Where(IsRead).Select(NameOf).Where(name => !name.StartsWith("api/", StringComparison.Ordinal)).Except(met).Except(NotOfTheShop));
    }

    /// <summary>A piece or post that a change took out is shown as it was made, with every figure that its page had before the change.</summary>
    [Theory]
    [MemberData(nameof(Releases))]
    public async Task What_a_change_took_out_is_shown_with_the_figures_that_it_had(string release)
    {
        using var shop = MuseumShop.InFile(release);
        await using var site = await MuseumSite.StartAsync(shop.Place, shop.Clock);
        var (says, said) = (new ShopSays(site, []), shop.Said(release));
        var inPart = InPart(said);
        var wrong = new List<string>();
        foreach (var (address, lines) in ShopSays.Parts(await File.ReadAllTextAsync(Path.Combine(said, "gone.txt"), Cancel)))
        {
            using var answer = await site.AskAsync(address);
            if (answer.StatusCode != HttpStatusCode.OK)
            {
                wrong.Add($"{address}: {(int)answer.StatusCode}");
                continue;
            }
            var now = FiguresOf(await says.OfPageAsync(address, MarksEverOf(Only(lines, "job: ").Single(), said)));
            var promised = inPart.Contains(address) ? KeptInPart(address, said) : FiguresOf(Promised(address, [.. Promised(lines)]));
            wrong.AddRange(promised.Except(now).Select(figure => $"{address}: {figure} is no longer there"));
        }
        AssertNone(wrong);
    }

    /// <summary>Addresses of what the release itself had kept in part only.</summary>
    private static HashSet<string> InPart(string said)
    {
        var file = Path.Combine(said, "kept-in-part.txt");
        return File.Exists(file) ? [.. File.ReadLines(file).Where(line => line.StartsWith('/'))] : [];
    }

    /// <summary>Bit, height and depth of each drilling of a post as the release stored them; of a piece, its cut length.</summary>
    private static IEnumerable<string> KeptInPart(string address, string said)
    {
        var words = Uri.UnescapeDataString(address).Split('/');
        if (words[1] == "cut")
        {
            return File.ReadLines(Path.Combine(said, "pieces.csv")).Select(line => line.Split(','))
                .Where(row => row.Contains(words[2])).Select(row => InInches(row[^4]));
        }
        return File.ReadLines(Path.Combine(said, "bores.csv"))
            .Where(line => line.StartsWith($"{words[2]},{words[3]},", StringComparison.Ordinal) || line.StartsWith($"{words[2]},\"{words[3]} (out, ", StringComparison.Ordinal)
                || line.StartsWith($"{words[2]},\"{words[3]}\",", StringComparison.Ordinal))
            .SelectMany(line => line.Split(',') is var row ? (string[])[row[^5], row[^4], row[^1]] : [])
            .Select(InInches);
    }

    private static string InInches(string nanometres) =>
        LengthText.Inches(Length.FromNanometres(long.Parse(nanometres, CultureInfo.InvariantCulture))).Replace(" in", "\"", StringComparison.Ordinal);

    /// <summary>What the page said, without the day and without coil and tape marks: those are the plan's, and a piece that is out may have none.</summary>
    private static IEnumerable<string> Promised(IReadOnlyList<string> lines)
    {
        var bench = Only(lines, "bench: ").ToList();
        var onPaper = Only(lines, "paper: ").SelectMany(BeforeTheCoil).ToHashSet();
        return bench.SelectMany(BeforeTheCoil).Concat(bench.SelectMany(Split).Where(onPaper.Contains)).Where(figure => !Day().IsMatch(figure));
    }

    private static IEnumerable<string> BeforeTheCoil(string line) => Split(line).TakeWhile(figure => !Coil().IsMatch(figure));

    /// <summary>Marks of all posts and runs that a job ever had.</summary>
    private static IEnumerable<string> MarksEverOf(string number, string said) => new[] { "posts.csv", "pieces.csv" }
        .SelectMany(sheet => File.ReadLines(Path.Combine(said, sheet)))
        .Where(line => line.StartsWith($"{number},", StringComparison.Ordinal))
        .Select(line => line[(number.Length + 1)..].Trim('"').Split(" (out, ")[0].Split(',')[0]);

    [GeneratedRegex(@"^K\d{4}$", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Coil();

    [GeneratedRegex(@"^\d{4}-\d\d-\d\d$", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Day();

    [Theory]
    [MemberData(nameof(Releases))]
    public async Task What_the_release_could_not_draw_is_drawn(string release)
    {
        using var shop = MuseumShop.InFile(release);
        await using var site = await MuseumSite.StartAsync(shop.Place, shop.Clock);
        foreach (var address in Broken(shop.Said(release)))
        {
            const string Pack = "/site-pack/pack.pdf";
            var to = address;
            if (address.EndsWith(Pack, StringComparison.Ordinal))
            {
                using var pack = await site.AskAsync(address[..^"/pack.pdf".Length]);
                to = $"{pack.Headers.Location!.OriginalString}/pack.pdf";
            }
            using var answer = await site.AskAsync(to);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        }
    }

    /// <summary>What the release itself could not show.</summary>
    private static string[] Broken(string said) => File.Exists(Path.Combine(said, "broken.txt")) ? File.ReadAllLines(Path.Combine(said, "broken.txt")) : [];

    private static IEnumerable<string> Only(IEnumerable<string> lines, string start) =>
        lines.Where(line => line.StartsWith(start, StringComparison.Ordinal)).Select(line => line[start.Length..]);

    /// <summary>All that is wrong, not only the first few.</summary>
    private static void AssertNone(IEnumerable<string> wrong)
    {
        var lines = string.Join('\n', wrong);
        Assert.True(lines.Length == 0, lines);
    }

    private static async Task<IReadOnlyList<string>> DifferencesAsync(MuseumShop shop, string said)
    {
        await using var site = await MuseumSite.StartAsync(shop.Place, shop.Clock);
        var views = File.ReadLines(Path.Combine(said, "views.txt")).Select(line => line.Split(' ', 2)).Select(view => (view[0], view[1])).ToList();
        var says = new ShopSays(site, views);
        var differences = new List<string>();
        var numbers = await says.JobsAsync();
        differences.AddRange(Directory.EnumerateDirectories(said).Select(folder => Path.GetFileName(folder)).Except(numbers.Select(Uri.EscapeDataString)).Select(number => $"{number}: the job is not there"));
        foreach (var number in numbers)
        {
            foreach (var (file, now) in await says.OfJobAsync(number))
            {
                var then = await File.ReadAllTextAsync(Path.Combine(said, Uri.EscapeDataString(number), file), Cancel);
                differences.AddRange(file == ShopSays.FiguresFile
                    ? Differences(ShopSays.Parts(then), ShopSays.Parts(now), new NewFigures(then, new JobShelf(site.Database).Find(number)!.Takeoff))
                    : now == then || (Path.GetExtension(file) == ".csv" && HasColumnsBehind(then, now)) || (Path.GetExtension(file) == ".json" && IsToldAsBefore(JsonNode.Parse(then), JsonNode.Parse(now))) ? [] : [$"{number}/{file}: {FirstDifference(then, now)}"]);
            }
        }
        var ofTheShop = ShopSays.Parts(await File.ReadAllTextAsync(Path.Combine(said, "shop.txt"), Cancel));
        differences.AddRange(Differences(ofTheShop, ShopSays.Parts(await says.OfTheShopAsync(ofTheShop.Keys)), named: null));
        return differences;
    }

    /// <summary>True where each row is as it was, with columns behind its last one.</summary>
    private static bool HasColumnsBehind(string then, string now)
    {
        var (was, lines) = (then.Split('\n'), now.Split('\n'));
        return was.Length == lines.Length && was.Zip(lines).All(row => row.First == row.Second || row.Second.StartsWith(row.First.TrimEnd('\r') + ",", StringComparison.Ordinal));
    }

    /// <summary>
    /// Each part has the figures that it had; the figures of a row are still in one row together. A figure that the release said nowhere of the
    /// job is new, and is named where pages of jobs may have it; the shop's own pages may say more.
    /// </summary>
    private static IEnumerable<string> Differences(
        IReadOnlyDictionary<string, IReadOnlyList<string>> then, IReadOnlyDictionary<string, IReadOnlyList<string>> now, NewFigures? named)
    {
        foreach (var (name, said) in then)
        {
            if (!now.TryGetValue(name, out var says))
            {
                yield return $"{name}: is not there";
                continue;
            }
            var (was, lines) = (Promised(name, AtBench(name, said)), AtBench(name, says));
            var less = FiguresOf(was).Except(FiguresOf(lines)).ToList();
            if (less.Count > 0)
                yield return $"{name}: no longer there: {string.Join(", ", less)}";
            if (named is not null && FiguresOf(lines).Where(figure => !named.IsKnown(name, figure)).ToList() is { Count: > 0 } more)
                yield return $"{name}: new and not named: {string.Join(", ", more)}";
            var rows = lines.Select(Counted).ToList();
            foreach (var row in Rows(name, was).Where(row => !row.StartsWith(Drawn, StringComparison.Ordinal)))
            {
                if (!rows.Any(other => Counted(row).All(figure => other.GetValueOrDefault(figure.Key) >= figure.Value)))
                    yield return $"{name}: no longer together: {row}";
            }
        }
    }

    /// <summary>
    /// What a page at a bench must go on saying: of a cut, all but the place on the coil, which is the plan's and is for the paper; of a post,
    /// each figure in the unit that leads there. The pages of a piece and of its line are drawn for a phone since, the piece's own spans alone and in
    /// letters that can be read: they must say what stood beside the drawings.
    /// </summary>
    private static List<string> Promised(string name, List<string> lines) => name switch
    {
        _ when name.StartsWith("/cut/", StringComparison.Ordinal) => [.. lines.Select(line => string.Join("; ", BeforeTheCoil(line))).Where(line => line.Length > 0)],
        _ when name.StartsWith("/drill/", StringComparison.Ordinal) =>
            [.. lines.Select(line => string.Join("; ", Split(line).Where(figure => !figure.EndsWith(" mm", StringComparison.Ordinal)))).Where(line => line.Length > 0)],
        _ when name.StartsWith("/p/", StringComparison.Ordinal) => [.. lines.Where(line => !line.StartsWith(Drawn, StringComparison.Ordinal))],
        _ => lines,
    };

    /// <summary>The rows that stay together: at the drill bench, all but the head, which showed the first step too; at the desk's form none, since what few need is folded away.</summary>
    private static IEnumerable<string> Rows(string name, List<string> lines) =>
        name.StartsWith("/drill/", StringComparison.Ordinal) ? lines.Skip(1) : name.StartsWith("/drafts/", StringComparison.Ordinal) ? [] : lines;

    /// <summary>Who has a ticket at a bench and reads millimetres reads whole ones since.</summary>
    private static List<string> AtBench(string name, IReadOnlyList<string> lines) => name.Contains(" as ", StringComparison.Ordinal)
        ? [.. lines.Select(line => Tenths().Replace(line, found => $"{decimal.Round(decimal.Parse(found.Groups["mm"].Value, CultureInfo.InvariantCulture), MidpointRounding.AwayFromZero)} mm"))]
        : [.. lines];

    [GeneratedRegex(@"≈?(?<mm>\d+(\.\d+)?) mm", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Tenths();

    private const string Drawn = "drawn: ";

    private static HashSet<string> FiguresOf(IEnumerable<string> lines) => [.. lines.SelectMany(Split)];

    private static Dictionary<string, int> Counted(string line) => Split(line).CountBy(figure => figure).ToDictionary();

    private static string[] Split(string line) => (line.StartsWith(Drawn, StringComparison.Ordinal) ? line[Drawn.Length..] : line).Split("; ");

    /// <summary>True where everything that a program was told then it is told now; of a job it may be told more.</summary>
    private static bool IsToldAsBefore(JsonNode? then, JsonNode? now) => (then, now) switch
    {
        (JsonObject was, JsonObject tells) => was.All(field => tells.TryGetPropertyValue(field.Key, out var value) && IsToldAsBefore(field.Value, value)),
        (JsonArray was, JsonArray tells) => was.Count == tells.Count && was.Zip(tells).All(pair => IsToldAsBefore(pair.First, pair.Second)),
        _ => JsonNode.DeepEquals(then, now),
    };

    private static string FirstDifference(string then, string now)
    {
        var at = then.Zip(now).TakeWhile(pair => pair.First == pair.Second).Count();
        var from = Math.Max(0, at - 60);
        return $"at {at} was …{then[from..Math.Min(then.Length, at + 60)]}… and is …{now[from..Math.Min(now.Length, at + 60)]}…";
    }

    /// <summary>The addresses of all pages that figures are kept of.</summary>
    private static IEnumerable<string> Addresses(string said) => Directory.EnumerateFiles(said, ShopSays.FiguresFile, SearchOption.AllDirectories).Append(Path.Combine(said, "shop.txt"))
        .SelectMany(file => ShopSays.Parts(File.ReadAllText(file)).Keys).Where(name => name.StartsWith('/')).Select(name => name.Split(' ')[0]).Distinct();

    private static bool IsRead(RouteEndpoint route) =>
        route.Metadata.GetMetadata<IHttpMethodMetadata>() is not { } methods || methods.HttpMethods.Contains("GET");

    private static string NameOf(RouteEndpoint route) => route.RoutePattern.RawText?.TrimStart('/') ?? "";

    private static bool Matches(RouteEndpoint route, string address)
    {
        var name = Place().Replace(NameOf(route), place => place.Value.EndsWith("?}", StringComparison.Ordinal) ? "\u0001" : "\u0002");
        var pattern = Regex.Escape(name).Replace("/\u0001", "(/[^/]+)?", StringComparison.Ordinal).Replace("\u0002", "[^/]+", StringComparison.Ordinal);
        return Regex.IsMatch(address.TrimStart('/'), $"^{pattern}$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1));
    }

    [GeneratedRegex(@"\{[^/]*?\}(?=$|[/.])", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Place();

    /// <summary>Goes through the site by its links, each address once, as the owner.</summary>
    private sealed partial class Walk(MuseumSite site)
    {
        private readonly Queue<string> _next = new(["/"]);
        private readonly Dictionary<string, string> _packs = [];

        public HashSet<string> Seen { get; } = ["/"];

        public void Add(string address)
        {
            // A form's page with what was typed in it is the same page; leaving or changing the language is no page.
            var path = WebUtility.HtmlDecode(address).Split('#', '?')[0];
            if (path is ['/', not '/', ..] && !path.StartsWith("/sign-out", StringComparison.Ordinal) && !path.StartsWith("/language/", StringComparison.Ordinal)
                && path != "/board/news" && Seen.Add(path))
                _next.Enqueue(path);
        }

        public void LeaveOut(string address) => Seen.Add(address);

        /// <summary>Every address that does not answer as it should. A site pack's own code is new each time, so that its files go by their job.</summary>
        public async Task<IReadOnlyList<string>> ToTheEndAsync()
        {
            var wrong = new List<string>();
            while (_next.TryDequeue(out var address))
            {
                using var answer = await site.AskAsync(address);
                var bytes = await answer.Content.ReadAsByteArrayAsync(Cancel);
                if (answer.Headers.Location is { } place)
                {
                    if (address.EndsWith("/site-pack", StringComparison.Ordinal))
                    {
                        _packs[place.OriginalString] = address;
                        Add($"{place.OriginalString}/pages");
                        Add($"{place.OriginalString}/codes");
                    }
                    Add(place.OriginalString);
                }
                else if (answer.StatusCode != HttpStatusCode.OK)
                {
                    var pack = _packs.Keys.FirstOrDefault(code => address.StartsWith($"{code}/", StringComparison.Ordinal));
                    wrong.Add($"{(pack is null ? address : _packs[pack] + address[pack.Length..])}: {(int)answer.StatusCode}");
                }
                else if (address.EndsWith(".pdf", StringComparison.Ordinal) && !bytes.AsSpan().StartsWith("%PDF"u8))
                    wrong.Add($"{address}: is no PDF");
                else if (answer.Content.Headers.ContentType?.MediaType == "text/html" && !address.EndsWith("pack.html", StringComparison.Ordinal))
                    AddLinks(System.Text.Encoding.UTF8.GetString(bytes));
            }
            return wrong;
        }

        private void AddLinks(string page)
        {
            foreach (Match link in Link().Matches(page))
                Add(link.Groups["to"].Value);
        }

        [GeneratedRegex("(?:href|src)=\"(?<to>/[^\"]*)\"", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 10_000)]
        private static partial Regex Link();
    }
}
