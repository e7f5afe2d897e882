using CutShop.Shop.Store;
using Npgsql;

namespace CutShop.Shop.Maintenance;

/// <summary>A database on a server, opened for its care.</summary>
internal sealed class MaintainedServer : MaintainedStore
{
    private readonly NpgsqlDataSource _source;
    private readonly TimeProvider _time;

    private MaintainedServer(NpgsqlDataSource source, TimeProvider time) => (_source, _time) = (source, time);

    /// <inheritdoc/>
    public override long Version => Read(PostgresMigrations.Applied);

    /// <summary>Opens a database that is there.</summary>
    /// <exception cref="InvalidDataException">This is no connection string.</exception>
    /// <exception cref="IOException">The server does not answer, or does not let this program in.</exception>
    public static MaintainedServer Open(string connection, TimeProvider time)
    {
        SqlTypes.Register();
        var source = PostgresStore.Source(connection);
        try
        {
            using var first = source.OpenConnection();
            return new(source, time);
        }
        catch (NpgsqlException e)
        {
            source.Dispose();
            throw PostgresStore.CannotBeUsed(e);
        }
    }

    /// <inheritdoc/>
    public override T Read<T>(Func<ShopSession, T> work) => PostgresStore.Read(_source, _time, work);

    /// <inheritdoc/>
    public override IEnumerable<CheckFinding> OwnFindings(ShopSession session) => ServerSchema.Of(session);

    /// <inheritdoc/>
    public override void Dispose() => _source.Dispose();
}
