using CutShop.Testing.Stores;

namespace CutShop.Shop.Tests.Maintenance;

/// <summary>The database is broken by hand in each way that the check looks for, and the check names it.</summary>
public sealed class ShopCheckTests(ServerShop server) : IClassFixture<ServerShop>
{
    public static TheoryData<string, string> Broken => new()
    {
        { "UPDATE rope_uses SET nm = nm - 1000000 WHERE kind = 'kerf'", "coil K0001: 50' 0\" came in, 0\" is left and the ledger shows" },
        { "DELETE FROM rope_uses WHERE kind = 'kerf'", "is missing" },
        { "UPDATE rope_uses SET nm = nm + 25400000 WHERE kind = 'offcut'", "1\" is counted twice" },
        { "UPDATE coils SET left_nm = left_nm - 1 WHERE mark = 'K0002'", "coil K0002: " },
        { "UPDATE coils SET colour = 'black' WHERE mark = 'K0002'", "coil K0002: is an offcut of another coil, rope or lot" },
        { "INSERT INTO shrinkings (coil_id, before_nm, after_nm, measured_at, use_id) VALUES (1, 50800000, 25400000, '2026-01-01T00:00:00.000Z', 1)", "coil K0001: lost 1\" in soaking by its measurements, but the ledger shows 0\"" },
        { "UPDATE rope_uses SET kind = 'shrunk' WHERE kind = 'trim'", "coil K0001: lost 0\" in soaking by its measurements, but the ledger shows 1\"" },
        {
            "UPDATE rope_uses SET kind = 'shrunk' WHERE kind = 'trim'; INSERT INTO shrinkings (coil_id, before_nm, after_nm, measured_at, use_id) SELECT coil_id, nm + 1, 1, at, id FROM rope_uses WHERE kind = 'shrunk'",
            "coil K0001: was soaked and dried, but is shown as new rope"
        },
        { "UPDATE coils SET state = 'used up' WHERE mark = 'K0002'", "coil K0002: is used up, but" },
        { "UPDATE coils SET lot = 'L9' WHERE mark = 'K0002'", "coil K0002: is an offcut of another coil, rope or lot" },
        { "UPDATE coils SET whole_nm = whole_nm + 1, left_nm = left_nm + 1 WHERE mark = 'K0002'", "coil K0002: is an offcut of" },
        { "UPDATE cut_tickets SET measured_nm = measured_nm + 1 WHERE state = 'cut'", "but the ledger shows 6' 5 1/2\" in it" },
        { "UPDATE coils SET state = 'retired' WHERE mark = 'K0002'", "coil K0002: is retired, but its history does not say so" },
        { "DELETE FROM history WHERE subject = 'coil' AND what = 'offcut-hung-up'", "coil K0002: shows 43' 5 1/8\" left; its history says nothing" },
        { "UPDATE cut_tickets SET state = 'packed' WHERE state = 'cut'", "is packed; its history says cut" },
        { "UPDATE drill_tickets SET state = 'drilled', claimed_by = NULL, claimed_at = NULL WHERE state = 'at the bench'", "post A1 of LQ-1: is drilled; its history says at the bench" },
        { "INSERT INTO closed_parcels (job_id, closed_at) VALUES (1, '2026-01-01T00:00:00.000Z')", "job LQ-1: is closed; its history says open for packing" },
        { "UPDATE posts SET in_parcel_at = '2026-01-01T00:00:00.000Z' WHERE mark = 'A1'", "post A1 of LQ-1: is packed; its history says not packed" },
        { "UPDATE drill_tickets SET claimed_by = 'Eva' WHERE state = 'at the bench'", "post A1 of LQ-1: is at the bench of Eva; its history says Dov" },
        { "DELETE FROM history WHERE subject = 'cut ticket' AND what = 'taken-to-bench'", "its history continues from at the bench, but the line before ended at waiting: a line is missing" },
        { "UPDATE cut_plans SET state = 'replaced'", "cut plan 1: is replaced; its history says accepted" },
        { "UPDATE jobs SET released_at = NULL WHERE number = 'LQ-1'", "job LQ-1: is received; its history says released" },
        { "UPDATE drafts SET state = 'dropped' WHERE number = 'LQ-2'", "is dropped; its history says open" },
        { "UPDATE pieces SET cut_nm = cut_nm + 1 WHERE run = 'A-top-1'", "job LQ-1, piece A-top-1: its row says" },
        { "UPDATE posts SET mark = 'B1' WHERE mark = 'A1'", "job LQ-1, post A1: it has no row, and its part says" },
        { "UPDATE post_parts SET drillings = drillings + 1", "job LQ-1, post A1: its row says" },
        { "UPDATE post_parts SET likeness = 'another' WHERE mark = 'A1'", "job LQ-1, post A1: its row says" },
        { "UPDATE post_parts SET part = replace(part, 'depth_nm', 'depth_mm') WHERE mark = 'A1'", "job LQ-1, post A1: it was changed after the program wrote it." },
        { "UPDATE piece_parts SET part = substr(part, 1, 200)", "job LQ-1, piece A-top-1: it was changed after the program wrote it." },
        { "UPDATE job_frames SET format = 7", "job LQ-1, the frame: It is of format 7" },
        { "DELETE FROM job_frames", "job LQ-1, the frame: it is missing." },
        { "DELETE FROM piece_parts", "job LQ-1, piece A-top-1: it is missing." },
        { "DELETE FROM post_parts WHERE mark = 'A2'", "job LQ-1, post A2: it is missing." },
        { "UPDATE jobs SET customer = 'Mallory' WHERE number = 'LQ-1'", "job LQ-1: its row says (LQ-1, Mallory," },
        { "UPDATE jobs SET job_file = '{}' WHERE number = 'LQ-1'", "job LQ-1: its stored file is not a job file" },
        { "DELETE FROM cut_tickets WHERE state = 'waiting'", "has no cut ticket" },
        { "DELETE FROM drill_tickets WHERE state = 'waiting'", "has bores but no drill ticket" },
        { "UPDATE jobs SET cancelled_at = taken_in_at WHERE number = 'LQ-3'", "though it is no longer wanted" },
        { "UPDATE jobs SET work_left = 0 WHERE number = 'LQ-3'", "job LQ-3: counts 0 tickets of work left, but has 6" },
        { "UPDATE drill_tickets SET queue_due = '2027-01-01' WHERE state = 'at the bench'", "job LQ-1: post A1 is in the queue for 2027-01-01, but the job is due 9999-12-31" },
    };

