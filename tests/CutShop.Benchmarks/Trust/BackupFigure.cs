using System.Globalization;
using CutShop.Testing.Trust;

namespace CutShop.Benchmarks.Trust;

/// <summary>Backups are made, checked and restored while writers go on.</summary>
internal static class BackupFigure
{
    private const int Backups = 20;
    private const int Writers = 4;

    public static async Task<TrustRow> OfAsync()
    {
        using var shop = await FaultShop.MakeAsync();
        var folder = Path.GetDirectoryName(shop.Database.Path)!;
        using var stop = new CancellationTokenSource();
        var writes = 0L;
        var load = Enumerable.Range(0, Writers).Select(writer => Task.Run(async () =>
        {
            for (var i = 0; !stop.IsCancellationRequested; i++)
            {
                await shop.Stock.AdjustAsync("K0001", Length.Foot * 40 - Length.FromNanometres(i), "counted", $"writer {writer}", $"{writer} {i}");
                Interlocked.Increment(ref writes);
            }
        })).ToList();

        var harm = new List<string>();
        for (var i = 0; i < Backups; i++)
        {
            await Task.Delay(100);
            var acknowledged = Lines(shop);
            var backup = new ShopBackups(shop.Database.Path, ShopFolder.BackupsIn(folder), TimeProvider.System).Make(keep: null);
            harm.AddRange(backup.Findings.Select(finding => $"backup {i}: {finding}"));
            var restored = new ShopRestore(folder, TimeProvider.System).Restore(backup.File.Path, force: false);
            if (restored.Problem is { } problem)
                harm.Add($"restore {i}: {problem}");
            else if (restored.Backup!.Lines < acknowledged)
                harm.Add($"backup {i}: {acknowledged - restored.Backup.Lines} lines that were acknowledged before are not in it");
        }
        await stop.CancelAsync();
        await Task.WhenAll(load);
        harm.AddRange(ShopCheck.OfFile(shop.Database.Path, TimeProvider.System).Select(finding => finding.ToString()));
        return new(
            "backups made, checked and restored under load",
            string.Create(CultureInfo.InvariantCulture, $"{Backups} backups, {Backups} restores; {Writers} writers with {writes} writes meanwhile"),
            harm.Count,
            harm);
    }

    private static long Lines(FaultShop shop) => shop.Database.Read(session => session.Value<long>("SELECT count(*) FROM history"));
}
