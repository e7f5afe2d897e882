using System.Diagnostics;
using System.Text;
using CutShop.Testing.Stores;
using CutShop.Testing.Trust;

namespace CutShop.Web.Tests.Trust;

/// <summary>
/// A command of care is killed (SIGKILL) at moments spread over its run: then the shop is as it was before or as it is after, and the
/// same command again does it.
/// </summary>
public sealed class KilledCareTests : IDisposable
{
    private const int Kills = 6;
    private const int Jobs = 60;

    private readonly string _folder = Directory.CreateTempSubdirectory("cutshop-killed-care-").FullName;
    private int _killed;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private string Source => Path.Combine(_folder, "source");

    private string Other => Path.Combine(_folder, "other");

    private string Export => Path.Combine(_folder, "export");

    [Fact]
    public async Task A_restore_that_is_killed_leaves_the_shop_before_or_after_and_is_made_again()
    {
        await FillAsync(Source, Jobs);
        await FillAsync(Other, Jobs / 2);
        var (before, after) = (ShopDigest.Of(ShopFolder.DatabaseIn(Other)), ShopDigest.Of(ShopFolder.DatabaseIn(Source)));
        string[] restore = ["restore", ShopFolder.DatabaseIn(Source), "--shop", Other];
        var whole = await File.ReadAllBytesAsync(ShopFolder.DatabaseIn(Other), Cancel);
        await AtEachMomentAsync(
            restore,
            before: () =>
            {
                Directory.Delete(Other, recursive: true);
                Directory.CreateDirectory(Other);
                File.WriteAllBytes(ShopFolder.DatabaseIn(Other), whole);
                // As a server leaves it: in write-ahead mode.
                ShopDatabase.Open(ShopFolder.DatabaseIn(Other), TimeProvider.System).Dispose();
            },
            killed: () => Assert.Contains(ShopDigest.Of(ShopFolder.DatabaseIn(Other)), new[] { before, after }),
            done: () => Assert.Equal(after, ShopDigest.Of(ShopFolder.DatabaseIn(Other))));
    }

    [Fact]
    public async Task A_backup_that_is_killed_leaves_a_whole_backup_or_none()
    {
        await FillAsync(Source, Jobs);
        var backups = ShopFolder.BackupsIn(Source);
        var digest = ShopDigest.Of(ShopFolder.DatabaseIn(Source));
        await AtEachMomentAsync(
            ["backup", "--shop", Source],
            before: () =>
            {
                if (Directory.Exists(backups))
                    Directory.Delete(backups, recursive: true);
            },
            killed: () => Assert.All(BackupFile.In(backups), backup => Assert.Equal((true, digest), (backup.IsSound, ShopDigest.Of(backup.Path)))),
            done: () => Assert.NotEmpty(BackupFile.In(backups)));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task An_import_that_is_killed_leaves_a_whole_shop_or_none_and_is_made_again(bool onServer)
    {
        await FillAsync(Source, Jobs);
        Assert.Null(new ShopExport(new ShopPlace(Source), TimeProvider.System).Write(Export).Problem);
        var digest = ShopDigest.Of(new ShopPlace(Source));
        var server = "";
        ShopPlace Place() => new(Other, onServer ? server : null);
        bool IsThere() => onServer ? ShopCheck.Of(Place(), TimeProvider.System).Count == 0 && ShopDigest.Of(Place()) == digest : File.Exists(ShopFolder.DatabaseIn(Other));
        await AtEachMomentAsync(
            ["import", "--shop", Other, "--from", Export],
            before: () =>
            {
                if (Directory.Exists(Other))
                    Directory.Delete(Other, recursive: true);
                if (onServer)
                    server = PostgresServer.NewBareDatabase();
            },
            killed: () => Assert.True(!IsThere() || ShopDigest.Of(Place()) == digest),
            done: () => Assert.Equal(digest, ShopDigest.Of(Place())),
            environment: () => onServer ? server : null,
            isDoneAlready: IsThere);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private async Task AtEachMomentAsync(
        string[] command, Action before, Action killed, Action done, Func<string?>? environment = null, Func<bool>? isDoneAlready = null)
    {
        before();
        var start = Stopwatch.GetTimestamp();
        Assert.Equal(0, await RunAsync(command, environment?.Invoke(), killAfter: null));
        var whole = Stopwatch.GetElapsedTime(start);
        done();
        for (var kill = 1; kill <= Kills; kill++)
        {
            before();
            await RunAsync(command, environment?.Invoke(), whole * kill / (Kills + 1));
            killed();
            if (isDoneAlready?.Invoke() != true)
                Assert.Equal(0, await RunAsync(command, environment?.Invoke(), killAfter: null));
            done();
            var shop = new ShopPlace(command[Array.IndexOf(command, "--shop") + 1], environment?.Invoke());
            // Half a backup is named until a later one removes it.
            Assert.DoesNotContain(ShopCheck.Of(shop, TimeProvider.System), finding => !finding.Where.StartsWith("backups/", StringComparison.Ordinal));
        }
        Assert.NotEqual(0, _killed);
    }

    private async Task<int> RunAsync(string[] command, string? server, TimeSpan? killAfter)
    {
        var program = ServerProcess.Command(command);
        if (server is not null)
            program.Environment["CUTSHOP_DATABASE"] = server;
        using var process = Process.Start(program)!;
        var said = Task.WhenAll(process.StandardOutput.ReadToEndAsync(Cancel), process.StandardError.ReadToEndAsync(Cancel));
        if (killAfter is { } moment && await Task.WhenAny(said, Task.Delay(moment, Cancel)) != said)
        {
            process.Kill();
            _killed++;
        }
        await process.WaitForExitAsync(Cancel);
        await said;
        return process.ExitCode;
    }

    private static async Task FillAsync(string folder, int jobs)
    {
        var path = ShopFolder.DatabaseIn(folder);
        using (var database = ShopDatabase.Open(path, TimeProvider.System))
        {
            for (var i = 1; i <= jobs; i++)
            {
                var job = JobFileReader.Read(Encoding.UTF8.GetBytes(KillRun.JobFile($"LQ-{i}", "polypropylene", "1 in"))).Job!;
                await new JobIntake(database, ShopTables.Standard).TakeInAsync(job, "test", cancel: Cancel);
            }
        }
        // As one piece, to be copied as a file.
        await using var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={path};Pooling=False");
        await connection.OpenAsync(Cancel);
        await using var onePiece = connection.CreateCommand();
        onePiece.CommandText = "PRAGMA journal_mode = DELETE";
        await onePiece.ExecuteNonQueryAsync(Cancel);
    }
}
