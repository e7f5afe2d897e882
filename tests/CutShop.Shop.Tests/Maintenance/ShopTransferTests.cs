using CutShop.Testing.Jobs;
using CutShop.Testing.Stores;
using CutShop.Testing.Trust;

namespace CutShop.Shop.Tests.Maintenance;

/// <summary>Everything out as JSON and CSV, and in again as the same shop.</summary>
public sealed class ShopTransferTests : IDisposable
{
    private const string Photo = "post.jpg";

    private readonly string _folder = Directory.CreateTempSubdirectory("cutshop-transfer-").FullName;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private string Export => Path.Combine(_folder, "export");

    private string Other => Path.Combine(_folder, "other shop");

    [Fact]
    public async Task An_export_imported_into_an_empty_shop_is_the_same_shop()
    {
        using var shop = await FullShopAsync();
        var answer = new ShopExport(new ShopPlace(FolderOf(shop)), TimeProvider.System).Write(Export);
        Assert.Null(answer.Problem);
        Assert.Equal(1, answer.Photos);
        Assert.Equal(answer, await ImportAsync());
        Assert.Equal(ShopDigest.Of(shop.Database.Path), ShopDigest.Of(ShopFolder.DatabaseIn(Other)));
        Assert.Equal([1, 2, 3], await File.ReadAllBytesAsync(Path.Combine(ShopFolder.PhotosIn(Other), Photo), Cancel));
        Assert.Empty(ShopCheck.Of(new ShopPlace(Other), TimeProvider.System));

        using var database = ShopDatabase.Open(ShopFolder.DatabaseIn(Other), TimeProvider.System);
        Assert.True((await new CutBench(database).UndoAsync(shop.Code, "a slip", "Cai", "in the other shop", Cancel)).IsDone);
        Assert.Single(new JobSearch(database).Find(new JobsWanted(JobsShown.All, "antern")).Jobs);
    }

