using System.Globalization;
using CutShop.Testing.Stores;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace CutShop.Shop.Tests.Store;

/// <summary>The two sets of migrations make the same shop.</summary>
public sealed class BothStoresTests : IDisposable
{
    // The text index of a file is a table of its own; a server's is an index.
    private const string Columns =
        """
        SELECT m.name || '.' || c.name || ' ' || CASE lower(c.type) WHEN 'integer' THEN 'bigint' ELSE lower(c.type) END || CASE WHEN c."notnull" = 1 OR c.pk > 0 THEN ' not null' ELSE '' END
          || CASE WHEN c.pk > 0 THEN ' key' ELSE '' END
        FROM sqlite_schema AS m JOIN pragma_table_info(m.name) AS c
        WHERE m.type = 'table' AND m.name NOT LIKE 'sqlite%' AND m.name NOT LIKE 'jobs_text%'
        """;

    private const string ServerColumns =
        """
        SELECT table_name || '.' || column_name || ' ' || data_type || CASE WHEN is_nullable = 'NO' THEN ' not null' ELSE '' END
          || CASE WHEN EXISTS (
            SELECT 1 FROM information_schema.table_constraints AS k JOIN information_schema.key_column_usage AS u USING (constraint_schema, constraint_name)
            WHERE k.constraint_type = 'PRIMARY KEY' AND u.table_name = columns.table_name AND u.column_name = columns.column_name) THEN ' key' ELSE '' END
        FROM information_schema.columns AS columns JOIN information_schema.tables AS tables USING (table_schema, table_name)
        WHERE table_schema = 'public' AND table_type = 'BASE TABLE' AND table_name <> 'migrations'
        """;

    private readonly TestStore _server = TestStore.OnServer();
    private readonly string _folder = Directory.CreateTempSubdirectory("cutshop-").FullName;

    private string DatabaseFile => Path.Combine(_folder, "cutshop.db");

    [Fact]
    public void Every_migration_has_a_file_of_the_same_number_and_name_for_each_store() =>
        Assert.Equal(Migration.ForSqlite.Select(migration => $"postgresql/{migration.Name}"), Migration.ForPostgres.Select(migration => migration.Name));

    [Fact]
    public void A_migration_s_place_is_the_number_in_its_name() =>
        Assert.All(Migration.ForSqlite, migration => Assert.StartsWith(migration.Number.ToString("0000_", CultureInfo.InvariantCulture), migration.Name, StringComparison.Ordinal));

    [Fact]
    public void Tables_columns_types_keys_and_nulls_are_the_same() => AssertSame(Columns, ServerColumns);

    [Fact]
    public void Foreign_keys_are_the_same() => AssertSame(
        """
        SELECT m.name || '.' || k."from" || ' ' || k."table" || '.' || k."to" FROM sqlite_schema AS m JOIN pragma_foreign_key_list(m.name) AS k WHERE m.type = 'table'
        """,
        """
        SELECT c.conrelid::regclass || '.' || a.attname || ' ' || c.confrelid::regclass || '.' || f.attname
        FROM pg_constraint AS c JOIN pg_attribute AS a ON a.attrelid = c.conrelid AND a.attnum = c.conkey[1]
        JOIN pg_attribute AS f ON f.attrelid = c.confrelid AND f.attnum = c.confkey[1] WHERE c.contype = 'f'
        """);

    [Fact]
    public void Views_and_triggers_of_a_file_are_there_on_a_server_too()
    {
        // The text index of a file is kept by triggers; a server keeps its own.
        var onFile = OnFile("SELECT name FROM sqlite_schema WHERE type IN ('view', 'trigger') AND name NOT LIKE 'jobs_text%'");
        var onServer = OnServer("SELECT tgname FROM pg_trigger WHERE NOT tgisinternal UNION SELECT viewname FROM pg_views WHERE schemaname = 'public'");
        Assert.NotEmpty(onFile);
        Assert.Empty(onFile.Except(onServer));
    }

    [Fact]
    public void Indexes_have_the_same_names() => AssertSame(
        "SELECT name FROM sqlite_schema WHERE type = 'index' AND sql IS NOT NULL UNION SELECT 'jobs_text'",
        "SELECT indexname FROM pg_indexes WHERE schemaname = 'public' AND indexname NOT LIKE '%\\_pkey' AND indexname NOT LIKE '%\\_key'");

    [Fact]
    public void What_a_new_shop_has_in_its_tables_is_the_same() => AssertSame(
        "SELECT name || ' ' || told FROM history_subjects", "SELECT name || ' ' || told FROM history_subjects");

    [Fact]
    public void A_server_sorts_every_text_by_its_bytes_as_a_file_does() => Assert.Empty(OnServer(
        """
        SELECT table_name || '.' || column_name FROM information_schema.columns
        WHERE table_schema = 'public' AND data_type = 'text' AND table_name <> 'migrations' AND collation_name IS DISTINCT FROM 'C'
          AND table_name NOT IN (SELECT viewname FROM pg_views WHERE schemaname = 'public')
        """));

    [Fact]
    public void A_database_of_a_newer_program_is_left_alone()
    {
        OnServer("INSERT INTO migrations (number, name, applied_at) VALUES (9999, 'later', now()) RETURNING name");
        var e = Assert.Throws<InvalidDataException>(() => _server.Open());
        Assert.Contains("Use a newer program", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Programs_that_start_together_bring_one_new_database_up_to_date_once()
    {
        var bare = PostgresServer.NewBareDatabase();
        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => ShopDatabase.OpenOnServer(bare, _folder, TimeProvider.System).Dispose(), TestContext.Current.CancellationToken)));
        using (var shop = ShopDatabase.OpenOnServer(bare, _folder, TimeProvider.System))
            Assert.Equal(Migration.ForPostgres.Count, shop.Read(session => session.Value<long>("SELECT count(*) FROM migrations")));
        PostgresServer.Drop(bare);
    }

    public void Dispose()
    {
        _server.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private void AssertSame(string onFile, string onServer)
    {
        var expected = OnFile(onFile);
        Assert.NotEmpty(expected);
        Assert.Equal(expected, OnServer(onServer));
    }

    private List<string> OnFile(string sql)
    {
        ShopDatabase.Open(DatabaseFile, TimeProvider.System).Dispose();
        using var connection = new SqliteConnection($"Data Source={DatabaseFile};Pooling=False");
        return Query(connection, sql);
    }

    private List<string> OnServer(string sql)
    {
        using var connection = new NpgsqlConnection(_server.Connection);
        return Query(connection, sql);
    }

    private static List<string> Query(System.Data.Common.DbConnection connection, string sql)
    {
        connection.Open();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // The texts are this file's own.
        command.CommandText = sql;
#pragma warning restore CA2100
        using var reader = command.ExecuteReader();
        var rows = new List<string>();
        while (reader.Read())
            rows.Add(Convert.ToString(reader.GetValue(0), CultureInfo.InvariantCulture)!);
        rows.Sort(StringComparer.Ordinal);
        return rows;
    }
}
