namespace CutShop.Shop.Store;

/// <summary>
/// The shop's database: a file of its own, or a database on a server that several processes share. Writes go one at a time, in
/// the order they come, each in a transaction that is on the disk when the call returns; reads see one moment and never wait for a
/// write.
/// </summary>
public abstract class ShopDatabase : IDisposable
{
    /// <summary>A question that a store in order answers whatever is in it.</summary>
    private protected const string ProbeQuery = "SELECT count(*) FROM settings";

    private protected ShopDatabase(string folder, TimeProvider time) => (Folder, Time) = (System.IO.Path.GetFullPath(folder), time);

    /// <summary>A number that is another after each change, by whichever program; it means nothing after a restart.</summary>
    public abstract long ChangeNumber { get; }

    /// <summary>The shop's clock.</summary>
    public TimeProvider Time { get; }

    /// <summary>The shop's folder, for what is not in the database: paper, and the keys that cookies are sealed with.</summary>
    public string Folder { get; }

    /// <summary>The database file; empty where the database is on a server.</summary>
    public virtual string Path => "";

    /// <summary>True where the database is a file.</summary>
    public bool IsFile => Path.Length > 0;

    /// <summary>What is measured of this shop.</summary>
    public ShopMeter Meter { get; } = new();

    /// <summary>Called before each statement of a write, so that a test can break one.</summary>
    internal Action? BeforeEachWrite { get; set; }

    /// <summary>Opens a database file, makes it where there is none, and brings its tables up to date.</summary>
    /// <param name="path">The database file, in the shop's folder.</param>
    /// <param name="time">The clock.</param>
    /// <exception cref="InvalidDataException">The database was made by a newer version of the program.</exception>
    public static ShopDatabase Open(string path, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(time);
        SqlTypes.Register();
        return SqliteStore.OpenFile(path, time);
    }

    /// <summary>Opens a database on a PostgreSQL server and brings its tables up to date. The database itself is there already.</summary>
    /// <param name="connection">The connection string, such as <c>Host=db.example;Database=cutshop;Username=cutshop</c>.</param>
    /// <param name="folder">The shop's folder.</param>
    /// <param name="time">The clock.</param>
    /// <exception cref="InvalidDataException">This is no connection string, or the database was made by a newer version of the program.</exception>
    /// <exception cref="IOException">The server does not answer, or does not let this program in.</exception>
    public static ShopDatabase OpenOnServer(string connection, string folder, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(time);
        SqlTypes.Register();
        return PostgresStore.Connect(connection, folder, time);
    }

    /// <summary>Reads, all of it as of one moment.</summary>
    public abstract T Read<T>(Func<ShopSession, T> work);

    /// <summary>Reads a little as one who comes anew: nothing counts that this program has kept in its memory. Fails as any read does.</summary>
    public abstract void Probe();

    /// <summary>
    /// Writes: all of <paramref name="work"/> is stored, or nothing where it throws. It is on the disk when the task ends. Nobody
    /// else writes meanwhile, in this process or another.
    /// </summary>
    public abstract Task<T> WriteAsync<T>(Func<ShopSession, T> work, CancellationToken cancel = default);

    /// <summary>
    /// Writes as <see cref="WriteAsync"/> does, but beside others who take tickets: <paramref name="work"/> changes only rows that it
    /// holds by <see cref="Dialect.LockFirstAvailable"/>. One person's requests still come one after the other.
    /// </summary>
    /// <param name="who">The person.</param>
    /// <param name="work">What is done.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    internal abstract Task<T> TakeTicketAsync<T>(string who, Func<ShopSession, T> work, CancellationToken cancel);

    /// <inheritdoc/>
    public void Dispose()
    {
        Meter.Dispose();
        Dispose(disposing: true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Gives back what the store holds.</summary>
    protected abstract void Dispose(bool disposing);
}
