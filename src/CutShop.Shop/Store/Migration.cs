namespace CutShop.Shop.Store;

/// <summary>One numbered file of db/migrations.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Name">Its file name.</param>
internal sealed record Migration(int Number, string Name)
{
    private const string PostgresFolder = "postgresql/";

    /// <summary>The files for SQLite, in order.</summary>
    public static IReadOnlyList<Migration> ForSqlite { get; } = InOrder(name => !name.Contains('/', StringComparison.Ordinal));

    /// <summary>The files for PostgreSQL, in order: as many, with the same numbers.</summary>
    public static IReadOnlyList<Migration> ForPostgres { get; } = InOrder(name => name.StartsWith(PostgresFolder, StringComparison.Ordinal));

    /// <summary>The number of the newest, which is the same for both.</summary>
    public static int Newest => ForSqlite.Count;

    /// <summary>The file's name without its folder, the same for both stores.</summary>
    public string FileName => Name[(Name.LastIndexOf('/') + 1)..];

    /// <summary>The SQL.</summary>
    public string Text()
    {
        using var reader = new StreamReader(typeof(Migration).Assembly.GetManifestResourceStream(Name)!);
        return reader.ReadToEnd();
    }

    /// <summary>Refuses a database that has more migrations than this program.</summary>
    public static void Refuse(long applied, IReadOnlyList<Migration> known)
    {
        if (applied > known.Count)
            throw new InvalidDataException(StoreReplies.Say("NewerDatabase", applied, known.Count));
    }

    private static List<Migration> InOrder(Func<string, bool> isMine) =>
        [.. typeof(Migration).Assembly.GetManifestResourceNames()
            .Where(name => name.EndsWith(".sql", StringComparison.Ordinal) && isMine(name))
            .Order(StringComparer.Ordinal)
            .Select((name, i) => new Migration(i + 1, name))];
}