    [Fact]
    public async Task Sheets_are_for_a_spreadsheet_and_hold_no_secret()
    {
        using var shop = await FullShopAsync();
        new ShopExport(new ShopPlace(FolderOf(shop)), TimeProvider.System).Write(Export);
        Assert.StartsWith("id,mark,material,diameter_nm,construction,lot,place,parent_id,whole_nm,left_nm,state,came_at,colour,preshrunk\r\n1,K0001,polypropylene,38100000,three-strand,L1,rack 1,,15240000000,0,used up,", await SheetAsync("coils"), StringComparison.Ordinal);
        Assert.StartsWith("id,name,name_key,role,millimetres_first,state,added_at\r\n", await SheetAsync("people"), StringComparison.Ordinal);
        Assert.Contains(",\"Lantern Quay, the \"\"long\"\" walk\nnorth\",", await SheetAsync("drafts"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_shop_in_a_file_moves_to_a_server_and_back_and_is_the_same_shop()
    {
        using var shop = await FullShopAsync();
        var file = new ShopPlace(FolderOf(shop));
        using var store = TestStore.OnServer();
        var server = new ShopPlace(store.Folder, store.Connection);
        var answer = new ShopExport(file, TimeProvider.System).Write(Export);
        Assert.Null(answer.Problem);

        Assert.Equal(answer, await ImportAsync(server, Export));
        Assert.Equal(ShopDigest.Of(file), ShopDigest.Of(server));
        Assert.Empty(ShopCheck.Of(server, TimeProvider.System));
        var again = Path.Combine(_folder, "export of the server");
        Assert.Null(new ShopExport(server, TimeProvider.System).Write(again).Problem);
        Assert.Equal(await AllOfAsync(Export), await AllOfAsync(again));

        Assert.Equal(answer, await ImportAsync(new(Other), again));
        Assert.Equal(ShopDigest.Of(file), ShopDigest.Of(new ShopPlace(Other)));
    }

    [Fact]
    public async Task A_shop_that_came_to_a_server_goes_on_there_with_the_next_numbers_and_its_triggers_awake()
    {
        using var shop = await FullShopAsync();
        using var store = TestStore.OnServer();
        var server = new ShopPlace(store.Folder, store.Connection);
        new ShopExport(new ShopPlace(FolderOf(shop)), TimeProvider.System).Write(Export);
        Assert.Null((await ImportAsync(server, Export)).Problem);

        using var database = store.Open();
        var last = LastLine(database);
        Assert.True((await new CutBench(database).UndoAsync(shop.Code, "a slip", "Cai", "on the server", Cancel)).IsDone);
        Assert.True(LastLine(database) > last);
        await new JobIntake(database, ShopTables.Standard).TakeInAsync(SmallJobs.OnePiece("LQ-9"), "Ada", cancel: Cancel);
        Assert.Equal(3, database.Read(session => session.Value<long>("SELECT work_left FROM jobs WHERE number = 'LQ-9'")));
        await new DraftShelf(database).StartAsync(SmallJobs.FourPosts("LQ-8"), "Ada", "another draft", Cancel);
        await Assert.ThrowsAnyAsync<System.Data.Common.DbException>(() => database.WriteAsync(session => session.Execute("DELETE FROM history"), Cancel));
        await Assert.ThrowsAnyAsync<System.Data.Common.DbException>(() => database.WriteAsync(session => session.Execute("UPDATE pieces SET job_id = 999"), Cancel));
        Assert.Empty(ShopCheck.Of(server, TimeProvider.System));
        Assert.Contains("is a shop already", (await ImportAsync(server, Export)).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_import_that_was_ended_before_its_database_was_there_may_be_made_again()
    {
        using var shop = await FullShopAsync();
        new ShopExport(new ShopPlace(FolderOf(shop)), TimeProvider.System).Write(Export);
        Assert.Null((await ImportAsync()).Problem);
        File.Move(ShopFolder.DatabaseIn(Other), ShopFolder.DatabaseIn(Other) + ".importing");
        Assert.Null((await ImportAsync()).Problem);
        Assert.Empty(ShopCheck.Of(new ShopPlace(Other), TimeProvider.System));

        File.Delete(ShopFolder.DatabaseIn(Other));
        await File.WriteAllBytesAsync(Path.Combine(ShopFolder.PhotosIn(Other), "of another shop.jpg"), [4], Cancel);
        Assert.Contains("of another shop.jpg is there and is not in the export", (await ImportAsync()).Problem, StringComparison.Ordinal);
        Assert.False(File.Exists(ShopFolder.DatabaseIn(Other)));
    }

    public static TheoryData<string, string> Damages => new()
    {
        { "a byte changed", "was changed after it was written" },
        { "a line gone", "was changed after it was written" },
        { "a table gone", "is not there" },
        { "a photo gone", "is not there" },
        { "a photo changed", "was changed after it was written" },
        { "no manifest", "is not an export" },
        { "half a manifest", "is not a manifest" },
        { "another format", "is of another program" },
        { "another version", "has version 2; accepted: 1" },
        { "a newer migration", "Use a newer program" },
        { "a table more", "its tables are not those of its migration" },
        { "another digest", "does not match the manifest" },
        { "a photo outside", "would lie outside" },
    };

    [Theory]
    [MemberData(nameof(Damages))]
    public async Task A_damaged_or_foreign_export_is_refused_and_nothing_is_made(string damage, string said)
    {
        using var shop = await FullShopAsync();
        new ShopExport(new ShopPlace(FolderOf(shop)), TimeProvider.System).Write(Export);
        await DamageAsync(damage);
        Assert.Contains(said, (await ImportAsync()).Problem, StringComparison.Ordinal);
        Assert.Empty(Directory.Exists(Other) ? Directory.EnumerateFileSystemEntries(Other) : []);
    }

    [Fact]
    public async Task An_export_of_a_shop_that_is_off_is_refused()
    {
        using var shop = await BrokenShop.MakeAsync();
        shop.Break("DELETE FROM rope_uses WHERE kind = 'kerf'");
        Assert.Null(new ShopExport(new ShopPlace(shop.Folder), TimeProvider.System).Write(Export).Problem);
        Assert.Contains("There is an error in the export. coil K0001", (await ImportAsync()).Problem, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(Other));
    }

    [Fact]
    public async Task Neither_a_shop_nor_an_export_is_written_over()
    {
        using var shop = await FullShopAsync();
        Directory.CreateDirectory(Export);
        Assert.Contains("is there already", new ShopExport(new ShopPlace(FolderOf(shop)), TimeProvider.System).Write(Export).Problem, StringComparison.Ordinal);
        Directory.Delete(Export);
        new ShopExport(new ShopPlace(FolderOf(shop)), TimeProvider.System).Write(Export);
        var digest = ShopDigest.Of(shop.Database.Path);
        Assert.Contains("is a shop already", (await ImportAsync(new(FolderOf(shop)), Export)).Problem, StringComparison.Ordinal);
        Assert.Equal(digest, ShopDigest.Of(shop.Database.Path));
    }

    [Fact]
    public async Task An_export_of_an_older_program_is_brought_up_to_date()
    {
        var old = Path.Combine(_folder, "old shop");
        Directory.CreateDirectory(old);
        using (var file = MaintainedFile.Create(ShopFolder.DatabaseIn(old), TimeProvider.System))
        {
            SqliteMigrations.Apply(file.Connection, upTo: 4);
            file.Connection.Run("INSERT INTO settings (name, value) VALUES ('kerf', '1/8 in')");
        }
        Assert.Null(new ShopExport(new ShopPlace(old), TimeProvider.System).Write(Export).Problem);
        Assert.Null((await ImportAsync()).Problem);
        using var database = ShopDatabase.Open(ShopFolder.DatabaseIn(Other), TimeProvider.System);
        Assert.Equal(FaultShop.Inches("1/8"), new CuttingSettingsShelf(database).Cutting.Allowances.Kerf);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static string FolderOf(FaultShop shop) => Path.GetDirectoryName(shop.Database.Path)!;

    private static async Task<FaultShop> FullShopAsync()
    {
        var shop = await FaultShop.MakeAsync();
        await shop.FinishCutAsync();
        await shop.Drafts.StartAsync(SmallJobs.FourPosts("LQ-7", "Lantern Quay, the \"long\" walk\nnorth"), "Ñandú ½ ⅔ 木", shop.Key(), Cancel);
        var photos = Directory.CreateDirectory(ShopFolder.PhotosIn(FolderOf(shop))).FullName;
        await File.WriteAllBytesAsync(Path.Combine(photos, Photo), [1, 2, 3], Cancel);
        await new SiteReports(shop.Database).SendAsync(shop.Code, new(SiteReportKind.TooShort, "by a hand", Photo, At: null), "on site", shop.Key(), cancel: Cancel);
        return shop;
    }

    private Task<TransferAnswer> ImportAsync() => ImportAsync(new(Other), Export);

    private static Task<TransferAnswer> ImportAsync(ShopPlace place, string export) => new ShopImport(place, TimeProvider.System).ReadAsync(export, Cancel);

    /// <summary>All files of an export, but for when it was made.</summary>
    private static async Task<IReadOnlyList<string>> AllOfAsync(string export)
    {
        var files = new List<string>();
        foreach (var path in Directory.EnumerateFiles(export, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            var lines = await File.ReadAllLinesAsync(path, Cancel);
            files.Add($"{Path.GetRelativePath(export, path)}\n{string.Join('\n', lines.Where(line => !line.Contains("\"madeAt\"", StringComparison.Ordinal)))}");
        }
        return files;
    }

    private static long LastLine(ShopDatabase database) => database.Read(session => session.Value<long>("SELECT max(id) FROM history"));

    private Task<string> SheetAsync(string table) => File.ReadAllTextAsync(Path.Combine(Export, "sheets", table + ".csv"), Cancel);

    private async Task DamageAsync(string damage)
    {
        var (history, manifest, photo) = (Path.Combine(Export, "tables", "history.jsonl"), Path.Combine(Export, "manifest.json"), Path.Combine(Export, "photos", Photo));
        switch (damage)
        {
            case "a byte changed":
                await ReplaceAsync(history, "coil-received", "coil-retired");
                break;
            case "a line gone":
                await File.WriteAllLinesAsync(history, (await File.ReadAllLinesAsync(history, Cancel)).Skip(1), Cancel);
                break;
            case "a table gone":
                File.Delete(history);
                break;
            case "a photo gone":
                File.Delete(photo);
                break;
            case "a photo changed":
                await File.WriteAllBytesAsync(photo, [1, 2, 4], Cancel);
                break;
            case "no manifest":
                File.Delete(manifest);
                break;
            case "half a manifest":
                await File.WriteAllTextAsync(manifest, (await File.ReadAllTextAsync(manifest, Cancel))[..200], Cancel);
                break;
            default:
                var (was, becomes) = damage switch
                {
                    "another format" => ("\"cutshop export\"", "\"something else\""),
                    "another version" => ("\"version\": 1", "\"version\": 2"),
                    "a newer migration" => ($"\"migration\": {Migration.Newest}", "\"migration\": 9999"),
                    "a table more" => ("\"name\": \"bits\"", "\"name\": \"bots\""),
                    "another digest" => ("\"digest\": \"", "\"digest\": \"0"),
                    "a photo outside" => ($"\"{Photo}\"", $"\"../{Photo}\""),
                    _ => throw new ArgumentOutOfRangeException(nameof(damage), damage, message: null),
                };
                await ReplaceAsync(manifest, was, becomes);
                break;
        }
    }

    private static async Task ReplaceAsync(string path, string was, string becomes)
    {
        var text = await File.ReadAllTextAsync(path, Cancel);
        Assert.Contains(was, text, StringComparison.Ordinal);
        await File.WriteAllTextAsync(path, text.Replace(was, becomes, StringComparison.Ordinal), Cancel);
    }
}
