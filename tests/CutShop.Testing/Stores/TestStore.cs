using System.Data.Common;
using System.Globalization;
using System.Text;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace CutShop.Testing.Stores;

/// <summary>
/// A place for one shop's database, gone when disposed: a file, or a database on a server where the test run asks for it with
/// <c>CUTSHOP_TEST_STORE=postgresql</c>. What runs on one must run on the other.
/// </summary>
public sealed class TestStore : IDisposable
{
    /// <summary>A new shop's file, made by the migrations once; as a server has a template.</summary>
    private static readonly Lazy<byte[]> NewFile = new(MakeNewFile);

    private readonly string? _connection;
    private readonly bool _isCopy;

    /// <summary>A place of the kind that the test run asks for, with the tables of a new shop.</summary>
    public TestStore()
        : this(IsOnServer ? PostgresServer.NewDatabase() : null, isCopy: !IsOnServer)
    {
    }

    private TestStore(string? connection, bool isCopy = false)
    {
        Folder = Directory.CreateTempSubdirectory("cutshop-").FullName;
        (_connection, _isCopy) = (connection, isCopy);
    }

    /// <summary>True where this run's shops are on a server.</summary>
    public static bool IsOnServer { get; } = Environment.GetEnvironmentVariable("CUTSHOP_TEST_STORE") switch
    {
        null or "" or "sqlite" => false,
        "postgresql" => true,
        var other => throw new InvalidOperationException($"CUTSHOP_TEST_STORE is \"{other}\"; accepted: sqlite, postgresql"),
    };

    /// <summary>The shop's folder.</summary>
    public string Folder { get; }

    /// <summary>The database file, where it is one.</summary>
    public string DatabaseFile => Path.Combine(Folder, "cutshop.db");

    /// <summary>The connection string, where the database is on a server.</summary>
    public string Connection => _connection ?? throw new InvalidOperationException("This shop is a file.");

    /// <summary>A database file in which no table is made yet, whatever the test run asks for.</summary>
    public static TestStore InFile() => new(connection: null);

    /// <summary>A place on a server, whatever the test run asks for.</summary>
    public static TestStore OnServer() => new(PostgresServer.NewDatabase());

    /// <summary>A place on a server in which no table is made yet.</summary>
    public static TestStore OnServerWithoutTables() => new(PostgresServer.NewBareDatabase());

    /// <summary>Opens the database, which may be open already.</summary>
    public ShopDatabase Open(TimeProvider? time = null)
    {
        if (_isCopy && !File.Exists(DatabaseFile))
            File.WriteAllBytes(DatabaseFile, NewFile.Value);
        return _connection is null ? ShopDatabase.Open(DatabaseFile, time ?? TimeProvider.System) : ShopDatabase.OpenOnServer(_connection, Folder, time ?? TimeProvider.System);
    }

    /// <summary>Everything in the database, as text.</summary>
    public string Dump()
    {
        using DbConnection connection = _connection is null ? new SqliteConnection($"Data Source={DatabaseFile};Pooling=False") : new NpgsqlConnection(_connection);
        connection.Open();
        var text = new StringBuilder();
        foreach (var table in Query(connection, _connection is null
            ? "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' ORDER BY name"
            : "SELECT tablename FROM pg_tables WHERE schemaname = 'public' ORDER BY tablename"))
        {
            text.Append(table).Append('\n');
            foreach (var row in Query(connection, $"SELECT * FROM {table}").Order(StringComparer.Ordinal))
                text.Append(row).Append('\n');
        }
        return text.ToString();
    }

    public void Dispose()
    {
        if (_connection is not null)
            PostgresServer.Drop(_connection);
        Directory.Delete(Folder, recursive: true);
    }

    private static byte[] MakeNewFile()
    {
        using var store = InFile();
        store.Open().Dispose();
        return File.ReadAllBytes(store.DatabaseFile);
    }

#pragma warning disable CA2100 // The names come from the schema.
    private static List<string> Query(DbConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        using var reader = command.ExecuteReader();
        var rows = new List<string>();
        while (reader.Read())
            rows.Add(string.Join('|', Enumerable.Range(0, reader.FieldCount).Select(i => Convert.ToString(reader.GetValue(i), CultureInfo.InvariantCulture))));
        return rows;
    }
#pragma warning restore CA2100
}
