using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Microsoft.Data.Sqlite;

namespace CutShop.Shop;

/// <summary>A table of the database as text, a JSON object a row, in the order of its key; and back.</summary>
/// <param name="Name">The table.</param>
/// <param name="Columns">Its columns in order.</param>
internal sealed record TableText(string Name, IReadOnlyList<TableColumn> Columns)
{
    private static readonly JsonWriterOptions Readable = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private string ColumnList => string.Join(", ", Columns.Select(column => Quoted(column.Name)));

    /// <summary>The tables that hold the shop; an index for searching text is none, for it is made of them.</summary>
    public static IReadOnlyList<TableText> All(SqliteConnection connection) =>
        [.. connection.Texts("SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name")
            .Select(name => new TableText(name, ColumnsOf(connection, name)))];

    /// <summary>The rows, each a line of JSON.</summary>
    public IEnumerable<string> Lines(SqliteConnection connection)
    {
        var key = Columns.Where(column => column.Key > 0).OrderBy(column => column.Key).Select(column => Quoted(column.Name)).ToList();
        using var command = connection.Command($"SELECT {ColumnList} FROM {Quoted(Name)} ORDER BY {(key.Count == 0 ? "rowid" : string.Join(", ", key))}");
        using var reader = command.ExecuteReader();
        while (reader.Read())
            yield return Line(reader);
    }

    /// <summary>Adds rows from their lines.</summary>
    /// <returns>How many.</returns>
    /// <exception cref="InvalidDataException">A line is no row of this table.</exception>
    public long Insert(SqliteConnection connection, IEnumerable<string> lines)
    {
        using var command = connection.Command(
            $"INSERT INTO {Quoted(Name)} ({ColumnList}) VALUES ({string.Join(", ", Columns.Select((_, i) => $"@p{i}"))})");
        foreach (var i in Enumerable.Range(0, Columns.Count))
            command.Parameters.Add(new SqliteParameter($"@p{i}", null));
        var rows = 0L;
        foreach (var line in lines)
        {
            rows++;
            Set(command.Parameters, line, rows);
            command.ExecuteNonQuery();
        }
        return rows;
    }

    /// <summary>A name as SQL writes it.</summary>
    public static string Quoted(string name) => $"\"{name.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

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

    private string Line(SqliteDataReader reader)
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
            case double number:
                json.WriteNumber(name, number);
                break;
            case byte[] data:
                json.WriteBase64String(name, data);
                break;
            default:
                json.WriteString(name, (string)value);
                break;
        }
    }

    private void Set(SqliteParameterCollection parameters, string line, long row)
    {
        try
        {
            using var json = JsonDocument.Parse(line);
            if (json.RootElement.EnumerateObject().Count() != Columns.Count)
                throw new InvalidDataException($"Row {row} of {Name} does not have the columns of this table.");
            foreach (var (i, column) in Columns.Index())
                parameters[i].Value = column.Read(json.RootElement.GetProperty(column.Name));
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            throw new InvalidDataException(string.Create(CultureInfo.InvariantCulture, $"Row {row} of {Name} is not a row of this table: {e.Message}"), e);
        }
    }
}

/// <summary>A column of a table.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Type">INTEGER, REAL, TEXT or BLOB: every table is strict.</param>
/// <param name="Key">Its place in the table's key, from 1; 0 where it is not in it.</param>
internal sealed record TableColumn(string Name, string Type, int Key)
{
    /// <summary>A value of this column from JSON.</summary>
    public object Read(JsonElement value) => value.ValueKind == JsonValueKind.Null
        ? DBNull.Value
        : Type switch
        {
            "INTEGER" or "INT" => value.GetInt64(),
            "REAL" => value.GetDouble(),
            "BLOB" => value.GetBytesFromBase64(),
            _ => value.GetString()!,
        };
}
