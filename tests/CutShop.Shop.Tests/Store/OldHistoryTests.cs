using CutShop.Testing.Stores;
using Dapper;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace CutShop.Shop.Tests.Store;

/// <summary>
/// The lines of programs that wrote sentences become codes. What those programs wrote is here as they wrote it, and the shop in the
/// folder OldShop is an export that the last of them made.
/// </summary>
public sealed class OldHistoryTests
{
    /// <summary>The migration of the program that made the export.</summary>
    private const int Old = 11;

    /// <summary>Who, subject and its row, what, before, after and reason, as they were written; then who, code, before, after, lengths, details, cause and reason.</summary>
    private static readonly (string Old, string New)[] Lines =
    [
        ("Ada;job 1;received;;12 pieces, 30 bores;", "person 1;job-received;;received;;;{\"pieces\":12,\"bores\":30};;"),
        ("key order program;job 1;taken in;;1 pieces, 2 bores;", "key 2;job-taken-in;;released;;;{\"pieces\":1,\"bores\":2};;"),
        ("Ada;job 1;released;received;released;", "person 1;job-released;received;released;;;{};;"),
        ("Ada;job 1;cancelled;released;cancelled, 2 made and now surplus;sold", "person 1;job-cancelled;released;cancelled;;;{\"surplus\":2};;sold"),
        (
            "Ada;job 1;changed;12 pieces, 30 bores;14 pieces, 33 bores; pieces 3 added, 4 changed, 1 gone; posts 5 added, 6 changed, 7 gone; 8 made and now surplus;",
            "person 1;job-changed;;;;;{\"pieces_before\":12,\"bores_before\":30,\"pieces\":14,\"bores\":33,\"pieces_added\":3,\"pieces_changed\":4,\"pieces_gone\":1,"
            + "\"posts_added\":5,\"posts_changed\":6,\"posts_gone\":7,\"surplus\":8};;"),
        ("Ada;job 1;site pack opened;;;", "person 1;site-pack-opened;;;;;{};;"),
        ("Ada;job 1;site pack replaced;AAAA-AAAA-AAAA;BBBB-BBBB-BBBB;lost", "person 1;site-pack-replaced;AAAA-AAAA-AAAA;BBBB-BBBB-BBBB;;;{};;lost"),
        ("Cai;cut ticket 1;taken to the bench;waiting;at the bench;", "name Cai;taken-to-bench;waiting;at the bench;;;{};;"),
        ("Ada;cut ticket 1;taken over;Cai;Ada;", "person 1 from name Cai;taken-over;;;;;{};;"),
        ("Ada;cut ticket 1;handed back;at the bench;waiting;", "person 1;handed-back;at the bench;waiting;;;{};;"),
        ("Ada;drill ticket 1;handed back, nothing was done for 45 minutes;at the bench;waiting;", "person 1;handed-back-unused;at the bench;waiting;;;{\"minutes\":45};;"),
        ("Cai;cut ticket 1;pull and mark;step 0 of 6;step 1 of 6;", "name Cai;cut-step-done;;;;;{\"step_before\":0,\"step\":1,\"steps\":6};;"),
        ("Cai;cut ticket 1;coil and tie;step 5 of 6;step 6 of 6;", "name Cai;cut-step-done;;;;;{\"step_before\":5,\"step\":6,\"steps\":6};;"),
        // 19 ft 6 5/16 in are 234.3125 in of 25.4 mm.
        ("Cai;cut ticket 1;measured 19' 6 5/16\";step 3 of 6;step 4 of 6;", "name Cai;cut-measured;;;;5951537500;{\"step_before\":3,\"step\":4,\"steps\":6};;"),
        ("Cai;cut ticket 1;measured 1968.4567 mm;step 3 of 6;step 4 of 6;", "name Cai;cut-measured;;;;1968456700;{\"step_before\":3,\"step\":4,\"steps\":6};;"),
        ("Cai;cut ticket 1;measured 3' 0 1/64\";step 3 of 6;step 4 of 6;", "name Cai;cut-measured;;;;914796875;{\"step_before\":3,\"step\":4,\"steps\":6};;"),
        ("Cai;cut ticket 1;not measured, counted as 1/2\";step 3 of 6;step 4 of 6;", "name Cai;cut-not-measured;;;;12700000;{\"step_before\":3,\"step\":4,\"steps\":6};;"),
        ("Cai;cut ticket 1;measured too long, to be trimmed;;6' 8\";", "name Cai;cut-too-long;;;;2032000000;{};;"),
        ("Cai;cut ticket 1;measured too long, to be trimmed;6' 8\";6' 9\";", "name Cai;cut-too-long;;;2032000000;2057400000;{};;"),
        ("Cai;cut ticket 1;put aside, to be cut again;at the bench;waiting;short by 7 1/2\"", "name Cai;cut-put-aside;at the bench;waiting;;;{\"short_nm\":190500000};short;"),
        ("Cai;cut ticket 1;put aside, to be cut again;at the bench;waiting;frayed", "name Cai;cut-put-aside;at the bench;waiting;;;{};;frayed"),
        ("Cai;cut ticket 1;not taken, to be cut again;cut;waiting;a knot", "name Cai;cut-rejected;cut;waiting;;;{};;a knot"),
        ("Cai;cut ticket 1;finished;at the bench;cut;", "name Cai;cut-finished;at the bench;cut;;;{};;"),
        ("Cai;cut ticket 1;undone;cut;waiting;a slip", "name Cai;undone;cut;waiting;;;{};;a slip"),
        ("Cai;cut ticket 1;packed;cut;packed;", "name Cai;packed;cut;packed;;;{};;"),
        ("Cai;cut ticket 1;taken out of the parcel;packed;cut;", "name Cai;unpacked;packed;cut;;;{};;"),
        ("Ada;cut ticket 1;no longer wanted;cut;surplus;on site: too short", "person 1;no-longer-wanted;cut;surplus;;;{};on-site-too-short;"),
        ("Ada;cut ticket 1;cancelled;waiting;cancelled;the job changed", "person 1;ticket-cancelled;waiting;cancelled;;;{};job-changed;"),
        ("Ada;cut ticket 1;hung up as an offcut;surplus;cancelled;", "person 1;surplus-hung-up;surplus;cancelled;;;{};;"),
        ("Ada;cut ticket 1;scrapped;surplus;cancelled;", "person 1;surplus-scrapped;surplus;cancelled;;;{};;"),
        ("Dov;drill ticket 1;drilled a bore;0 of 3 drilled;1 of 3 drilled;", "name Dov;bore-drilled;;;;;{\"drilled_before\":0,\"drilled\":1,\"drillings\":3};;"),
        ("Dov;drill ticket 1;drilled a screw hole;1 of 3 drilled;2 of 3 drilled;", "name Dov;screw-hole-drilled;;;;;{\"drilled_before\":1,\"drilled\":2,\"drillings\":3};;"),
        ("Dov;drill ticket 1;drilled, the rope fits;at the bench;drilled;", "name Dov;post-drilled;at the bench;drilled;;;{\"screw_holes\":0};;"),
        ("Dov;drill ticket 1;drilled, the rope fits, 2 screw holes with it;at the bench;drilled;", "name Dov;post-drilled;at the bench;drilled;;;{\"screw_holes\":2};;"),
        ("Dov;drill ticket 1;spoiled, another post ordered;drilled;re-ordered;split", "name Dov;post-spoiled;drilled;re-ordered;;;{};;split"),
        ("Dov;drill ticket 1;the new post is here;re-ordered;waiting;", "name Dov;new-post-here;re-ordered;waiting;;;{};;"),
        ("Ada;coil 1;received;;600' 0\";", "person 1;coil-received;;;;182880000000;{};;"),
        ("Ada;coil 2;offcut of K0001;;43' 5 1/8\";", "person 1;offcut-hung-up;;;;13236575000;{\"coil\":\"K0001\"};;"),
        ("Cai;coil 1;cut from;600' 0\";592' 5 1/8\";", "name Cai;cut-from;;;182880000000;180571775000;{};;"),
        ("Cai;coil 1;cut from, piece put aside;600' 0\";592' 5 1/8\";", "name Cai;cut-from-put-aside;;;182880000000;180571775000;{};;"),
        ("Cai;coil 1;scrap;1' 6 5/8\";0\";", "name Cai;rest-scrapped;;;473075000;0;{};;"),
        ("Cai;coil 1;rest hung up as K0002;43' 5 1/8\";0\";", "name Cai;rest-hung-up;;;13236575000;0;{\"offcut\":\"K0002\"};;"),
        ("Cai;coil 1;cut undone;592' 5 1/8\";600' 0\";", "name Cai;cut-undone;;;180571775000;182880000000;{};;"),
        ("Cai;coil 2;part of K0001 again, cut undone;43' 5 1/8\";0\";", "name Cai;offcut-taken-down;;;13236575000;0;{\"coil\":\"K0001\"};;"),
        ("Ada;coil 1;adjusted;600' 0\";0.000001 mm;frayed", "person 1;coil-corrected;;;182880000000;1;{};;frayed"),
        ("Ada;coil 1;adjusted;600' 0\";60' 0\";opened before it came in", "person 1;coil-corrected;;;182880000000;18288000000;{};opened-before;"),
        ("Ada;coil 1;retired;in stock;retired;wet", "person 1;coil-retired;in stock;retired;;;{};;wet"),
        ("Ada;cut plan 1;drafted;;draft;", "person 1;plan-drafted;;draft;;;{};;"),
        ("Ada;cut plan 1;accepted;draft;accepted;", "person 1;plan-accepted;draft;accepted;;;{};;"),
        ("Ada;cut plan 1;replaced by plan 12;accepted;replaced;", "person 1;plan-replaced;accepted;replaced;;;{\"plan\":12};;"),
        ("site;piece 1;marked on site;not-installed;installed;", "name site;piece-marked;not-installed;installed;;;{};;"),
        ("Ada;piece 1;label replaced;AAAA-AAAA-AAAA;BBBB-BBBB-BBBB;lost", "person 1;label-replaced;AAAA-AAAA-AAAA;BBBB-BBBB-BBBB;;;{};;lost"),
        ("Ada;piece 2;cut again;;waiting;on site: missing", "person 1;piece-cut-again;;waiting;;;{};on-site-missing;"),
        ("site;site report 1;reported;;too-short;by a hand", "name site;report-sent;;too-short;;;{};;by a hand"),
        ("Ada;site report 1;piece cut again;;A-top-1;on site: too long", "person 1;report-cut-again;;A-top-1;;;{};on-site-too-long;"),
        ("Ada;site report 1;closed;open;closed;sent", "person 1;report-closed;open;closed;;;{};;sent"),
        ("Ada;draft 1;started;;open;", "person 1;draft-started;;open;;;{};;"),
        ("Ada;draft 1;dropped;open;dropped;", "person 1;draft-dropped;open;dropped;;;{};;"),
        ("Ada;draft 1;taken up again;dropped;open;", "person 1;draft-reopened;dropped;open;;;{};;"),
        ("Ada;draft 1;taken in;open;LQ-\"1\";", "person 1;draft-taken-in;open;LQ-\"1\";;;{};;"),
        ("Ada;quote 1;accepted;open;accepted;", "person 1;quote-accepted;open;accepted;;;{};;"),
        ("Ada;price list 1;kept;;2027-02-01;", "person 1;price-list-kept;;2027-02-01;;;{};;"),
        ("Ada;price list 0;currency sign set;$;€;", "person 1;currency-set;$;€;;;{};;"),
        ("Ada;setting 0;bench under set;;1/4\";", "person 1;setting-set;;1/4\";;;{\"setting\":\"bench under\"};;"),
        ("Ada;bit rack 1;hung up;;2 7/8 in spade;", "person 1;bit-hung-up;;spade;;73025000;{};;"),
        ("Ada;bit rack 1;taken off;3/4 in threaded-forstner;;", "person 1;bit-taken-off;threaded-forstner;;19050000;;{};;"),
        ("Ada;bit rack 1;hung up;;70 mm hole-saw;", "person 1;bit-hung-up;;hole-saw;;70000000;{};;"),
        ("Ada;person 2;added;;cutter;", "person 1;person-added;;cutter;;;{};;"),
        ("Ada;person 2;role changed;cutter;driller;", "person 1;role-changed;cutter;driller;;;{};;"),
        ("Ada;person 2;password set;;;", "person 1;password-set;;;;;{};;"),
        ("Ada;person 2;PIN set;;;", "person 1;pin-set;;;;;{};;"),
        ("Ada;person 2;PIN taken away;;;", "person 1;pin-removed;;;;;{};;"),
        ("Ada;person 2;switched off;active;switched off;", "person 1;person-switched-off;active;switched off;;;{};;"),
        ("Ada;person 2;switched on;switched off;active;", "person 1;person-switched-on;switched off;active;;;{};;"),
        ("Ada;person 1;units chosen;as the shop;feet and inches;", "person 1;units-chosen;as-the-shop;feet-and-inches;;;{};;"),
        ("Ada;person 1;locked;;for 15 minutes;5 wrong tries of the PIN", "person 1;sign-in-locked;;;;;{\"minutes\":15,\"tries\":5,\"way\":\"PIN\"};wrong-tries;"),
        // A tablet's and a key's name is in its own record.
        ("Ada;tablet 1;enrolled;;Dov's tablet;", "person 1;tablet-enrolled;;enrolled;;;{};;"),
        ("Ada;tablet 1;removed;enrolled;removed;", "person 1;tablet-removed;enrolled;removed;;;{};;"),
        ("Ada;API key 1;made;;read;order program", "person 1;key-made;;read;;;{};;"),
        ("Ada;API key 1;revoked;in use;revoked;", "person 1;key-revoked;in use;revoked;;;{};;"),
        // What cannot be read to the last digit keeps its words.
        ("Ada;cut ticket 1;cut from K0001, lot \"L1\";waiting;cut;", "person 1;other;waiting;cut;;;{\"words\":\"cut from K0001, lot \\\"L1\\\"\"};;"),
        ("Ada;coil 1;adjusted;≈ 600' 0\";590' 0\";why", "person 1;other;≈ 600' 0\";590' 0\";;;{\"words\":\"adjusted\"};;why"),
        ("Ada;bit rack 1;hung up;;≈ 70 mm spade;", "person 1;other;;≈ 70 mm spade;;;{\"words\":\"hung up\"};;"),
        ("Ada;quote 7;made;;12.50;", "person 1;other;;12.50;;;{\"words\":\"made\"};;"),
        ("Ada;job 1;taken in;;all of it;", "person 1;other;;all of it;;;{\"words\":\"taken in\"};;"),
    ];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static string OldShop => Path.Combine(AppContext.BaseDirectory, "Store", "OldShop");

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Each_line_of_an_older_program_is_a_code_with_exact_values(bool onServer)
    {
        using var store = onServer ? TestStore.OnServerWithoutTables() : TestStore.InFile();
        AsBefore(store, onServer, session =>
        {
            session.Execute("INSERT INTO people (id, name, name_key, role, password_hash, state, stamp, added_at) VALUES (1, 'Ada', 'ADA', 'owner', '', 'active', '', '')");
            session.Execute("INSERT INTO api_keys (id, name, scope, key_hash, made_by, made_at) VALUES (@id, 'order program', 'read', @id, '', '')", new[] { 1, 2 }.Select(id => new { id = (long)id }));
            foreach (var (i, line) in Lines.Index())
                InsertOld(session, i + 41, line.Old);
        });
        using var shop = store.Open();
        Assert.Equal(Lines.Select((line, i) => $"{i + 41};{line.New}"), shop.Read(session => session.All<string>(
            """
            SELECT concat(history.id, ';',
              CASE WHEN doer.person_id IS NOT NULL THEN concat('person ', doer.person_id) WHEN doer.api_key_id IS NOT NULL THEN concat('key ', doer.api_key_id) ELSE concat('name ', doer.name) END,
              CASE WHEN had.id IS NOT NULL THEN concat(' from name ', had.name) ELSE '' END, ';',
              what, ';', before, ';', after, ';', before_nm, ';', after_nm, ';', details, ';', cause, ';', reason)
            FROM history JOIN actors AS doer ON doer.id = actor_id LEFT JOIN actors AS had ON had.id = from_actor_id
            ORDER BY history.id
            """)));
        // Every line can be shown, in words and not by the name of its code.
        Assert.All(shop.Read(session => session.All<HistoryEntry>($"SELECT {HistoryEntry.Columns} FROM history")), entry => Assert.DoesNotMatch("^[A-Z]?[A-Za-z0-9]*[A-Z][a-z0-9]*$|^$", entry.InWords().What));
    }

