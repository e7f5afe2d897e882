// Makes the museum's shop of release 0.1 (commit 476c0e7), in a file and on a server, with what it said of itself.
//
//   dotnet run -c Release --project tests/Museum/0.1/made-by -- museum tests/Museum/0.1
//   dotnet run -c Release --project tests/Museum/0.1/made-by -- other 20261128 FOLDER      (another shop, of random jobs, in a file alone)
//
// Run with the release it is named for, checked out whole, and never again: what later versions must open is what that release made, so files
// that a later version made would check nothing. This project is not in the solution, since later versions need not build it. A server is
// wanted for the first: MUSEUM_SERVER holds a connection string to an empty database on PostgreSQL, and pg_dump is on the path.
using System.Diagnostics;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using CutShop.Museum;
using CutShop.Shop;
using CutShop.Takeoff;
using Npgsql;

var start = new DateTimeOffset(2026, 10, 5, 7, 0, 0, TimeSpan.Zero);
switch (args)
{
    case ["museum", var to]:
        await MakeAsync(to, Path.Combine(to, "said"), connection: null, async (shop, site, gone) =>
        {
            var scenario = new Scenario(shop, site, gone);
            await scenario.PlayAsync();
            return scenario.Views;
        });
        var server = Environment.GetEnvironmentVariable("MUSEUM_SERVER") ?? throw new InvalidOperationException("MUSEUM_SERVER is not set.");
        await MakeAsync(to, Path.Combine(to, "server", "said"), server, async (shop, site, gone) =>
        {
            var scenario = new Scenario(shop, site, gone);
            await scenario.PlayAsync();
            return scenario.Views;
        });
        return 0;
    case ["other", var seed, var to]:
        await MakeAsync(to, Path.Combine(to, "said"), connection: null, async (shop, site, gone) =>
        {
            var random = new RandomShop(shop, gone, int.Parse(seed, CultureInfo.InvariantCulture));
            await random.PlayAsync();
            return random.Views;
        });
        return 0;
    default:
        Console.Error.WriteLine("museum FOLDER, or other SEED FOLDER");
        return 2;
}

