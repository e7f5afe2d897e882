using System.Diagnostics;
using System.Text;
using Microsoft.AspNetCore.Builder;
using static CutShop.Benchmarks.Printed;

namespace CutShop.Benchmarks.OnSite;

/// <summary>What a label's page costs phone and server, and what a site pack of 500 pieces does.</summary>
internal static class SiteBenchmark
{
    private const string Bare = "/bare";
    private const int MostBytesOfAPage = 60_000;
    private const int MostBytesOfAPack = 3_000_000;
    private const double MostTimesBare = 3;
    private const int Rounds = 40;
    private const int CallsARound = 50;

    /// <summary>Measures, prints, and judges.</summary>
    public static int Run()
    {
        var folder = Directory.CreateTempSubdirectory("cutshop-site-bench-").FullName;
        try
        {
            using var database = ShopDatabase.Open(Path.Combine(folder, "cutshop.db"), TimeProvider.System);
            new JobIntake(database, ShopTables.Standard).TakeInAsync(LargeJob.Read(), "benchmark").GetAwaiter().GetResult();
            var site = ShopSite.Build(new(database, ShopTables.Standard, PaperSettings.Default, new Uri("https://shop.example")), "http://127.0.0.1:0");
            site.MapGet(Bare, () => "ok").AllowAnonymous();
            site.StartAsync().GetAwaiter().GetResult();
            try
            {
                return Measure(database, new Uri(site.Urls.First())) ? 0 : 1;
            }
            finally
            {
                site.DisposeAsync().AsTask().GetAwaiter().GetResult();
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static bool Measure(ShopDatabase database, Uri address)
    {
        var jobs = new JobShelf(database);
        var job = jobs.Find(LargeJob.Number)!;
        using var phone = new PhoneOnSite(address, "gzip, br");
        using var plain = new PhoneOnSite(address, "");
        var pack = new SitePackShelf(database).CodeOfAsync(job.Number, "benchmark").GetAwaiter().GetResult()!.Value;
        var piece = $"/p/{job.Codes[0].Plain}";
        return FirstView(phone, plain, piece) & FirstView(phone, plain, piece + "/line") & ServerCost(database, phone, piece) & WholePack(phone, plain, $"/s/{pack.Plain}/pages");
    }

    private static bool FirstView(PhoneOnSite phone, PhoneOnSite plain, string path)
    {
        var html = Encoding.UTF8.GetString(plain.Get(path));
        var loaded = PhoneOnSite.LoadedWith(html);
        var outside = loaded.Count(address => !address.StartsWith('/'));
        var (sent, whole) = (phone.Get(path).Length + loaded.Sum(address => phone.Get(address).Length), html.Length + loaded.Sum(address => plain.Get(address).Length));
        var isLine = path.EndsWith("/line", StringComparison.Ordinal);
        Say($"first view of a {(isLine ? "line" : "piece")}: {sent / 1000.0:0.0} kB sent ({whole / 1000.0:0.0} kB unpacked), of it the page {phone.Get(path).Length / 1000.0:0.0} kB; {loaded.Count} files with it, {outside} from outside");
        return Line($"{(isLine ? "line" : "piece")}, kB sent", sent / 1000.0, MostBytesOfAPage / 1000.0) & outside == 0;
    }

    private static bool ServerCost(ShopDatabase database, PhoneOnSite phone, string path)
    {
        // Something else in the shop changes before each look.
        var round = 0;
        void Change() => database.WriteAsync(session => session.Execute(
            "UPDATE jobs SET taken_in_at = taken_in_at WHERE number = @Number AND @round >= 0", new { LargeJob.Number, round = round++ })).GetAwaiter().GetResult();
        var times = Stopwatches.InTurns(
            Rounds,
            CallsARound,
            () => phone.Get(Bare),
            () => phone.Get(path),
            () =>
            {
                Change();
                phone.Get(path);
            },
            Change);
        var (bare, kept, anew, write) = (times[0].Seconds, times[1].Seconds, times[2].Seconds, times[3].Seconds);
        Say($"one request, median: bare endpoint {bare * 1e6:0} us, piece {kept * 1e6:0} us; piece right after something in the shop changed {(anew - write) * 1e6:0} us ({(anew - write) / bare:0.0} times bare)");
        return Line("piece against the bare endpoint", kept / bare, MostTimesBare);
    }

    private static bool WholePack(PhoneOnSite phone, PhoneOnSite plain, string path)
    {
        phone.Get(path);
        var start = Stopwatch.GetTimestamp();
        var sent = phone.Get(path).Length;
        var seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        Say($"site pack of {LargeJob.Pieces} pieces: {sent / 1e6:0.000} MB sent, {plain.Get(path).Length / 1e6:0.0} MB unpacked, made and sent in {seconds:0.00} s");
        return Line($"site pack of {LargeJob.Pieces} pieces, MB sent", sent / 1e6, MostBytesOfAPack / 1e6);
    }

    private static bool Line(string what, double value, double most)
    {
        Say($"{what}: {value:0.00}, at most {most:0.00}: {(value <= most ? "met" : "NOT met")}");
        return value <= most;
    }
}
