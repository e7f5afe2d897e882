using System.Collections.Concurrent;
using System.Data.Common;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using CutShop.Shop.Store;
using Dapper;
using Microsoft.Data.Sqlite;

namespace CutShop.Shop.Maintenance;

/// <summary>A table of the database as text, a JSON object a row, in the order of its key; and back. It is the same text on both stores.</summary>
/// <param name="Name">The table.</param>
/// <param name="Columns">Its columns in order.</param>
internal sealed record TableText(string Name, IReadOnlyList<TableColumn> Columns)
{
    private static readonly JsonWriterOptions Readable = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly ConcurrentDictionary<long, IReadOnlyList<TableText>> Known = new();

    private string ColumnList => string.Join(", ", Columns.Select(column => Quoted(column.Name)));

    /// <summary>The tables that hold the shop as of a migration, by name. An index for searching text is none, for it is made of them, nor is the history's epoch, which belongs to one database.</summary>
    public static IReadOnlyList<TableText> All(long migration) => Known.GetOrAdd(migration, Made);

    /// <summary>The rows, each a line of JSON.</summary>
    public IEnumerable<string> Lines(ShopSession session)
    {
        var key = Columns.Where(column => column.Key > 0).OrderBy(column => column.Key).Select(column => Quoted(column.Name));
        return session.Rows($"SELECT {ColumnList} FROM {Quoted(Name)} ORDER BY {string.Join(", ", key)}").Select(Line);
    }

    /// <summary>Puts rows from their lines in place of those that are there.</summary>
    /// <returns>How many.</returns>
    /// <exception cref="InvalidDataException">A line is no row of this table.</exception>
    public long Fill(ShopSession session, IEnumerable<string> lines)
    {
        var row = 0L;
        session.Execute($"DELETE FROM {Quoted(Name)}");
        try
        {
            session.Execute(
                $"INSERT INTO {Quoted(Name)} ({ColumnList}) VALUES ({string.Join(", ", Columns.Select((_, i) => $"@p{i}"))})",
                lines.Select(line => Values(line, ++row)));
            return row;
        }
        catch (DbException e) when (StorageError.Of(e) is null)
        {
            throw new InvalidDataException(StoreReplies.Say("RowNotStored", row, Name, e.Message), e);
        }
    }

    private static string Quoted(string name) => $"\"{name.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    private static List<TableText> Made(long migration)
    {
        using var connection = SqliteMigrations.InMemory(migration);
        return [.. connection.Texts("SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite_%' AND name <> 'history_epoch' ORDER BY name")
            .Select(name => new TableText(name, ColumnsOf(connection, name)))];
    }

    private static List<TableColumn> ColumnsOf(SqliteConnection connection, string table)
    {
        using var command = connection.Command("SELECT name, type, pk FROM pragma_table_info(@table) ORDER BY cid");
        command.Parameters.AddWithValue("@table", table);
        using var reader = command.ExecuteReader();
        var columns = new List<TableColumn>();
        while (reader.Read())
            columns.Add(new(reader.GetString(0), reader.GetString(1).ToUpperInvariant(), reader.GetInt32(2)));
        return columns;
    }

    private string Line(DbDataReader reader)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, Readable))
        {
            json.WriteStartObject();
            foreach (var (i, column) in Columns.Index())
                Write(json, column.Name, reader.GetValue(i));
            json.WriteEndObject();
        }
        return Encoding.UTF8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length);
    }

    private static void Write(Utf8JsonWriter json, string name, object value)
    {
        switch (value)
        {
            case DBNull:
                json.WriteNull(name);
                break;
            case long number:
                json.WriteNumber(name, number);
                break;
            default:
                json.WriteString(name, (string)value);
                break;
        }
    }

    private DynamicParameters Values(string line, long row)
    {
        try
        {
            using var json = JsonDocument.Parse(line);
            if (json.RootElement.EnumerateObject().Count() != Columns.Count)
                throw new InvalidDataException(StoreReplies.Say("RowColumns", row, Name));
            var values = new DynamicParameters();
            foreach (var (i, column) in Columns.Index())
                values.Add($"p{i}", column.Read(json.RootElement.GetProperty(column.Name)));
            return values;
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            throw new InvalidDataException(StoreReplies.Say("RowNotRow", row, Name, e.Message), e);
        }
    }
}

/// <summary>A column of a table.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Type">INTEGER or TEXT: every table is strict, and no other type is used.</param>
/// <param name="Key">Its place in the table's key, from 1; 0 where it is not in it.</param>
internal sealed record TableColumn(string Name, string Type, int Key)
{
    /// <summary>A value of this column from JSON.</summary>
    public object? Read(JsonElement value) => value.ValueKind == JsonValueKind.Null
        ? null
        : Type == "INTEGER" ? value.GetInt64() : value.GetString()!;
}
