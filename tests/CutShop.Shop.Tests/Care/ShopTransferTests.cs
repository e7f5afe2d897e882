using CutShop.Takeoff;
using CutShop.Trust;

namespace CutShop.Shop.Tests.Care;

/// <summary>Everything out as JSON and CSV, and in again as the same shop.</summary>
public sealed class ShopTransferTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("cutshop-transfer-").FullName;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private string Export => Path.Combine(_folder, "export");

    private string Other => Path.Combine(_folder, "other shop");

    [Fact]
    public async Task An_export_imported_into_an_empty_shop_is_the_same_shop()
    {
        using var shop = await FullShopAsync();
        var answer = new ShopExport(FolderOf(shop), TimeProvider.System).Write(Export);
        Assert.Null(answer.Problem);
        Assert.Equal(1, answer.Photos);
        Assert.Equal(answer, Import());
        Assert.Equal(ShopDigest.Of(shop.Database.Path), ShopDigest.Of(ShopFolder.DatabaseIn(Other)));
        Assert.Equal([1, 2, 3], await File.ReadAllBytesAsync(Path.Combine(ShopFolder.PhotosIn(Other), "LQ-1", "post.jpg"), Cancel));
        Assert.Empty(ShopCheck.OfFolder(Other, ShopTables.Standard, TimeProvider.System));

        using var database = ShopDatabase.Open(ShopFolder.DatabaseIn(Other), TimeProvider.System);
        Assert.True((await new CutBench(database).UndoAsync(shop.Code, "a slip", "Cai", "in the other shop", Cancel)).IsDone);
        Assert.Single(new JobSearch(database).Find(new JobsWanted(JobsShown.All, "antern")).Jobs);
    }

    [Fact]
    public async Task Sheets_are_for_a_spreadsheet_and_hold_no_secret()
    {
        using var shop = await FullShopAsync();
        new ShopExport(FolderOf(shop), TimeProvider.System).Write(Export);
        Assert.StartsWith("id,mark,material,diameter_nm,construction,lot,place,parent_id,whole_nm,left_nm,state,came_at\r\n1,K0001,polypropylene,38100000,three-strand,L1,rack 1,,15240000000,0,used up,", await SheetAsync("coils"), StringComparison.Ordinal);
        Assert.StartsWith("id,name,name_key,role,millimetres_first,state,added_at\r\n", await SheetAsync("people"), StringComparison.Ordinal);
        Assert.Contains(",\"Lantern Quay, the \"\"long\"\" walk\nnorth\",", await SheetAsync("drafts"), StringComparison.Ordinal);
    }

    public static TheoryData<string, string> Damages => new()
    {
        { "a byte changed", "is not as it was written" },
        { "a line gone", "is not as it was written" },
        { "a table gone", "is not there" },
        { "a photo gone", "is not there" },
        { "a photo changed", "is not as it was written" },
        { "no manifest", "is not an export" },
        { "half a manifest", "is not a manifest" },
        { "another format", "is of another program" },
        { "another version", "has version 2; accepted: 1" },
        { "a newer migration", "Use a newer program" },
        { "a table more", "its tables are not those of its migration" },
        { "another digest", "not what the manifest tells of" },
        { "a photo outside", "would lie outside" },
    };

    [Theory]
    [MemberData(nameof(Damages))]
    public async Task A_damaged_or_foreign_export_is_refused_and_nothing_is_made(string damage, string said)
    {
        using var shop = await FullShopAsync();
        new ShopExport(FolderOf(shop), TimeProvider.System).Write(Export);
        await DamageAsync(damage);
        Assert.Contains(said, Import().Problem, StringComparison.Ordinal);
        Assert.Empty(Directory.Exists(Other) ? Directory.EnumerateFileSystemEntries(Other) : []);
    }

    [Fact]
    public async Task An_export_of_a_shop_that_is_off_is_refused()
    {
        using var shop = await BrokenShop.MakeAsync();
        shop.Break("DELETE FROM rope_uses WHERE kind = 'kerf'");
        Assert.Null(new ShopExport(shop.Folder, TimeProvider.System).Write(Export).Problem);
        Assert.Contains("Something is off in the export. coil K0001", Import().Problem, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(Other));
    }

    [Fact]
    public async Task Neither_a_shop_nor_an_export_is_written_over()
    {
        using var shop = await FullShopAsync();
        Directory.CreateDirectory(Export);
        Assert.Contains("is there already", new ShopExport(FolderOf(shop), TimeProvider.System).Write(Export).Problem, StringComparison.Ordinal);
        Directory.Delete(Export);
        new ShopExport(FolderOf(shop), TimeProvider.System).Write(Export);
        var digest = ShopDigest.Of(shop.Database.Path);
        Assert.Contains("is a shop already", new ShopImport(FolderOf(shop), ShopTables.Standard, TimeProvider.System).Read(Export).Problem, StringComparison.Ordinal);
        Assert.Equal(digest, ShopDigest.Of(shop.Database.Path));
    }

    [Fact]
    public void An_export_of_an_older_program_is_brought_up_to_date()
    {
        var old = Path.Combine(_folder, "old shop");
        Directory.CreateDirectory(old);
        using (var file = CareFile.Create(ShopFolder.DatabaseIn(old), TimeProvider.System))
        {
            SqliteMigrations.Apply(file.Connection, upTo: 4);
            file.Connection.Run("INSERT INTO settings (name, value) VALUES ('kerf', '1/8 in')");
        }
        Assert.Null(new ShopExport(old, TimeProvider.System).Write(Export).Problem);
        Assert.Null(Import().Problem);
        using var database = ShopDatabase.Open(ShopFolder.DatabaseIn(Other), TimeProvider.System);
        Assert.Equal(FaultShop.Inches("1/8"), new SettingsShelf(database).Cutting.Allowances.Kerf);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static string FolderOf(FaultShop shop) => Path.GetDirectoryName(shop.Database.Path)!;

    private static async Task<FaultShop> FullShopAsync()
    {
        var shop = await FaultShop.MakeAsync();
        await shop.FinishCutAsync();
        await shop.Drafts.StartAsync(FaultShop.FourPosts("LQ-7", "Lantern Quay, the \"long\" walk\nnorth"), "Ñandú ½ ⅔ 木", shop.Key(), Cancel);
        var photos = Path.Combine(ShopFolder.PhotosIn(FolderOf(shop)), "LQ-1");
        Directory.CreateDirectory(photos);
        await File.WriteAllBytesAsync(Path.Combine(photos, "post.jpg"), [1, 2, 3], Cancel);
        return shop;
    }

    private TransferAnswer Import() => new ShopImport(Other, ShopTables.Standard, TimeProvider.System).Read(Export);

    private Task<string> SheetAsync(string table) => File.ReadAllTextAsync(Path.Combine(Export, "sheets", table + ".csv"), Cancel);

    private async Task DamageAsync(string damage)
    {
        var (history, manifest, photo) = (Path.Combine(Export, "tables", "history.jsonl"), Path.Combine(Export, "manifest.json"), Path.Combine(Export, "photos", "LQ-1", "post.jpg"));
        switch (damage)
        {
            case "a byte changed":
                await ReplaceAsync(history, "Ada", "Eda");
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
                    "a newer migration" => ($"\"migration\": {SqliteMigrations.Newest}", "\"migration\": 9999"),
                    "a table more" => ("\"name\": \"bits\"", "\"name\": \"bots\""),
                    "another digest" => ("\"digest\": \"", "\"digest\": \"0"),
                    "a photo outside" => ("LQ-1/post.jpg", "../post.jpg"),
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
