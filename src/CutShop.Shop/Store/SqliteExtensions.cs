using Microsoft.Data.Sqlite;

namespace CutShop.Shop.Store;

/// <summary>Statements on a bare connection, in its transaction where it has one: pragmas, migrations, copies of whole tables.</summary>
internal static class SqliteExtensions
{
    /// <summary>A command of a text that is this program's own; names in it come from the schema and are quoted, values are parameters.</summary>
    public static SqliteCommand Command(this SqliteConnection connection, string sql)
    {
        var command = connection.CreateCommand();
#pragma warning disable CA2100 // No text of a person's comes here.
        command.CommandText = sql;
#pragma warning restore CA2100
        return command;
    }

    /// <summary>Runs a statement.</summary>
    public static void Run(this SqliteConnection connection, string sql)
    {
        using var command = connection.Command(sql);
        command.ExecuteNonQuery();
    }

    /// <summary>The one whole number that a query gives.</summary>
    public static long Number(this SqliteConnection connection, string sql)
    {
        using var command = connection.Command(sql);
        return (long)command.ExecuteScalar()!;
    }

    /// <summary>The first column of a query's rows.</summary>
    public static List<string> Texts(this SqliteConnection connection, string sql)
    {
        using var command = connection.Command(sql);
        using var reader = command.ExecuteReader();
        var texts = new List<string>();
        while (reader.Read())
            texts.Add(reader.GetString(0));
        return texts;
    }
}
