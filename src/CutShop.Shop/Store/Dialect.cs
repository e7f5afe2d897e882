namespace CutShop.Shop.Store;

/// <summary>
/// The few places where the two databases do not read the same SQL. Every other statement is one text for both: whole numbers are
/// cast to bigint where they are computed, and nothing is used that only one of them knows.
/// </summary>
internal abstract record Dialect
{
    /// <summary>SQLite's.</summary>
    public static Dialect Sqlite { get; } = new SqliteDialect();

    /// <summary>PostgreSQL's.</summary>
    public static Dialect Postgres { get; } = new PostgresDialect();

    /// <summary>True where one writes at a time, so that nothing changes between a write's own statements.</summary>
    public abstract bool HasOneWriter { get; }

    /// <summary>A join that is made in the order in which it is written, where the planner would choose a worse one.</summary>
    public abstract string JoinAsWritten { get; }

    /// <summary>A query of ids of jobs that have @sought in their number or customer, answered by an index of their text.</summary>
    public abstract string JobsWithText { get; }

    /// <summary>A query of ids that are given as a JSON array.</summary>
    /// <param name="value">SQL of the array's text.</param>
    public abstract string Ids(string value);

    /// <summary>A condition on a row of jobs: it has @text in its number or customer.</summary>
    public abstract string JobHasText { get; }

    /// <summary>
    /// A query of the statements after which rows may be put into tables as they were: no trigger changes them, and they may come
    /// before the rows they belong to. It and <see cref="EnableConstraints"/> are asked together, before the first of them runs.
    /// </summary>
    public abstract string DisableConstraints { get; }

    /// <summary>A query of the statements, in order, after which tables are as before, hold what belongs together, and go on with the next number.</summary>
    public abstract string EnableConstraints { get; }

    /// <summary>A table that is to be read in the order of one of its indexes.</summary>
    public abstract string ReadBy(string table, string index);

    /// <summary>A condition: two texts are the same but for capital letters from A to Z.</summary>
    /// <param name="column">SQL of a stored text.</param>
    /// <param name="value">SQL of the text it is held against.</param>
    public abstract string AreAlike(string column, string value);

    /// <summary>What @sought of <see cref="JobsWithText"/> is for a text as typed.</summary>
    public abstract string Sought(string text);

    /// <summary>SQL of a text that is another one when the server's own tools have put the history back to an earlier moment; empty where only this program does that.</summary>
    public abstract string HistoryPlace { get; }

    /// <summary>Ends a query of one row so that it is this transaction's alone, and passes over a row that is another's.</summary>
    /// <param name="tables">The tables whose rows are held.</param>
    public abstract string LockFirstAvailable(params string[] tables);

    private sealed record SqliteDialect : Dialect
    {
        public override bool HasOneWriter => true;

        public override string JoinAsWritten => "CROSS JOIN";

        public override string JobsWithText => "SELECT rowid AS id FROM jobs_text WHERE jobs_text MATCH @sought";

        public override string Ids(string value) => $"SELECT value FROM json_each({value})";

        public override string JobHasText => "(instr(lower(number), lower(@text)) > 0 OR instr(lower(customer), lower(@text)) > 0)";

        // What belongs together is looked at when the transaction ends.
        public override string DisableConstraints =>
            """
            SELECT 'PRAGMA defer_foreign_keys = ON'
            UNION ALL SELECT 'DROP TRIGGER ' || name FROM sqlite_schema WHERE type = 'trigger'
            """;

        public override string EnableConstraints =>
            """
            SELECT 'INSERT INTO ' || name || ' (' || name || ') VALUES (''rebuild'')' FROM pragma_table_list WHERE schema = 'main' AND type = 'virtual'
            UNION ALL SELECT sql FROM sqlite_schema WHERE type = 'trigger'
            """;

        public override string ReadBy(string table, string index) => $"{table} INDEXED BY {index}";

        public override string AreAlike(string column, string value) => $"{column} = {value} COLLATE NOCASE";

        public override string Sought(string text) => $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

        public override string HistoryPlace => "''";

        public override string LockFirstAvailable(params string[] tables) => " LIMIT 1";
    }

    private sealed record PostgresDialect : Dialect
    {
        public override bool HasOneWriter => false;

        public override string JoinAsWritten => "JOIN";

        public override string JobsWithText =>
            """SELECT id FROM jobs WHERE lower(number COLLATE "default") LIKE lower(@sought) OR lower(customer COLLATE "default") LIKE lower(@sought)""";

        public override string Ids(string value) => $"SELECT CAST(value AS bigint) FROM json_array_elements_text(CAST({value} AS json))";

        public override string JobHasText =>
            """(strpos(lower(number COLLATE "default"), lower(@text)) > 0 OR strpos(lower(customer COLLATE "default"), lower(@text)) > 0)""";

        public override string DisableConstraints =>
            """
            SELECT format('ALTER TABLE %s ALTER CONSTRAINT %I DEFERRABLE INITIALLY DEFERRED', conrelid::regclass, conname)
            FROM pg_constraint WHERE contype = 'f' AND connamespace = 'public'::regnamespace
            UNION ALL SELECT format('ALTER TABLE %I DISABLE TRIGGER USER', tablename) FROM pg_tables WHERE schemaname = 'public'
            """;

        public override string EnableConstraints =>
            """
            SELECT statement FROM (
              SELECT 1 AS place, 'SET CONSTRAINTS ALL IMMEDIATE' AS statement
              UNION ALL SELECT 2, format('ALTER TABLE %s ALTER CONSTRAINT %I NOT DEFERRABLE', conrelid::regclass, conname)
              FROM pg_constraint WHERE contype = 'f' AND connamespace = 'public'::regnamespace
              UNION ALL SELECT 2, format('ALTER TABLE %I ENABLE TRIGGER USER', tablename) FROM pg_tables WHERE schemaname = 'public'
              UNION ALL SELECT 3, format('SELECT setval(%L, coalesce(max(%I), 1), count(*) > 0) FROM %I', number, column_name, table_name)
              FROM (SELECT table_name, column_name, pg_get_serial_sequence(quote_ident(table_name), column_name) AS number
                    FROM information_schema.columns WHERE table_schema = 'public') AS numbered
              WHERE number IS NOT NULL) AS steps
            ORDER BY place
            """;

        public override string ReadBy(string table, string index) => table;

        public override string AreAlike(string column, string value) => $"lower({column}) = lower({value} COLLATE \"C\")";

        public override string Sought(string text) =>
            $"%{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("%", "\\%", StringComparison.Ordinal).Replace("_", "\\_", StringComparison.Ordinal)}%";

        // The database's number is new where a dump is put into a new database; the first eight digits of a log file's name are the timeline.
        public override string HistoryPlace =>
            "(SELECT oid || ' ' || left(pg_walfile_name(pg_current_wal_insert_lsn()), 8) FROM pg_database WHERE datname = current_database())";

        public override string LockFirstAvailable(params string[] tables) => $" LIMIT 1 FOR UPDATE OF {string.Join(", ", tables)} SKIP LOCKED";
    }
}
