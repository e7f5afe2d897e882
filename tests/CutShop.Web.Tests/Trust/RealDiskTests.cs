using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Text;
using CutShop.Testing.Stores;
using CutShop.Testing.Trust;

namespace CutShop.Web.Tests.Trust;

/// <summary>The real program on a small disk of its own, that is filled or turns read-only under it. Skipped where the machine lets nobody mount one.</summary>
public sealed class RealDiskTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("cutshop-disk-").FullName;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private string Seed => Path.Combine(_folder, "seed");

    private string Disk => Path.Combine(_folder, "disk");

    [Fact]
    public async Task A_disk_that_fills_up_loses_nothing_and_work_goes_on_when_there_is_room()
    {
        var key = await SeedAsync();
        var port = FreePort.Find();
        using var server = await ServerProcess.StartAsync(
            OnDisk("rw", "serve", "--listen", string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}"), "--backup-at", "never"));
        using var program = new HttpClient { BaseAddress = new Uri(string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}")) };
        program.DefaultRequestHeaders.Authorization = new("Bearer", key);
        var seen = $"/proc/{server.Id}/root{Disk}";

        Assert.Equal(HttpStatusCode.Created, await TakeInAsync(program, "LQ-1"));

        Fill(Path.Combine(seen, "ballast"));
        var taken = new List<string> { "LQ-1" };
        for (var i = 2; ; i++)
        {
            var status = await TakeInAsync(program, $"LQ-{i}");
            if (status == HttpStatusCode.ServiceUnavailable)
                break;
            Assert.Equal(HttpStatusCode.Created, status);
            taken.Add($"LQ-{i}");
        }
        File.Delete(Path.Combine(seen, "ballast"));
        Assert.Equal(HttpStatusCode.Created, await TakeInAsync(program, "LQ-room"));
        taken.Add("LQ-room");

        var after = Directory.CreateDirectory(Path.Combine(_folder, "after")).FullName;
        foreach (var part in Directory.EnumerateFiles(seen, "cutshop.db*"))
            File.Copy(part, Path.Combine(after, Path.GetFileName(part)));
        Assert.Empty(ShopCheck.OfFile(ShopFolder.DatabaseIn(after), TimeProvider.System));
        using var database = ShopDatabase.Open(ShopFolder.DatabaseIn(after), TimeProvider.System);
        Assert.Equal(taken.Order(StringComparer.Ordinal), database.Read(session => session.All<string>("SELECT number FROM jobs")).Order(StringComparer.Ordinal));
    }

    /// <summary>As the system does it itself where it meets a fault of the disk; a shared disk of memory cannot be made so under a writer.</summary>
    [Fact]
    public async Task A_disk_that_turns_read_only_under_the_server_is_said_read_on_and_has_all_that_was_acknowledged()
    {
        var key = await SeedAsync();
        var image = Path.Combine(_folder, "disk.img");
        Assert.SkipUnless(
            await RunAsync("truncate", "--size=24M", image) == 0 && await RunAsync("mkfs.ext4", "-q", image) == 0
                && await RunAsync("unshare", "-m", "mount", "-o", "loop", image, Disk) == 0,
            "This machine lets nobody mount an image of a disk.");
        using var server = await ServerProcess.StartAsync(OnImage(image, ServerProcess.Command("serve", "--shop", Disk, "--listen", "http://127.0.0.1:0", "--backup-at", "never")));
        using var program = new HttpClient { BaseAddress = server.Address };
        program.DefaultRequestHeaders.Authorization = new("Bearer", key);
        Assert.Equal(HttpStatusCode.Created, await TakeInAsync(program, "LQ-1"));

        await MakeFaultyAsync(server);
        for (var i = 2; i < 5; i++)
            Assert.Equal(HttpStatusCode.ServiceUnavailable, await TakeInAsync(program, $"LQ-{i}"));
        using (var read = await program.GetAsync(new Uri("/api/jobs/LQ-1", UriKind.Relative), Cancel))
            Assert.Equal(HttpStatusCode.OK, read.StatusCode);
        await server.KillAsync();

        var after = Path.Combine(_folder, "after");
        Assert.Equal(0, await RunAsync("unshare", "-m", "bash", "-c", "mount -o loop \"$0\" \"$1\" && cp -r \"$1\" \"$2\"", image, Disk, after));
        Assert.Empty(ShopCheck.OfFile(ShopFolder.DatabaseIn(after), TimeProvider.System));
        using var database = ShopDatabase.Open(ShopFolder.DatabaseIn(after), TimeProvider.System);
        Assert.Equal(["LQ-1"], database.Read(session => session.All<string>("SELECT number FROM jobs")));
    }

    [Theory]
    [InlineData("serve", "--listen", "http://127.0.0.1:0")]
    [InlineData("person", "reset", "Ada")]
    [InlineData("backup")]
    public async Task On_a_read_only_disk_a_command_says_so_and_exits_1(params string[] command)
    {
        await SeedAsync();
        using var process = Process.Start(OnDisk("ro", command))!;
        var said = await process.StandardError.ReadToEndAsync(Cancel);
        await process.WaitForExitAsync(Cancel);
        Assert.Equal((1, Expected(command[0])), (process.ExitCode, said.Trim()));
    }

    private static string Expected(string command) => command is "backup" or "serve"
        ? "The shop's folder cannot be written. Give the program the right to write there; CutShop then carries on by itself."
        : "The database file cannot be opened. Check that the shop's folder is there and can be written.";

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private async Task<string> SeedAsync()
    {
        Assert.SkipUnless(await RunAsync("unshare", "-rm", "true") == 0, "This machine lets nobody mount a disk of their own.");
        Directory.CreateDirectory(Disk);
        using var database = ShopDatabase.Open(ShopFolder.DatabaseIn(Seed), TimeProvider.System);
        return (await new ApiKeyShelf(database).MakeAsync("disk", KeyScope.TakeIn, "test", Cancel)).Key;
    }

    /// <summary>Mounts the disk where only the command sees it, puts the shop on it, and runs the command.</summary>
    private ProcessStartInfo OnDisk(string mode, params string[] command)
    {
        const string Script = "mount -t tmpfs -o size=3m tmpfs \"$0\" && cp -r \"$1\"/. \"$0\" && mount -o \"remount,$2\" \"$0\" && shift 2 && exec \"$@\"";
        var program = ServerProcess.Command([.. command, "--shop", Disk]);
        var start = new ProcessStartInfo("unshare") { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var arg in new[] { "-rm", "bash", "-c", Script, Disk, Seed, mode, program.FileName }.Concat(program.ArgumentList))
            start.ArgumentList.Add(arg);
        return start;
    }

    /// <summary>The same on an image of a disk, which takes faults as a real one does.</summary>
    private ProcessStartInfo OnImage(string image, ProcessStartInfo program)
    {
        const string Script = "mount -o loop,errors=remount-ro \"$0\" \"$1\" && cp -r \"$2\"/. \"$1\" && sync && shift 2 && exec \"$@\"";
        var start = new ProcessStartInfo("unshare") { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var arg in new[] { "-m", "bash", "-c", Script, image, Disk, Seed, program.FileName }.Concat(program.ArgumentList))
            start.ArgumentList.Add(arg);
        return start;
    }

    /// <summary>Tells the system of a fault on the image that a server stands on.</summary>
    private async Task MakeFaultyAsync(ServerProcess server)
    {
        var device = (await File.ReadAllLinesAsync($"/proc/{server.Id}/mounts", Cancel)).Select(line => line.Split(' ')).Single(mount => mount[1] == Disk)[0];
        Assert.StartsWith("/dev/loop", device, StringComparison.Ordinal);
        await File.WriteAllTextAsync($"/sys/fs/ext4/{Path.GetFileName(device)}/trigger_fs_error", "1", Cancel);
    }

    private static void Fill(string path)
    {
        try
        {
            using var ballast = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 1);
            while (true)
                ballast.Write(new byte[4096]);
        }
        catch (IOException)
        {
            // The disk is full.
        }
    }

    private static async Task<HttpStatusCode> TakeInAsync(HttpClient program, string number)
    {
        using var content = new StringContent(KillRun.JobFile(number, "polypropylene", "1 in"), Encoding.UTF8, "application/json");
        using var answer = await program.PostAsync(new Uri("/api/jobs", UriKind.Relative), content, Cancel);
        return answer.StatusCode;
    }

    private static async Task<int> RunAsync(string command, params string[] args)
    {
        using var process = Process.Start(command, args);
        await process.WaitForExitAsync(Cancel);
        return process.ExitCode;
    }
}
