using System.Globalization;
using System.IO.Compression;
using CutShop.Testing.Stores;
using Microsoft.Extensions.Time.Testing;

namespace CutShop.Testing.Museum;

/// <summary>A copy of a shop that an earlier release made, gone when disposed, with the clock as it was when that shop was left.</summary>
internal sealed class MuseumShop : IDisposable
{
    private readonly TestStore? _server;
    private readonly string _folder = Directory.CreateTempSubdirectory("cutshop-museum-").FullName;

    private MuseumShop(string release, string part, TestStore? server = null)
    {
        _server = server;
        Place = server is null ? new(_folder) : new(_folder, server.Connection);
        Clock = new(DateTimeOffset.Parse(File.ReadAllText(Path.Combine(release, part, "closed-at.txt")), CultureInfo.InvariantCulture));
        Photos(release, _folder);
    }

    /// <summary>The folders of the releases in the museum, and the one that <c>CUTSHOP_MUSEUM</c> names.</summary>
    public static IReadOnlyList<string> Releases { get; } = Find();

    /// <summary>Those that have a shop on a server.</summary>
    public static IReadOnlyList<string> ReleasesOnServer { get; } = [.. Releases.Where(release => Directory.Exists(Path.Combine(release, "server")))];

    public ShopPlace Place { get; }

    /// <summary>The connection string of the shop on a server; empty for one in a file.</summary>
    public string Connection => _server?.Connection ?? "";

    public FakeTimeProvider Clock { get; }

    /// <summary>A copy of the shop in a file.</summary>
    public static MuseumShop InFile(string release)
    {
        var shop = new MuseumShop(release, "");
        using var file = Unpacked(Path.Combine(release, "shop.db.gz"));
        using var copy = File.Create(shop.Place.DatabaseFile);
        file.CopyTo(copy);
        return shop;
    }

    /// <summary>The shop on a server, restored from its dump.</summary>
    public static MuseumShop OnServer(string release)
    {
        var shop = new MuseumShop(release, "server", TestStore.OnServerWithoutTables());
        var sql = Path.Combine(shop._folder, "shop.sql");
        using (var dump = Unpacked(Path.Combine(release, "server", "shop.sql.gz")))
        using (var file = File.Create(sql))
            dump.CopyTo(file);
        PostgresServer.RunTool(shop._server!.Connection, "psql", "--quiet", "--no-psqlrc", "--set=ON_ERROR_STOP=1", $"--file={sql}");
        File.Delete(sql);
        return shop;
    }

    /// <summary>What the shop said, unpacked where it is packed: a folder.</summary>
    public string Said(string release)
    {
        if (_server is null)
            return Path.Combine(release, "said");
        var said = Path.Combine(_folder, "said");
        ZipFile.ExtractToDirectory(Path.Combine(release, "server", "said.zip"), said);
        return said;
    }

    /// <summary>The export of a release, unpacked into a folder of this shop's own.</summary>
    public string Export(string release)
    {
        var export = Path.Combine(_folder, "export");
        ZipFile.ExtractToDirectory(Path.Combine(release, "export.zip"), export);
        return export;
    }

    public void Dispose()
    {
        _server?.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private static GZipStream Unpacked(string path) => new(File.OpenRead(path), CompressionMode.Decompress);

    private static void Photos(string release, string folder)
    {
        var photos = Path.Combine(release, "photos");
        if (!Directory.Exists(photos))
            return;
        Directory.CreateDirectory(ShopFolder.PhotosIn(folder));
        foreach (var photo in Directory.EnumerateFiles(photos))
            File.Copy(photo, Path.Combine(ShopFolder.PhotosIn(folder), Path.GetFileName(photo)));
    }

    private static List<string> Find()
    {
        List<string> releases = [.. Directory.EnumerateDirectories(Path.Combine(SourceTree.Root, "tests", "Museum")).Order(StringComparer.Ordinal)];
        if (Environment.GetEnvironmentVariable("CUTSHOP_MUSEUM") is { Length: > 0 } other)
            releases.Add(other);
        return releases;
    }
}
