using System.Data;
using System.Data.Common;
using System.Diagnostics.CodeAnalysis;
using Microsoft.Data.Sqlite;

namespace CutShop.Shop.Store;

/// <summary>A command that borrows the cached statement of its text, and gives it back when it is disposed.</summary>
internal sealed class CachedCommand(CachedStatements statements) : DbCommand
{
    private SqliteCommand? _command;
    private DbTransaction? _transaction;

    /// <inheritdoc/>
    [AllowNull]
    public override string CommandText
    {
        get => _command?.CommandText ?? "";
        set
        {
            var next = statements.Take(value ?? "");
            next.Transaction = (SqliteTransaction?)_transaction;
            if (_command is { } before)
            {
                // The text was changed after its values were given.
                SqliteParameter[] values = [.. before.Parameters.Cast<SqliteParameter>()];
                before.Parameters.Clear();
                next.Parameters.AddRange(values);
                statements.GiveBack(before);
            }
            _command = next;
        }
    }

    /// <inheritdoc/>
    public override int CommandTimeout
    {
        get => Command.CommandTimeout;
        set => Command.CommandTimeout = value;
    }

    /// <inheritdoc/>
    public override CommandType CommandType
    {
        get => CommandType.Text;
        set
        {
            if (value != CommandType.Text)
                throw new NotSupportedException("Only text is run.");
        }
    }

    /// <inheritdoc/>
    public override bool DesignTimeVisible { get; set; }

    /// <inheritdoc/>
    public override UpdateRowSource UpdatedRowSource { get; set; }

    /// <inheritdoc/>
    protected override DbConnection? DbConnection
    {
        get => statements;
        set => throw new NotSupportedException("The command belongs to its connection.");
    }

    /// <inheritdoc/>
    protected override DbTransaction? DbTransaction
    {
        get => _transaction;
        set
        {
            _transaction = value;
            if (_command is not null)
                _command.Transaction = (SqliteTransaction?)value;
        }
    }

    /// <inheritdoc/>
    protected override DbParameterCollection DbParameterCollection => Command.Parameters;

    private SqliteCommand Command => _command ?? throw new InvalidOperationException("The command has no text yet.");

    /// <inheritdoc/>
    public override void Cancel() => Command.Cancel();

    /// <inheritdoc/>
    public override int ExecuteNonQuery() => Command.ExecuteNonQuery();

    /// <inheritdoc/>
    public override object? ExecuteScalar() => Command.ExecuteScalar();

    /// <inheritdoc/>
    public override void Prepare() => Command.Prepare();

    /// <inheritdoc/>
    protected override DbParameter CreateDbParameter() => Command.CreateParameter();

    /// <inheritdoc/>
    protected override DbDataReader ExecuteDbDataReader(CommandBehavior behavior) => Command.ExecuteReader(behavior);

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing && _command is { } command)
        {
            _command = null;
            statements.GiveBack(command);
        }
        base.Dispose(disposing);
    }
}
