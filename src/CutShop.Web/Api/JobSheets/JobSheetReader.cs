using System.Text.Json;
using System.Text.Json.Nodes;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;
using CutShop.Web.People;

namespace CutShop.Web.Api;

/// <summary>
/// Turns a job's sheet (docs/csv.md) into a job file. It checks only what a job file cannot say; everything else is checked
/// where job files are, and told by line and column.
/// </summary>
internal sealed class JobSheetReader
{
    private readonly List<ProblemPlace> _problems = [];
    private readonly Dictionary<string, SheetCell> _places = new() { ["$"] = new(1, 1) };

    private JobSheetReader()
    {
    }

    /// <summary>Reads a sheet.</summary>
    public static JobSheet Read(byte[] bytes)
    {
        var reader = new JobSheetReader();
        var tables = SheetRows.Read(bytes, reader._problems);
        var job = reader.Job(tables.GetValueOrDefault(SheetRows.JobTable));
        var lines = reader.Lines(tables.GetValueOrDefault(SheetRows.PostTable), tables.GetValueOrDefault(SheetRows.RopeTable));
        job["lines"] = lines;
        return new(JsonSerializer.SerializeToUtf8Bytes(job), reader._problems, reader._places);
    }

    private JsonObject Job(SheetTable? table)
    {
        if (table is null || table.Rows.Count != 1)
        {
            var at = table?.Rows.ElementAtOrDefault(1)?.Line ?? 1;
            _problems.Add(new("$", "", $"{table?.Rows.Count ?? 0} jobs; accepted: one table of the job, with one row under its names", at, 1));
            return [];
        }
        var row = table.Rows[0];
        var job = Fields(table, row, "$", ("number", "number"), ("customer", "customer"), ("due", "due"));
        job["rope"] = Rope(table, row, "$.rope") ?? [];
        if (Cell(table, row, "one lot") is { Length: > 0 } oneLot)
        {
            _places["$.oneLot"] = Place(table, row, "one lot");
            job["oneLot"] = oneLot.ToLowerInvariant() switch { "yes" => true, "no" => false, _ => oneLot };
        }
        job["allowances"] = Fields(table, row, "$.allowances", ("shrink", "shrink"), ("per piece", "perPiece"), ("round up", "roundUp"));
        return job;
    }

    private JsonArray Lines(SheetTable? posts, SheetTable? ropes)
    {
        var lines = new JsonArray();
        var order = new Dictionary<string, int>();
        foreach (var (mark, row) in WithLine(posts))
        {
            if (order.TryAdd(mark, lines.Count))
            {
                var path = $"$.lines[{lines.Count}]";
                _places[path] = _places[$"{path}.mark"] = Place(posts!, row, "line");
                lines.Add(new JsonObject { ["mark"] = mark, ["posts"] = new JsonArray(), ["sections"] = new JsonArray(), ["rows"] = new JsonArray() });
            }
            AddPost(lines[order[mark]]!.AsObject(), $"$.lines[{order[mark]}]", posts!, row);
        }
        foreach (var line in lines)
            DropLastSection(line!.AsObject(), $"$.lines[{line!.GetElementIndex()}]");
        foreach (var (mark, row) in WithLine(ropes))
        {
            if (order.TryGetValue(mark, out var index))
                AddRope(lines[index]!.AsObject(), $"$.lines[{index}]", ropes!, row);
            else
                Problem(ropes!, row, "line", mark, "accepted: a line that has posts");
        }
        return lines;
    }

    /// <summary>The rows with their line; an empty cell means the line above.</summary>
    private static IEnumerable<(string Mark, SheetRow Row)> WithLine(SheetTable? table)
    {
        var mark = "";
        foreach (var row in table?.Rows ?? [])
        {
            if (Cell(table!, row, "line") is { Length: > 0 } given)
                mark = given;
            yield return (mark, row);
        }
    }

    private void AddPost(JsonObject line, string path, SheetTable table, SheetRow row)
    {
        var posts = line["posts"]!.AsArray();
        posts.Add(Fields(
            table, row, $"{path}.posts[{posts.Count}]", ("post", "mark"), ("shape", "shape"), ("across", "across"), ("height", "height"), ("turn", "turn")));
        var sections = line["sections"]!.AsArray();
        sections.Add(Fields(
            table, row, $"{path}.sections[{sections.Count}]", ("clear", "clear"), ("centres", "centres"), ("rise", "rise"), ("sag", "sag"), ("slack", "slack")));
    }

    /// <summary>A section stands in the row of its first post, so the last post has none.</summary>
    private void DropLastSection(JsonObject line, string path)
    {
        var sections = line["sections"]!.AsArray();
        var last = sections[^1]!.AsObject();
        foreach (var (name, value) in last)
        {
            var cell = _places[$"{path}.sections[{sections.Count - 1}].{name}"];
            _problems.Add(new(path, value!.ToString(), "accepted: nothing here, since no section follows the last post of a line", cell.Line, cell.Column));
        }
        sections.RemoveAt(sections.Count - 1);
    }

    private void AddRope(JsonObject line, string path, SheetTable table, SheetRow row)
    {
        var rows = line["rows"]!.AsArray();
        var place = $"{path}.rows[{rows.Count}]";
        var rope = Fields(
            table, row, place, ("row", "mark"), ("height", "height"), ("sag", "sag"), ("slack", "slack"), ("start", "start"), ("finish", "finish"), ("between", "between"));
        if (Rope(table, row, $"{place}.rope") is { } own)
            rope["rope"] = own;
        if (Cell(table, row, "at") is { Length: > 0 } at)
        {
            _places[$"{place}.at"] = Place(table, row, "at");
            rope["at"] = At(at, table, row);
        }
        rows.Add(rope);
    }

    /// <summary>Single posts, such as <c>A4: wrap 2; A5: stopped</c>.</summary>
    private JsonObject At(string text, SheetTable table, SheetRow row)
    {
        var posts = new JsonObject();
        foreach (var part in text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var colon = part.LastIndexOf(':');
            if (colon < 1 || !posts.TryAdd(part[..colon].TrimEnd(), part[(colon + 1)..].Trim()))
                Problem(table, row, "at", part, "accepted: each post once, such as \"A4: wrap 2; A5: bored\"");
        }
        return posts;
    }

    private JsonObject? Rope(SheetTable table, SheetRow row, string path)
    {
        var rope = Fields(table, row, path, ("material", "material"), ("diameter", "diameter"), ("measured", "measured"));
        return rope.Count > 0 ? rope : null;
    }

    /// <summary>The cells that are not empty, under their names in a job file; every cell's place is kept.</summary>
    private JsonObject Fields(SheetTable table, SheetRow row, string path, params ReadOnlySpan<(string Column, string Name)> fields)
    {
        var made = new JsonObject();
        _places.TryAdd(path, new(row.Line, 1));
        foreach (var (column, name) in fields)
        {
            if (!table.Columns.ContainsKey(column))
                continue;
            _places[$"{path}.{name}"] = Place(table, row, column);
            if (Cell(table, row, column) is { Length: > 0 } text)
                made[name] = text;
        }
        return made;
    }

    private void Problem(SheetTable table, SheetRow row, string column, string value, string text)
    {
        var cell = Place(table, row, column);
        _problems.Add(new("$", value, text, cell.Line, cell.Column));
    }

    private static SheetCell Place(SheetTable table, SheetRow row, string column) =>
        new(row.Line, table.Columns.TryGetValue(column, out var index) ? index + 1 : 1);

    private static string Cell(SheetTable table, SheetRow row, string column) =>
        table.Columns.TryGetValue(column, out var index) ? row[index] : "";
}
