using Microsoft.Data.Sqlite;

namespace CutShop.Shop.Store;

/// <summary>
/// Tells whether anything in the database has changed, whoever changed it: this program or another on the same file. It asks
/// SQLite on a connection that never writes, which costs a look at the log's head.
/// </summary>
internal sealed class ChangeWatch(Func<SqliteConnection> connect) : IDisposable
{
    private readonly Lock _lock = new();
    private SqliteConnection? _connection;
    private SqliteCommand? _command;

    /// <summary>A number that is another after each change.</summary>
    public long Now()
    {
        lock (_lock)
        {
            if (_command is null)
            {
                _connection = connect();
                _command = _connection.Command("PRAGMA data_version");
            }
            return (long)_command.ExecuteScalar()!;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _command?.Dispose();
        _connection?.Dispose();
    }
}