async Task MakeAsync(string to, string said, string? connection, Func<WorkingShop, MuseumSite, GonePages, Task<List<(string Who, string Address)>>> play)
{
    var folder = Directory.CreateTempSubdirectory("cutshop-museum-").FullName;
    var clock = new MuseumClock(start);
    var place = new ShopPlace(folder, connection);
    List<(string Who, string Address)> views;
    GonePages gone;
    await using (var site = await MuseumSite.StartAsync(place, clock))
    {
        var shop = new WorkingShop(site.Database, clock);
        gone = new GonePages(connection is null ? folder : null, shop);
        views = await play(shop, site, gone);
    }
    var findings = ShopCheck.Of(place, ShopTables.Standard, clock);
    foreach (var finding in findings)
        Console.Error.WriteLine(finding);
    if (findings.Count > 0)
        throw new InvalidOperationException("The shop is off.");

    Directory.CreateDirectory(said);
    if (connection is null)
    {
        var backup = new ShopBackups(place.DatabaseFile, Path.Combine(folder, "copies"), ShopTables.Standard, clock).Make(keep: null);
        Gzip(await File.ReadAllBytesAsync(backup.File.Path), Path.Combine(to, "shop.db.gz"));
        if (Directory.Exists(ShopFolder.PhotosIn(folder)))
        {
            foreach (var photo in Directory.EnumerateFiles(ShopFolder.PhotosIn(folder)))
                File.Copy(photo, Path.Combine(Directory.CreateDirectory(Path.Combine(to, "photos")).FullName, Path.GetFileName(photo)), overwrite: true);
        }
        var export = Path.Combine(folder, "export");
        WorkingShop.Done(new ShopExport(place, clock).Write(export).Problem);
        File.Delete(Path.Combine(to, "export.zip"));
        ZipFile.CreateFromDirectory(export, Path.Combine(to, "export.zip"), CompressionLevel.SmallestSize, includeBaseDirectory: false);
        await File.WriteAllTextAsync(Path.Combine(to, "closed-at.txt"), clock.Now.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'\n", CultureInfo.InvariantCulture));
    }
    else
    {
        Gzip(Encoding.UTF8.GetBytes(Dump(connection)), Path.Combine(to, "server", "shop.sql.gz"));
        await File.WriteAllTextAsync(Path.Combine(to, "server", "closed-at.txt"), clock.Now.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'\n", CultureInfo.InvariantCulture));
    }

    // What it says is asked of the shop as it is now, which the copies above are of: asking writes keys and visits.
    await using (var site = await MuseumSite.StartAsync(place, clock))
    {
        var says = new ShopSays(site, views);
        foreach (var number in await says.JobsAsync())
        {
            var ofJob = Directory.CreateDirectory(Path.Combine(said, Uri.EscapeDataString(number))).FullName;
            foreach (var (file, text) in await says.OfJobAsync(number))
                await File.WriteAllTextAsync(Path.Combine(ofJob, file), text);
        }
        await File.WriteAllTextAsync(Path.Combine(said, "shop.txt"), await says.OfTheShopAsync(PagesOfTheShop.Of(site.Database)));
        await File.WriteAllTextAsync(Path.Combine(said, "views.txt"), string.Concat(views.Select(view => $"{view.Who} {view.Address}\n")));
        if (connection is null)
            await File.WriteAllTextAsync(Path.Combine(said, "gone.txt"), await gone.TextAsync(site));
        await WriteRowsAsync(said, connection is null ? Rows.OfFile(place.DatabaseFile) : await OpenAsync(connection));
    }
    if (connection is not null)
    {
        File.Delete(said + ".zip");
        ZipFile.CreateFromDirectory(said, said + ".zip", CompressionLevel.SmallestSize, includeBaseDirectory: false);
        Directory.Delete(said, recursive: true);
    }
    Directory.Delete(folder, recursive: true);
}

static async Task<NpgsqlConnection> OpenAsync(string connection)
{
    var opened = new NpgsqlConnection(connection);
    await opened.OpenAsync();
    return opened;
}

static async Task WriteRowsAsync(string said, System.Data.Common.DbConnection connection)
{
    await using (connection)
    {
        foreach (var (file, sql) in new[]
        {
            ("pieces.csv", "SELECT number AS job, run, code, pieces.id, position, material, diameter_nm, cut_nm, CASE WHEN dropped_at IS NULL THEN '' ELSE 'dropped' END, state, coalesce(measured_nm, 0) FROM pieces JOIN jobs ON jobs.id = job_id JOIN cut_tickets ON piece_id = pieces.id ORDER BY pieces.id"),
            ("bores.csv", "SELECT number AS job, mark, run, code, bores.kind, bit_nm, height_nm, bore_operations.position, face, depth_nm FROM bores JOIN posts ON posts.id = post_id JOIN jobs ON jobs.id = posts.job_id JOIN pieces ON pieces.id = piece_id JOIN bore_operations ON bore_id = bores.id ORDER BY bores.id, bore_operations.position"),
            ("posts.csv", "SELECT number AS job, mark, posts.id, position, CASE WHEN dropped_at IS NULL THEN '' ELSE 'dropped' END, coalesce(state, ''), coalesce(steps, 0) FROM posts JOIN jobs ON jobs.id = job_id LEFT JOIN drill_tickets ON post_id = posts.id ORDER BY posts.id"),
        })
        {
            var rows = await Rows.OfAsync(connection, sql);
            var head = file switch
            {
                "pieces.csv" => "job,run,code,id,position,material,diameter nm,cut nm,dropped,ticket,measured nm",
                "bores.csv" => "job,post,run,code,kind,bit nm,height nm,drilling,face,depth nm",
                _ => "job,post,id,position,dropped,ticket,steps",
            };
            await File.WriteAllLinesAsync(Path.Combine(said, file), rows.Select(CsvLine.Of).Prepend(head));
        }
    }
}

static void Gzip(byte[] bytes, string path)
{
    Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
    using var file = File.Create(path);
    using var gzip = new GZipStream(file, CompressionLevel.SmallestSize);
    gzip.Write(bytes);
}

static string Dump(string connection)
{
    var parts = new NpgsqlConnectionStringBuilder(connection);
    using var dump = Process.Start(new ProcessStartInfo(
        "pg_dump",
        ["--no-owner", "--no-privileges", FormattableString.Invariant($"--dbname=host={parts.Host} port={parts.Port} user={parts.Username} dbname={parts.Database}")])
    { UseShellExecute = false, RedirectStandardOutput = true, StandardOutputEncoding = Encoding.UTF8 })!;
    var text = dump.StandardOutput.ReadToEnd();
    dump.WaitForExit();
    // Newer programs put two commands of psql round the SQL, which older ones do not know.
    text = string.Join('\n', text.Split('\n').Where(line => line is not ['\\', 'r' or 'u', ..]));
    return dump.ExitCode == 0 ? text : throw new InvalidOperationException("pg_dump failed.");
}
