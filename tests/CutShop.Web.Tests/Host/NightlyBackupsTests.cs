using Microsoft.Extensions.Time.Testing;

namespace CutShop.Web.Tests.Host;

/// <summary>The server makes a backup a day by itself.</summary>
public sealed class NightlyBackupsTests
{
    [Fact]
    public async Task A_server_that_runs_on_makes_a_backup_a_day_and_keeps_them_by_rule()
    {
        var folder = Directory.CreateTempSubdirectory("cutshop-nightly-").FullName;
        var time = new FakeTimeProvider(new DateTimeOffset(2027, 2, 1, 17, 0, 0, TimeSpan.Zero));
        using (var database = ShopDatabase.Open(ShopFolder.DatabaseIn(folder), time))
        {
            var backups = new ShopBackups(database.Path, ShopFolder.BackupsIn(folder), time);
            var settings = new ShopSiteSettings(database, ShopTables.Standard, PaperSettings.Default, new Uri("https://shop.example"))
            {
                Nightly = new NightlySettings(ShopFolder.BackupsIn(folder), new BackupTime(new(2, 30)), new KeepRule(2, 0, 0)),
            };
            await using var site = ShopSite.Build(settings, "http://127.0.0.1:0");
            await site.StartAsync(TestContext.Current.CancellationToken);

            // The machine was off in the night before.
            await UntilAsync(time, () => backups.All is [{ MadeAt.Day: 1 }]);
            time.Advance(TimeSpan.FromHours(9));
            await UntilAsync(time, () => time.GetUtcNow() > new DateTimeOffset(2027, 2, 2, 2, 20, 0, TimeSpan.Zero));
            Assert.Single(backups.All);
            await UntilAsync(time, () => backups.All is [{ MadeAt: { Day: 2, Hour: 2 } }, { MadeAt.Day: 1 }]);
            time.Advance(TimeSpan.FromDays(1));
            await UntilAsync(time, () => backups.All is [{ MadeAt.Day: 3 }, { MadeAt.Day: 2 }]);
        }
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>Lets minutes of the shop's clock pass until something holds.</summary>
    private static async Task UntilAsync(FakeTimeProvider time, Func<bool> holds)
    {
        while (!holds())
        {
            await Task.Delay(TimeSpan.FromMilliseconds(10), TestContext.Current.CancellationToken);
            time.Advance(TimeSpan.FromMinutes(1));
        }
    }
}
