using CutShop.Testing.Trust;
using Microsoft.Extensions.Time.Testing;

namespace CutShop.Shop.Tests.Maintenance;

public sealed class ShopBackupsTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_backup_is_the_shop_as_it_was_in_one_file()
    {
        using var shop = await FaultShop.MakeAsync();
        var answer = Backups(shop).Make(KeepRule.Default);
        Assert.Empty(answer.Findings);
        Assert.Equal(ShopDigest.Of(shop.Database.Path), ShopDigest.Of(answer.File.Path));
        Assert.Equal([answer.File.Path], Directory.EnumerateFiles(BackupFolder(shop)));
        Assert.Equal(answer.File.Path, Assert.Single(Backups(shop).All).Path);
    }

    [Fact]
    public async Task A_backup_made_under_load_is_sound_has_all_that_was_acknowledged_before_and_restores()
    {
        using var shop = await FaultShop.MakeAsync();
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(Cancel);
        var written = 0;
        var load = Enumerable.Range(0, 4).Select(writer => Task.Run(async () =>
        {
            for (var i = 0; !stop.IsCancellationRequested; i++)
            {
                var length = Length.Foot * 40 - Length.FromNanometres(i);
                Assert.True((await shop.Stock.AdjustAsync("K0001", length, "counted", $"writer {writer}", $"{writer} {i}", CancellationToken.None)).IsDone);
                Interlocked.Increment(ref written);
            }
        }, Cancel)).ToList();

        var restore = new ShopRestore(Folder(shop), TimeProvider.System);
        for (var i = 0; i < 5; i++)
        {
            await UntilAsync(() => Volatile.Read(ref written) > (i + 1) * 50);
            var before = Lines(shop);
            var backup = Backups(shop).Make(keep: null);
            Assert.Empty(backup.Findings);
            var answer = restore.Restore(backup.File.Path, force: false);
            Assert.Null(answer.Problem);
            Assert.True(answer.Backup!.Lines >= before);
            Assert.Empty(ShopCheck.OfFile(shop.Database.Path, TimeProvider.System));
        }
        await stop.CancelAsync();
        await Task.WhenAll(load);
        Assert.Empty(ShopCheck.OfFile(shop.Database.Path, TimeProvider.System));
    }

    [Fact]
    public async Task Restoring_gives_the_shop_of_the_backup_and_keeps_what_was_there()
    {
        using var shop = await FaultShop.MakeAsync();
        var backup = Backups(shop).Make(keep: null).File.Path;
        var then = ShopDigest.Of(shop.Database.Path);
        await shop.FinishCutAsync();
        var now = ShopDigest.Of(shop.Database.Path);
        var restore = new ShopRestore(Folder(shop), new FakeTimeProvider(DateTimeOffset.UtcNow.AddMinutes(1)));

        var look = restore.Look(backup, force: false);
        Assert.True(look.IsGood);
        Assert.True(look.Present!.Lines > look.Backup!.Lines);
        Assert.Equal(now, ShopDigest.Of(shop.Database.Path));
        Assert.Single(Backups(shop).All);

        var answer = restore.Restore(backup, force: false);
        Assert.True(answer.IsGood);
        Assert.Equal(then, ShopDigest.Of(shop.Database.Path));
        Assert.Equal(now, ShopDigest.Of(answer.Aside!));
        Assert.True((await shop.Cut.RecordCutAsync(shop.Code, "Cai", "after the restore", Cancel)).IsDone);
        Assert.Empty(ShopCheck.Of(new ShopPlace(Folder(shop)), TimeProvider.System));
    }

    [Fact]
    public async Task A_damaged_database_is_replaced_once_no_server_runs_on_it()
    {
        using var shop = await BrokenShop.MakeAsync();
        var folder = shop.Folder;
        var backup = new ShopBackups(shop.Path, ShopFolder.BackupsIn(folder), TimeProvider.System).Make(keep: null).File.Path;
        await File.WriteAllTextAsync(shop.OnePiece(), string.Concat(Enumerable.Repeat("not a database at all. ", 200)), Cancel);
        var restore = new ShopRestore(folder, TimeProvider.System);

        using (ShopInUse.Share(folder))
            Assert.Contains("Stop the server", restore.Restore(backup, force: false).Problem, StringComparison.Ordinal);
        Assert.NotEmpty(shop.Findings());
        var answer = restore.Restore(backup, force: false);
        Assert.True(answer.IsGood);
        Assert.True(File.Exists(answer.Aside));
        Assert.Empty(shop.Findings());
    }

    [Fact]
    public async Task What_is_off_is_said_kept_apart_and_not_restored_unasked()
    {
        using var shop = await BrokenShop.MakeAsync();
        var backups = new ShopBackups(shop.Path, ShopFolder.BackupsIn(shop.Folder), TimeProvider.System);
        var good = backups.Make(new KeepRule(0, 0, 0)).File;
        shop.Break("DELETE FROM rope_uses WHERE kind = 'kerf'");
        var answer = backups.Make(new KeepRule(0, 0, 0));
        Assert.False(answer.File.IsSound);
        Assert.EndsWith(".off.db", answer.File.Path, StringComparison.Ordinal);
        Assert.NotEmpty(answer.Findings);
        Assert.True(File.Exists(good.Path));

        var restore = new ShopRestore(shop.Folder, TimeProvider.System);
        Assert.Contains("There are errors in", restore.Restore(answer.File.Path, force: false).Problem, StringComparison.Ordinal);
        Assert.True(restore.Restore(answer.File.Path, force: true).IsGood);
    }

    [Fact]
    public async Task What_is_no_backup_is_refused_and_the_shop_stays()
    {
        using var shop = await FaultShop.MakeAsync();
        var now = ShopDigest.Of(shop.Database.Path);
        var file = Path.Combine(Folder(shop), "letter.db");
        await File.WriteAllTextAsync(file, string.Concat(Enumerable.Repeat("not a database at all. ", 200)), Cancel);
        var restore = new ShopRestore(Folder(shop), TimeProvider.System);
        Assert.Contains("cannot be restored", restore.Restore(file, force: true).Problem, StringComparison.Ordinal);
        Assert.Contains("There is no database at", restore.Restore(file + "x", force: true).Problem, StringComparison.Ordinal);
        Assert.Equal(now, ShopDigest.Of(shop.Database.Path));
    }

    [Fact]
    public async Task A_backup_of_an_older_program_is_checked_and_restored_brought_up_to_date()
    {
        using var shop = await FaultShop.MakeAsync();
        var old = Path.Combine(Folder(shop), "old.db");
        using (var file = MaintainedFile.Create(old, TimeProvider.System))
            SqliteMigrations.Apply(file.Connection, upTo: 4);
        var backups = new ShopBackups(old, BackupFolder(shop), TimeProvider.System);
        var answer = backups.Make(keep: null);
        Assert.Empty(answer.Findings);
        Assert.True(new ShopRestore(Folder(shop), new FakeTimeProvider(DateTimeOffset.UtcNow.AddMinutes(1))).Restore(answer.File.Path, force: false).IsGood);
        Assert.Empty(ShopCheck.OfFile(shop.Database.Path, TimeProvider.System));
    }

    [Fact]
    public async Task Older_backups_go_by_the_rule_and_other_files_stay()
    {
        using var shop = await FaultShop.MakeAsync();
        Directory.CreateDirectory(BackupFolder(shop));
        var letter = Path.Combine(BackupFolder(shop), "cutshop-from-the-old-machine.db");
        await File.WriteAllTextAsync(letter, "", Cancel);
        var time = new FakeTimeProvider(new DateTimeOffset(2027, 2, 1, 2, 30, 0, TimeSpan.Zero));
        var backups = new ShopBackups(shop.Database.Path, BackupFolder(shop), time);
        for (var day = 0; day < 4; day++)
        {
            Assert.Equal(day < 2 ? 0 : 1, backups.Make(new KeepRule(2, 0, 0)).Removed.Count);
            time.Advance(TimeSpan.FromDays(1));
        }
        Assert.Equal([4, 3], backups.All.Select(backup => backup.MadeAt.Day));
        Assert.True(File.Exists(letter));
    }

    [Fact]
    public async Task Half_a_backup_of_a_program_that_was_killed_goes_with_a_later_one()
    {
        using var shop = await FaultShop.MakeAsync();
        Directory.CreateDirectory(BackupFolder(shop));
        var half = Path.Combine(BackupFolder(shop), "cutshop-20270201T023000Z.db.part");
        await File.WriteAllTextAsync(half, "", Cancel);
        Backups(shop).Make(keep: null);
        Assert.True(File.Exists(half));
        new ShopBackups(shop.Database.Path, BackupFolder(shop), new FakeTimeProvider(DateTimeOffset.UtcNow.AddDays(2))).Make(keep: null);
        Assert.False(File.Exists(half));
    }

    private static string Folder(FaultShop shop) => Path.GetDirectoryName(shop.Database.Path)!;

    private static string BackupFolder(FaultShop shop) => ShopFolder.BackupsIn(Folder(shop));

    private static ShopBackups Backups(FaultShop shop) => new(shop.Database.Path, BackupFolder(shop), TimeProvider.System);

    private static long Lines(FaultShop shop) => shop.Database.Read(session => session.Value<long>("SELECT count(*) FROM history"));

    private static async Task UntilAsync(Func<bool> holds)
    {
        while (!holds())
            await Task.Delay(TimeSpan.FromMilliseconds(2), Cancel);
    }
}
