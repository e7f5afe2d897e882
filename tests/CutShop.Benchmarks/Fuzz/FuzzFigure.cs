using System.Collections.Concurrent;
using System.Globalization;
using System.Net.Http.Headers;
using CutShop.Benchmarks.Trust;
using CutShop.Testing.Fuzz;
using CutShop.Testing.Stores;

namespace CutShop.Benchmarks.Fuzz;

/// <summary>Broken lengths, codes, job files, sheets, photos and forms: none may crash the program, and none may cost more than its size.</summary>
internal static class FuzzFigure
{
    private const int TimesAForm = 25;
    private const int MostHarmTold = 20;

    public static async Task<TrustRow> OfAsync(TrustDose dose)
    {
        var seed = Environment.TickCount;
        var harm = new ConcurrentBag<string>();
        Each("lengths", dose.Lengths, seed, harm, at => Harm.OfLength(LengthStrings.Make(at)));
        Each("codes", dose.Lengths, seed, harm, at =>
        {
            var (meant, typed) = CodeStrings.Make(at);
            return Harm.OfCode(meant, typed);
        });
        var files = new JobFileMutations([.. FuzzSite.DemoFiles.Select(File.ReadAllBytes)]);
        Each("job files", dose.Files, seed, harm, at => Harm.OfJobFile(files.Make(at)));

        await using var site = await FuzzSite.StartAsync(dose.IsOnServer ? PostgresServer.NewDatabase() : null);
        foreach (var slow in CostGrowth.Measure(site))
            harm.Add(slow);
        var sheets = dose.Files / 10;
        for (var i = 0; i < sheets; i++)
            await SendSheetAsync(site, unchecked(seed + i), harm);
        var photos = dose.Files / 10;
        for (var i = 0; i < photos; i++)
            await SendPhotoAsync(site, unchecked(seed + i), harm);
        var forms = new FormFuzz(site.Owner, seed);
        await forms.RunAsync(TimesAForm, CancellationToken.None);
        foreach (var crash in forms.Found)
            harm.Add(crash);
        return new(
            $"broken input: lengths, codes of pieces, job files, sheets, photos, forms of every page{(dose.IsOnServer ? ", the database on a server" : "")}",
            string.Create(
                CultureInfo.InvariantCulture,
                $"{dose.Lengths} lengths; {dose.Lengths} codes; {dose.Files} job files; {sheets} sheets; {photos} photos; {forms.Sent} forms of {forms.Pages} pages; no crash; {CostGrowth.Larger} times the size costs less than {CostGrowth.Most:0} times; seed {seed}"),
            harm.Count,
            [.. harm.Take(MostHarmTold)]);
    }

    private static void Each(string what, int count, int seed, ConcurrentBag<string> harm, Func<int, string?> harmOf)
    {
        Parallel.For(0, count, i =>
        {
            var at = unchecked(seed + i);
            if (harmOf(at) is { } done)
                harm.Add($"{what}, seed {at}: {done}");
        });
        Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} {what} tried"));
    }

    private static async Task SendSheetAsync(FuzzSite site, int seed, ConcurrentBag<string> harm)
    {
        using var sheet = new ByteArrayContent(SheetMutations.Make(seed));
        sheet.Headers.ContentType = new MediaTypeHeaderValue("text/csv");
        using var answer = await site.Program.PostAsync(new Uri("/api/jobs/csv", UriKind.Relative), sheet);
        if ((int)answer.StatusCode >= 500)
            harm.Add($"sheets, seed {seed}: {(int)answer.StatusCode}");
    }

    private static async Task SendPhotoAsync(FuzzSite site, int seed, ConcurrentBag<string> harm)
    {
        using var form = new MultipartFormDataContent
        {
            { new StringContent("damaged"), "kind" },
            { new StringContent(Guid.NewGuid().ToString("N")), "key" },
            { new ByteArrayContent(PhotoMutations.Make(seed)), "photo", "photo.jpg" },
        };
        using var answer = await site.Owner.PostAsync(new Uri($"/p/{site.Codes[(seed & 0xFFFF) % site.Codes.Count]}/report", UriKind.Relative), form);
        if ((int)answer.StatusCode >= 500)
            harm.Add($"photos, seed {seed}: {(int)answer.StatusCode}");
    }
}