    /// <summary>Every code is among the lines above, but that of a quote made, which needs one, and those of what no old program did.</summary>
    [Fact]
    public void No_code_is_left_out_above() => Assert.Equal(
        new[]
        {
            "job-release-taken-back", "job-taken-up-again", "job-by-rules", "wanted-again", "cut-step-tapped", "cut-step-scanned", "cut-step-undone", "coil-scanned",
            "measure-taken-back", "coil-found", "bad-stretch-cut-out", "quote-made", "drill-step-undone", "post-drilled-alike", "post-not-spoiled", "screws-put-in",
            "screws-taken-out", "parcel-closed", "parcel-opened", "post-put-in", "post-taken-out", "span-measured", "bad-stretch-taken-back", "coil-preshrunk",
            "preshrinking-undone", "sample-measured", "sample-taken-back", "re-setting-done", "re-setting-due", "bore-ticked", "hardware-put-in",
            "hardware-taken-out", "parcel-begun", "parcel-taken-back",
        }.Order(StringComparer.Ordinal),
        HistoryCodes.All.Select(code => code.Code).Except(Lines.Select(line => line.New.Split(';')[1])).Order(StringComparer.Ordinal));

    [Fact]
    public void Any_printed_length_is_read_back_to_the_nanometre_on_both_stores()
    {
        var random = new Random(20270201);
        var lengths = Enumerable.Range(0, 2000).Select(i => (i % 4) switch
        {
            0 => Length.FromSixtyFourths(random.NextInt64(1, 64 * 12)),
            1 => Length.FromSixtyFourths(random.NextInt64(1, 64 * 12 * 30_000)),
            2 => Length.FromInches(random.NextInt64(0, 12 * 30_000)),
            _ => Length.FromNanometres(random.NextInt64(1, 10_000_000_000_000)),
        }).ToList();
        foreach (var onServer in new[] { false, true })
        {
            using var store = onServer ? TestStore.OnServerWithoutTables() : TestStore.InFile();
            AsBefore(store, onServer, session =>
            {
                foreach (var (i, length) in lengths.Index())
                    InsertOld(session, i + 1, $"Ada;coil 1;adjusted;{length};{LengthText.Exact(length)};a reason");
            });
            using var shop = store.Open();
            Assert.Equal(lengths.Select(length => (length, length)), shop.Read(session => session.All<(Length, Length)>("SELECT before_nm, after_nm FROM history ORDER BY id")));
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_shop_of_an_older_program_comes_in_with_every_line_and_is_well(bool onServer)
    {
        using var store = onServer ? TestStore.OnServer() : TestStore.InFile();
        var place = new ShopPlace(store.Folder, onServer ? store.Connection : null);
        Assert.Null((await new ShopImport(place, TimeProvider.System).ReadAsync(OldShop, Cancel)).Problem);
        AssertIsTheOldShop(place, store);
    }

    [Fact]
    public void A_shop_of_an_older_program_on_a_server_is_brought_up_to_date_there_and_is_well()
    {
        using var store = TestStore.OnServerWithoutTables();
        AsBefore(store, onServer: true, session =>
        {
            foreach (var statement in session.All<string>(session.Dialect.DisableConstraints))
                session.Execute(statement);
            foreach (var table in TableText.All(Old))
                table.Fill(session, File.ReadLines(Path.Combine(OldShop, ExportManifest.TableFile(table.Name))));
        });
        using (var connection = new NpgsqlConnection(store.Connection))
        {
            connection.Open();
            foreach (var statement in connection.Query<string>(Dialect.Postgres.EnableConstraints).ToList())
                connection.Execute(statement);
        }
        AssertIsTheOldShop(new(store.Folder, store.Connection), store);
    }

    private static void AssertIsTheOldShop(ShopPlace place, TestStore store)
    {
        using var shop = store.Open();
        Assert.Empty(ShopCheck.Of(place, TimeProvider.System));
        var old = File.ReadLines(Path.Combine(OldShop, ExportManifest.TableFile("history"))).Select(line => System.Text.Json.JsonDocument.Parse(line).RootElement).ToList();
        Assert.Equal(
            old.Select(line => (line.GetProperty("id").GetInt64(), line.GetProperty("who").GetString()!)),
            shop.Read(session => session.All<(long, string)>($"SELECT id, {Actors.NameOf("actor_id")} AS who FROM history ORDER BY id")));
        // A bit of 70.04 mm, which was printed to a tenth.
        Assert.Equal("≈ 70 mm spade", Assert.Single(shop.Read(session => session.All<string>("SELECT after FROM history WHERE what = 'other'"))));
        Assert.Equal(
            [Length.FromNanometres(1968456700), Length.FromSixtyFourths(4960)],
            shop.Read(session => session.All<Length>("SELECT after_nm FROM history WHERE what = 'cut-measured' AND subject_id = 1 ORDER BY id")));
        Assert.Equal(
            ["{\"total_e4\":" + shop.Read(session => session.Value<long>("SELECT max(total_e4) FROM quotes")) + "}"],
            shop.Read(session => session.All<string>("SELECT details FROM history WHERE what = 'quote-made'")));
        foreach (var name in new[] { "Dov's tablet", "order program", "Lantern Quay boardwalk" })
            Assert.Equal(0, shop.Read(session => session.Value<long>($"SELECT count(*) FROM history WHERE {HistoryRows.Text} LIKE '%' || @name || '%'", new { name })));
    }

    private static void InsertOld(ShopSession session, long id, string line)
    {
        // A job's counts have semicolons of their own.
        var parts = line.Split(';');
        var (who, thing, what, before, after, reason) = (parts[0], parts[1], parts[2], parts[3], string.Join(';', parts[4..^1]), parts[^1]);
        var space = thing.LastIndexOf(' ');
        session.Execute(
            """
            INSERT INTO history (id, at, who, subject, subject_id, what, before, after, reason)
            VALUES (@id, '2027-02-01T08:00:00.000Z', @who, @subject, @subjectId, @what, @before, @after, @reason)
            """,
            new { id, who, subject = thing[..space], subjectId = long.Parse(thing[space..], System.Globalization.CultureInfo.InvariantCulture), what, before, after, reason });
    }

    /// <summary>Makes the tables as they were before the migration, and fills them.</summary>
    private static void AsBefore(TestStore store, bool onServer, Action<ShopSession> fill)
    {
        SqlTypes.Register();
        if (onServer)
        {
            using var connection = new NpgsqlConnection(store.Connection);
            connection.Open();
            PostgresMigrations.Apply(connection, TimeProvider.System, Old);
            using var transaction = connection.BeginTransaction();
            fill(new(connection, transaction, Dialect.Postgres, TimeProvider.System));
            transaction.Commit();
        }
        else
        {
            using var connection = new SqliteConnection($"Data Source={store.DatabaseFile};Pooling=False");
            connection.Open();
            SqliteMigrations.Apply(connection, Old);
            using var transaction = connection.BeginTransaction();
            fill(new(connection, transaction, Dialect.Sqlite, TimeProvider.System));
            transaction.Commit();
        }
    }
}