    public static TheoryData<string, string> Orphaned => new()
    {
        { "UPDATE post_parts SET post_id = 999 WHERE post_id = 1", "belongs to a row of posts that is not there" },
        { "UPDATE plan_cuts SET piece_id = 999", "belongs to a row of pieces that is not there" },
    };

    [Fact]
    public async Task A_shop_at_work_is_well()
    {
        using var shop = await BrokenShop.MakeAsync();
        Assert.Empty(shop.Findings());
    }

    [Theory]
    [MemberData(nameof(Broken))]
    [MemberData(nameof(Orphaned))]
    public async Task What_is_broken_is_named(string sql, string said)
    {
        using var shop = await BrokenShop.MakeAsync();
        shop.Break(sql);
        Assert.Contains(shop.Findings(), finding => finding.Contains(said, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Broken))]
    public async Task On_a_server_it_is_named_in_the_same_words(string sql, string said)
    {
        var findings = await server.BrokenAsync(sql);
        Assert.Contains(findings, finding => finding.ToString().Contains(said, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("DROP TRIGGER history_is_never_erased ON history", "trigger history_is_never_erased: is missing or disabled")]
    [InlineData("ALTER TABLE cut_tickets DISABLE TRIGGER a_new_cut_ticket_is_work_left", "trigger a_new_cut_ticket_is_work_left: is missing or disabled")]
    [InlineData("DROP INDEX rope_uses_by_coil", "index rope_uses_by_coil: is missing")]
    [InlineData("INSERT INTO migrations VALUES (9999, 'later', now())", "database: has migration 9999, and this program knows")]
    [InlineData("DROP TABLE migrations", "database: has migration 0, and this program knows")]
    public async Task Tables_on_a_server_that_are_not_the_programs_are_named(string sql, string said)
    {
        using var store = TestStore.OnServer();
        await using (var connection = new Npgsql.NpgsqlConnection(store.Connection))
            await Dapper.SqlMapper.ExecuteAsync(connection, sql);
        Assert.Contains(said, Assert.Single(ShopCheck.Of(new ShopPlace(store.Folder, store.Connection), TimeProvider.System)).ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("DROP TRIGGER history_is_never_erased", "trigger history_is_never_erased: is not there, though the migrations make it")]
    [InlineData("DROP INDEX rope_uses_by_coil", "index rope_uses_by_coil: is not there")]
    [InlineData("CREATE TABLE notes (id INTEGER)", "table notes: is there, though no migration makes it")]
    [InlineData("PRAGMA user_version = 3", "database: has migration 3, and this program knows")]
    [InlineData("PRAGMA user_version = 9999", "use the program that it was made with, or a newer one")]
    public async Task Tables_that_are_not_the_programs_are_named(string sql, string said)
    {
        using var shop = await BrokenShop.MakeAsync();
        shop.BreakSchema(sql);
        Assert.Contains(shop.Findings(), finding => finding.Contains(said, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_file_with_strange_bytes_in_it_is_named()
    {
        using var shop = await BrokenShop.MakeAsync();
        var path = shop.OnePiece();
        var bytes = await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken);
        bytes.AsSpan(bytes.Length / 2, bytes.Length / 4).Fill(0x5A);
        await File.WriteAllBytesAsync(path, bytes, TestContext.Current.CancellationToken);
        Assert.NotEmpty(shop.Findings());
    }

    [Fact]
    public async Task A_file_that_is_no_database_is_named()
    {
        using var shop = await BrokenShop.MakeAsync();
        await File.WriteAllTextAsync(shop.OnePiece(), string.Concat(Enumerable.Repeat("not a database at all. ", 200)), TestContext.Current.CancellationToken);
        Assert.Contains("The database file is damaged", Assert.Single(shop.Findings()), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Files_that_belong_to_nothing_are_named()
    {
        using var shop = await BrokenShop.MakeAsync();
        Directory.CreateDirectory(Path.Combine(shop.Folder, "paper", "LQ-1"));
        Directory.CreateDirectory(Path.Combine(shop.Folder, "paper", "LQ-77"));
        await File.WriteAllTextAsync(Path.Combine(shop.Folder, "paper", "LQ-1", "labels.pdf.part"), "", TestContext.Current.CancellationToken);
        Assert.Equal(
            [
                "paper/LQ-1/labels.pdf.part: is an unfinished file: a program is writing it now, or was stopped while it did; then it can be deleted",
                "paper/LQ-77: is the paper of a job that is not in the database",
            ],
            shop.Findings());
    }

    [Fact]
    public async Task A_photo_of_no_report_and_a_report_whose_photo_is_gone_are_named()
    {
        using var shop = await BrokenShop.MakeAsync();
        shop.Break("INSERT INTO site_reports (piece_id, kind, note, photo, tapped_at, came_at) SELECT id, 'damaged', '', 'aaaa.jpg', '', '' FROM pieces WHERE id = 1");
        var photos = Directory.CreateDirectory(ShopFolder.PhotosIn(shop.Folder)).FullName;
        await File.WriteAllTextAsync(Path.Combine(photos, "bbbb.jpg"), "", TestContext.Current.CancellationToken);
        Assert.Equal(
            [
                "photos/bbbb.jpg: belongs to no report: its report is coming in right now, or it never came in; then the photo can be deleted",
                "photos/aaaa.jpg: is not there, though a report from site has it",
            ],
            shop.Findings());
    }

    [Fact]
    public void A_folder_without_a_database_is_named()
    {
        var folder = Path.Combine(Path.GetTempPath(), "no-such-shop");
        Assert.Contains("There is no database at", Assert.Single(ShopCheck.Of(new ShopPlace(folder), TimeProvider.System)).Text, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder));
    }
}
