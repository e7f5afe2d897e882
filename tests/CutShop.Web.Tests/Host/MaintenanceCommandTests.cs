using System.Diagnostics;
using System.Runtime.Versioning;
using CutShop.Testing.Museum;
using CutShop.Testing.Stores;
using CutShop.Testing.Trust;

namespace CutShop.Web.Tests.Host;

/// <summary>The commands as a shop types them: what they say and how they exit.</summary>
public sealed class MaintenanceCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("cutshop-care-").FullName;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private string Shop => Path.Combine(_folder, "shop");

    [Fact]
    public async Task A_shop_is_checked_backed_up_restored_exported_and_imported()
    {
        await TakeInAsync();
        Assert.Equal((0, $"{ShopFolder.DatabaseIn(Shop)}: all is well."), await RunAsync("check", "--shop", Shop));
        var (exit, backup) = await RunAsync("backup", "--shop", Shop);
        Assert.Equal(0, exit);

        await ExecuteAsync("UPDATE pieces SET cut_nm = cut_nm + 1 WHERE id = 1");
        (exit, var said) = await RunAsync("check", "--shop", Shop);
        Assert.Equal(1, exit);
        Assert.Contains("job LQ-1042, piece A-top-1: its row says", said, StringComparison.Ordinal);

        (exit, said) = await RunAsync("restore", backup, "--shop", Shop, "--dry-run");
        Assert.Equal(0, exit);
        Assert.Contains("It can be restored. Nothing was changed.", said, StringComparison.Ordinal);
        Assert.Equal(1, (await RunAsync("check", "--shop", Shop)).Exit);
        Assert.Contains("Restored.", (await RunAsync("restore", backup, "--shop", Shop)).Said, StringComparison.Ordinal);
        Assert.Equal(0, (await RunAsync("check", "--shop", Shop)).Exit);

        var export = Path.Combine(_folder, "export");
        Assert.Equal(0, (await RunAsync("export", "--shop", Shop, "--to", export)).Exit);
        Assert.Equal(0, (await RunAsync("import", "--shop", Path.Combine(_folder, "other"), "--from", export)).Exit);
        Assert.Equal(ShopDigest.Of(ShopFolder.DatabaseIn(Shop)), ShopDigest.Of(ShopFolder.DatabaseIn(Path.Combine(_folder, "other"))));
        Assert.Equal(2, (await RunAsync("import", "--shop", Shop, "--from", export)).Exit);
    }

    [Fact]
    public async Task A_shop_of_an_older_program_is_rehearsed_and_then_upgraded_with_a_copy_kept()
    {
        using var museum = MuseumShop.InFile(MuseumShop.Releases[^1]);
        string[] place = ["--shop", museum.Place.Folder];
        var before = await File.ReadAllBytesAsync(museum.Place.DatabaseFile, Cancel);
        var (exit, said) = await RunAsync(["upgrade", "--rehearse", .. place]);
        Assert.Equal(0, exit);
        Assert.Contains("Rehearsed on a copy, from migration 11 to ", said, StringComparison.Ordinal);
        Assert.Contains(" would be different under this program's rules.", said, StringComparison.Ordinal);
        Assert.Equal(before, await File.ReadAllBytesAsync(museum.Place.DatabaseFile, Cancel));

        (exit, said) = await RunAsync(["upgrade", .. place]);
        Assert.Equal(0, exit);
        Assert.Contains("As it was before: ", said, StringComparison.Ordinal);
        Assert.Single(Directory.GetFiles(ShopFolder.BackupsIn(museum.Place.Folder), "cutshop-*.db"));
        Assert.EndsWith("is up to date.", (await RunAsync(["upgrade", .. place])).Said, StringComparison.Ordinal);
        Assert.Equal(0, (await RunAsync(["check", .. place])).Exit);
        Assert.Equal(1, (await RunAsync("upgrade", "--shop", Path.Combine(_folder, "nowhere"))).Exit);
    }

    [Fact]
    public async Task A_shop_of_an_older_program_on_a_server_is_kept_as_an_export_before_it_is_upgraded()
    {
        using var museum = MuseumShop.OnServer(MuseumShop.ReleasesOnServer[^1]);
        string[] place = ["--shop", museum.Place.Folder, "--database", museum.Connection];
        Assert.Contains("Rehearsed on a copy, from migration 11 to ", (await RunAsync(["upgrade", "--rehearse", .. place])).Said, StringComparison.Ordinal);
        var (exit, said) = await RunAsync(["upgrade", .. place]);
        Assert.Equal(0, exit);
        Assert.Contains("before-upgrade-", said, StringComparison.Ordinal);
        var kept = Assert.Single(Directory.GetDirectories(ShopFolder.BackupsIn(museum.Place.Folder), "before-upgrade-*"));
        Assert.Equal(0, (await RunAsync("import", "--from", kept, "--shop", Path.Combine(_folder, "again"))).Exit);
    }

    [Fact]
    public async Task Jobs_that_todays_rules_make_different_are_listed_and_the_shop_is_well()
    {
        await TakeInAsync();
        using (var database = ShopDatabase.Open(ShopFolder.DatabaseIn(Shop), TimeProvider.System))
            await OtherRules.MakeAsync(database, "LQ-1042", Cancel);
        var (exit, said) = await RunAsync("check", "--rules", "--shop", Shop);
        Assert.Equal(0, exit);
        Assert.Contains("1 open job would be different under this program's rules.", said, StringComparison.Ordinal);
        Assert.Contains("LQ-1042: pieces 9, posts", said, StringComparison.Ordinal);
    }

    /// <summary>The tool that the system brings: 3.40 on Debian 12.</summary>
    [Fact]
    public async Task The_systems_own_tool_opens_the_shops_file()
    {
        await TakeInAsync();
        var start = new ProcessStartInfo("sqlite3", [ShopFolder.DatabaseIn(Shop), "PRAGMA integrity_check; SELECT count(*) FROM post_likeness; SELECT number FROM jobs;"])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var process = Process.Start(start)!;
        var (output, error) = (process.StandardOutput.ReadToEndAsync(Cancel), process.StandardError.ReadToEndAsync(Cancel));
        await process.WaitForExitAsync(Cancel);
        Assert.Equal(("ok\n9\nLQ-1042\n", ""), (await output, await error));
    }

    [Fact]
    public async Task A_shop_moves_to_a_server_is_checked_there_and_goes_on()
    {
        await TakeInAsync();
        using var store = TestStore.OnServer();
        string[] place = ["--shop", store.Folder, "--database", store.Connection];
        var (export, back) = (Path.Combine(_folder, "export"), Path.Combine(_folder, "back"));
        Assert.Equal(0, (await RunAsync("export", "--shop", Shop, "--to", export)).Exit);
        Assert.Equal(0, (await RunAsync(["import", "--from", export, .. place])).Exit);
        var (exit, said) = await RunAsync(["check", .. place]);
        Assert.Equal(0, exit);
        Assert.EndsWith(" on 127.0.0.1: all is well.", said, StringComparison.Ordinal);
        Assert.Equal(2, (await RunAsync(["import", "--from", export, .. place])).Exit);
        Assert.Equal(0, (await RunAsync(["export", "--to", back, .. place])).Exit);
        Assert.Equal(await File.ReadAllTextAsync(Path.Combine(export, "tables", "pieces.jsonl"), Cancel), await File.ReadAllTextAsync(Path.Combine(back, "tables", "pieces.jsonl"), Cancel));
        Assert.Equal(1, (await RunAsync("check", "--shop", Shop, "--database", "Host=127.0.0.1;Port=1;Database=x;Username=y")).Exit);
    }

    [Fact]
    public async Task Trouble_of_the_machine_is_said_in_a_line_and_exits_1()
    {
        var file = Path.Combine(AppContext.BaseDirectory, "demo", "lq-1042-north-walk.json");
        var (exit, said) = await RunAsync("take-in", file, "--shop", "/proc/no-such-shop");
        Assert.Equal(1, exit);
        Assert.DoesNotContain("   at ", said, StringComparison.Ordinal);
        Assert.Single(said.Split('\n'));

        await TakeInAsync();
        await File.WriteAllTextAsync(ShopFolder.DatabaseIn(Shop), string.Concat(Enumerable.Repeat("not a database at all. ", 200)), Cancel);
        Assert.Equal((1, "The database file is damaged. Stop the program and restore a backup: cutshop restore."), await RunAsync("take-in", file, "--shop", Shop));
        Assert.Equal(1, (await RunAsync("check", "--shop", Path.Combine(_folder, "nowhere"))).Exit);
        Assert.False(Directory.Exists(Path.Combine(_folder, "nowhere")));
    }

    [Fact]
    public async Task A_database_that_was_lost_is_not_taken_for_a_new_shop()
    {
        await TakeInAsync();
        var backup = (await RunAsync("backup", "--shop", Shop)).Said;
        Directory.CreateDirectory(Path.Combine(Shop, "cookie-keys"));
        await File.WriteAllTextAsync(Path.Combine(Shop, "cookie-keys", "key.xml"), "", Cancel);
        foreach (var isThere in new[] { true, false })
        {
            foreach (var part in new[] { "", "-wal", "-shm" })
                File.Delete(ShopFolder.DatabaseIn(Shop) + part);
            if (isThere)
                await File.WriteAllTextAsync(ShopFolder.DatabaseIn(Shop), "", Cancel);
            var (exit, said) = await RunAsync("serve", "--shop", Shop, "--listen", "http://127.0.0.1:0");
            Assert.Equal(1, exit);
            Assert.Contains($"{(isThere ? "is empty" : "is not there")}, and its folder is not new: it holds cookie-keys, backups. Restore the last good backup", said, StringComparison.Ordinal);
            Assert.Contains($"cutshop restore {backup}", said, StringComparison.Ordinal);
            Assert.DoesNotContain("/set-up/", said, StringComparison.Ordinal);
        }
        Assert.Contains("Restored.", (await RunAsync("restore", backup, "--shop", Shop)).Said, StringComparison.Ordinal);
        Assert.Equal(0, (await RunAsync("check", "--shop", Shop)).Exit);
    }

    [Fact]
    public async Task A_server_does_not_start_on_a_damaged_file_and_names_the_last_good_backup()
    {
        await TakeInAsync();
        var backup = (await RunAsync("backup", "--shop", Shop)).Said;
        var path = ShopFolder.DatabaseIn(Shop);
        var bytes = await File.ReadAllBytesAsync(path, Cancel);
        bytes.AsSpan(bytes.Length / 8192 * 4096, 4096).Fill(0x5A);
        await File.WriteAllBytesAsync(path, bytes, Cancel);
        var (exit, said) = await RunAsync("serve", "--shop", Shop, "--listen", "http://127.0.0.1:0");
        Assert.Equal(1, exit);
        Assert.Contains("is damaged, so the server does not start. Restore the last good backup, of ", said, StringComparison.Ordinal);
        Assert.Contains(backup, said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_second_server_on_one_file_does_not_start_and_other_commands_go_on_beside_the_first()
    {
        using var shop = await ServedShop.StartAsync();
        var (exit, said) = await RunAsync("serve", "--shop", shop.Folder, "--listen", "http://127.0.0.1:0");
        Assert.Equal(1, exit);
        Assert.Contains("A server is already running on", said, StringComparison.Ordinal);
        var file = Path.Combine(AppContext.BaseDirectory, "demo", "lq-1043-beach-ramp.json");
        Assert.All(
            await Task.WhenAll(RunAsync("take-in", file, "--shop", shop.Folder), RunAsync("person", "add", "Fen", "--role", "desk", "--shop", shop.Folder)),
            ran => Assert.Equal(0, ran.Exit));
    }

    [Fact]
    [UnsupportedOSPlatform("windows")]
    public async Task What_the_program_writes_is_for_its_own_user_whatever_is_usual_and_what_older_ones_left_is_closed()
    {
        using (var shop = await ServedShop.StartAsync())
        {
            var file = Path.Combine(AppContext.BaseDirectory, "demo", "lq-1043-beach-ramp.json");
            Assert.Equal(0, (await RunAsync("take-in", file, "--shop", shop.Folder)).Exit);
            Assert.Equal(0, (await RunAsync("backup", "--shop", shop.Folder)).Exit);
            Assert.Equal(0, (await RunAsync("export", "--shop", shop.Folder, "--to", Path.Combine(_folder, "export"))).Exit);
            AssertClosed(shop.Folder);
            AssertClosed(Path.Combine(_folder, "export"));
            Assert.Contains(Directory.EnumerateFiles(shop.Folder), path => path.EndsWith("-wal", StringComparison.Ordinal));
        }

        // As a program before this one left it, by the usual mask of 022.
        await TakeInAsync();
        Assert.NotEqual(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(ShopFolder.DatabaseIn(Shop)));
        var start = ServerProcess.Command(["serve", "--shop", Shop, "--listen", $"http://127.0.0.1:{FreePort.Find()}", "--backup-at", "never"]);
        using var server = await ServerProcess.StartAsync(start);
        AssertClosed(Shop);
    }

    [UnsupportedOSPlatform("windows")]
    private static void AssertClosed(string folder)
    {
        const UnixFileMode Own = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        Assert.Equal(Own | UnixFileMode.UserExecute, File.GetUnixFileMode(folder));
        foreach (var path in Directory.EnumerateFileSystemEntries(folder, "*", SearchOption.AllDirectories))
            Assert.Equal((path, Directory.Exists(path) ? Own | UnixFileMode.UserExecute : Own), (path, File.GetUnixFileMode(path)));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private async Task TakeInAsync()
    {
        using var database = ShopDatabase.Open(ShopFolder.DatabaseIn(Shop), TimeProvider.System);
        var job = JobFileReader.Read(await RunningShop.DemoFileAsync("lq-1042-north-walk.json")).Job!;
        await new JobIntake(database, ShopTables.Standard).TakeInAsync(job, "test", cancel: Cancel);
    }

    private async Task ExecuteAsync(string sql)
    {
        using var database = ShopDatabase.Open(ShopFolder.DatabaseIn(Shop), TimeProvider.System);
        await database.WriteAsync(session => session.Execute(sql), Cancel);
    }

    private static async Task<(int Exit, string Said)> RunAsync(params string[] args)
    {
        using var process = Process.Start(ServerProcess.Command(args))!;
        var (output, error) = (process.StandardOutput.ReadToEndAsync(Cancel), process.StandardError.ReadToEndAsync(Cancel));
        await process.WaitForExitAsync(Cancel);
        return (process.ExitCode, (await output + await error).Trim());
    }
}
