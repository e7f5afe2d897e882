using System.Diagnostics;
using System.Globalization;
using Npgsql;

namespace CutShop.Testing.Stores;

/// <summary>
/// A PostgreSQL server of this test run's own, on a free port of this machine, with a new cluster in a temporary folder. It starts
/// when it is first asked for and stops with the process.
/// </summary>
public sealed class PostgresServer : IDisposable
{
    private const string User = "shop";
    private const string Template = "cutshop_template";

    /// <summary>Runs a server until its input ends, which it does when this process ends, however it ends.</summary>
    private const string WhileInputLasts = "\"$@\" & server=$!; cat > /dev/null; kill -INT $server; wait $server";

    private static readonly Lazy<PostgresServer> Started = new(Start);

    private readonly string _folder;
    private readonly int _port;
    private readonly string[] _command;
    private Process? _server;
    private int _databases;

    private PostgresServer(string folder, int port, string[] command) => (_folder, _port, _command) = (folder, port, command);

    /// <summary>
    /// Whether a commit waits until it is on the disk. Nothing in the server outlives the run, so tests need not wait; who measures
    /// sets this before the server starts.
    /// </summary>
    public static bool WaitsForTheDisk { get; set; }

    /// <summary>Starts a server beside the usual one, to be stopped and started by its test.</summary>
    public static PostgresServer OfItsOwn() => Start();

    /// <summary>Makes a database with the shop's tables, empty, on this server.</summary>
    /// <returns>Its connection string.</returns>
    public string NewShop() => Copy(Template);

    /// <summary>Makes a database with the shop's tables, empty.</summary>
    /// <returns>Its connection string.</returns>
    public static string NewDatabase() => Started.Value.Copy(Template);

    /// <summary>Makes a database without tables.</summary>
    public static string NewBareDatabase() => Started.Value.Copy("template1");

    /// <summary>Makes a database with nothing in it, to restore into.</summary>
    public static string NewEmptyDatabase() => Started.Value.Copy("template0");

    /// <summary>Runs one of the server's own programs on a database, such as pg_dump, to its end.</summary>
    /// <param name="connection">The database.</param>
    /// <param name="program">The program, by name.</param>
    /// <param name="arguments">Its arguments, but for the database.</param>
    public static void RunTool(string connection, string program, params string[] arguments)
    {
        var parts = new NpgsqlConnectionStringBuilder(connection);
        RunToEnd([Path.Combine(Programs(), program), $"--dbname=host={parts.Host} port={parts.Port} user={parts.Username} dbname={parts.Database}", .. arguments]);
    }

    /// <summary>Drops a database, whoever is still connected.</summary>
    public static void Drop(string connection)
    {
        var database = new NpgsqlConnectionStringBuilder(connection).Database;
        Started.Value.Run($"DROP DATABASE {database} WITH (FORCE)");
    }

    private string Copy(string template)
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"shop_{Interlocked.Increment(ref _databases)}");
        Run($"CREATE DATABASE {name} TEMPLATE {template}");
        return ConnectionTo(name);
    }

    private static PostgresServer Start()
    {
        var (folder, port) = (Directory.CreateTempSubdirectory("cutshop-pg-").FullName, FreePort.Find());
        var data = Path.Combine(folder, "data");
        var bin = Programs();
        var isRoot = Environment.UserName == "root";
        if (isRoot)
            RunToEnd("chown", "postgres", folder);
        // The server will not run as root: Debian's package brings a user for it.
        string[] asWhom = isRoot ? ["runuser", "-u", "postgres", "--"] : [];
        RunToEnd([.. asWhom, Path.Combine(bin, "initdb"), "-D", data, "-U", User, "-A", "trust", "-E", "UTF8", "--locale=C", "--no-sync"]);
        string[] server =
        [
            .. asWhom, "sh", "-c", WhileInputLasts, "sh", Path.Combine(bin, "postgres"), "-D", data, "-h", "127.0.0.1", "-k", folder, "-p", port.ToString(CultureInfo.InvariantCulture),
            .. WaitsForTheDisk ? Array.Empty<string>() : ["-c", "fsync=off", "-c", "full_page_writes=off"], "-c", "max_connections=300", "-c", "autovacuum=off", "-c", "log_min_messages=panic", "-c", "log_min_error_statement=panic",
        ];
        var started = new PostgresServer(folder, port, server);
        started.Up();
        AppDomain.CurrentDomain.ProcessExit += (_, _) => started.Dispose();
        started.Run($"CREATE DATABASE {Template} TEMPLATE template0");
        ShopDatabase.OpenOnServer(started.ConnectionTo(Template), folder, TimeProvider.System).Dispose();
        return started;
    }

    /// <summary>Starts it after <see cref="Down"/>, and waits until it answers.</summary>
    public void Up()
    {
        _server = Process.Start(new ProcessStartInfo(_command[0], _command[1..]) { UseShellExecute = false, RedirectStandardInput = true, WorkingDirectory = _folder })!;
        WaitUntilItAnswers();
    }

    /// <summary>Stops it, whoever is connected and whatever they are at.</summary>
    public void Down()
    {
        _server?.StandardInput.Close();
        _server?.WaitForExit();
        _server?.Dispose();
        _server = null;
    }

    public void Dispose()
    {
        Down();
        if (Directory.Exists(_folder))
            Directory.Delete(_folder, recursive: true);
    }

    private void WaitUntilItAnswers()
    {
        for (var tries = 0; ; tries++)
        {
            try
            {
                Run("SELECT 1");
                return;
            }
            catch (NpgsqlException) when (tries < 100 && _server is { HasExited: false })
            {
                Thread.Sleep(100);
            }
        }
    }

    private void Run(string sql)
    {
        using var connection = new NpgsqlConnection(ConnectionTo("postgres"));
        connection.Open();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // The names are this class's own.
        command.CommandText = sql;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }

    private string ConnectionTo(string database) => string.Create(
        CultureInfo.InvariantCulture, $"Host=127.0.0.1;Port={_port};Username={User};Database={database};Pooling={(database == "postgres" ? "false" : "true")}");

    private static string Programs() =>
        Directory.Exists("/usr/lib/postgresql")
        && Directory.EnumerateDirectories("/usr/lib/postgresql").Select(version => Path.Combine(version, "bin")).Where(bin => File.Exists(Path.Combine(bin, "initdb")))
            .Order(StringComparer.Ordinal).LastOrDefault() is { } bin
            ? bin
            : throw new InvalidOperationException("These tests need a PostgreSQL server: install Debian's package postgresql.");

    private static void RunToEnd(params string[] command)
    {
        using var process = Process.Start(new ProcessStartInfo(command[0], command[1..]) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = "/" })!;
        var (said, wrong) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{string.Join(' ', command)}: {said.Result}{wrong.Result}");
    }
}
