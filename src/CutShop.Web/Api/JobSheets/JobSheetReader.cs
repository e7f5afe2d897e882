using CutShop.Takeoff.Intake;
using CutShop.Takeoff.JobFile;

using Named = System.Collections.Generic.KeyValuePair<string, CutShop.Takeoff.Intake.JobValue?>;

namespace CutShop.Web.Api;

/// <summary>
/// Reads a job's sheet (docs/csv.md) into values of a job. It checks only what no other source of a job can have wrong; everything
/// else is checked where all jobs are read, and reported by line and column.
/// </summary>
internal sealed class JobSheetReader
{
    private readonly List<ProblemPlace> _problems = [];
    private readonly Dictionary<JobPlace, SheetCell> _cells = new() { [JobPlace.Job] = new(1, 1) };

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
        return new(JobValue.OfFields([.. job, new("lines", JobValue.OfList(lines, line => line.Value()))]), reader._problems, reader._cells);
    }

    private List<Named> Job(SheetTable? table)
    {
        if (table is null || table.Rows.Count != 1)
        {
            var at = table?.Rows.ElementAtOrDefault(1)?.Line ?? 1;
            _problems.Add(new("$", "", JobSheetWords.Say("OneJob", table?.Rows.Count ?? 0), at, 1));
            return [];
        }
        var row = table.Rows[0];
        return
        [
            .. Fields(table, row, JobPlace.Job, ("number", "number"), ("customer", "customer"), ("due", "due")),
            new("rope", JobValue.OfFields(Rope(table, row, JobPlace.Job["rope"]))),
            .. Fields(table, row, JobPlace.Job, ("one lot", "oneLot")).Select(field => new Named(field.Key, YesOrNo(field.Value!.Value))),
            .. Fields(table, row, JobPlace.Job, ("datum", "datum")),
            new("allowances", JobValue.OfFields(Fields(table, row, JobPlace.Job["allowances"], ("shrink", "shrink"), ("per piece", "perPiece"), ("round up", "roundUp")))),
        ];
    }

    private List<SheetLine> Lines(SheetTable? posts, SheetTable? ropes)
    {
        var lines = new OrderedDictionary<string, SheetLine>();
        foreach (var (mark, row) in WithLine(posts))
        {
            if (!lines.TryGetValue(mark, out var line))
            {
                lines.Add(mark, line = new(mark, new(lines.Count)));
                _cells[line.Place] = _cells[line.Place["mark"]] = Cell(posts!, row, "line");
            }
            AddPost(line, posts!, row);
        }
        foreach (var line in lines.Values)
            DropLastSection(line);
        foreach (var (mark, row) in WithLine(ropes))
        {
            if (lines.TryGetValue(mark, out var line))
                AddRope(line, ropes!, row);
            else
                Problem(ropes!, row, "line", mark, JobSheetWords.Say("LineWithPosts"));
        }
        return [.. lines.Values];
    }

    /// <summary>The rows with their line; an empty cell means the line above.</summary>
    private static IEnumerable<(string Mark, SheetRow Row)> WithLine(SheetTable? table)
    {
        var mark = "";
        foreach (var row in table?.Rows ?? [])
        {
            if (Text(table!, row, "line") is { Length: > 0 } given)
                mark = given;
            yield return (mark, row);
        }
    }

    private void AddPost(SheetLine line, SheetTable table, SheetRow row)
    {
        line.Posts.Add(JobValue.OfFields(Fields(
            table,
            row,
            line.Place["posts"][line.Posts.Count],
            ("post", "mark"),
            ("shape", "shape"),
            ("across", "across"),
            ("height", "height"),
            ("turn", "turn"),
            ("buried", "buried"))));
        line.Sections.Add(Fields(
            table, row, line.Place["sections"][line.Sections.Count], ("clear", "clear"), ("centres", "centres"), ("rise", "rise"), ("sag", "sag"), ("slack", "slack")));
    }

    /// <summary>A section is in the row of its first post, so the last post has none.</summary>
    private void DropLastSection(SheetLine line)
    {
        var last = line.Sections.Count - 1;
        foreach (var (name, value) in line.Sections[last])
        {
            var cell = _cells[line.Place["sections"][last][name]];
            _problems.Add(new(line.Place.ToString(), value!.Value.Text!, JobSheetWords.Say("NoLastSection"), cell.Line, cell.Column));
        }
        line.Sections.RemoveAt(last);
    }

    private void AddRope(SheetLine line, SheetTable table, SheetRow row)
    {
        var place = line.Place["rows"][line.Rows.Count];
        var own = Rope(table, row, place["rope"]);
        line.Rows.Add(JobValue.OfFields(
            [
                .. Fields(table, row, place, ("row", "mark"), ("height", "height"), ("sag", "sag"), ("slack", "slack"), ("start", "start"), ("finish", "finish"), ("between", "between")),
                .. Fields(table, row, place, ("at", "at")).Select(field => new Named(field.Key, At(field.Value!.Value.Text!, table, row))),
                new("rope", own.Count > 0 ? JobValue.OfFields(own) : null),
            ]));
    }

    /// <summary>Single posts, such as <c>A4: wrap 2; A5: stopped</c>.</summary>
    private JobValue At(string text, SheetTable table, SheetRow row)
    {
        var posts = new OrderedDictionary<string, JobValue?>();
        foreach (var part in text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var colon = part.LastIndexOf(':');
            if (colon < 1 || !posts.TryAdd(part[..colon].TrimEnd(), JobValue.OfText(part[(colon + 1)..].Trim())))
                Problem(table, row, "at", part, JobSheetWords.Say("EachPostOnce"));
        }
        return JobValue.OfFields(posts);
    }

    private static JobValue YesOrNo(JobValue typed) => typed.Text!.ToLowerInvariant() switch
    {
        "yes" => JobValue.Yes,
        "no" => JobValue.No,
        _ => typed,
    };

    private List<Named> Rope(SheetTable table, SheetRow row, JobPlace place) =>
        Fields(table, row, place, ("material", "material"), ("diameter", "diameter"), ("measured", "measured"));

    /// <summary>The cells that are not empty, under their names in a job; every cell's place is kept.</summary>
    private List<Named> Fields(SheetTable table, SheetRow row, JobPlace place, params ReadOnlySpan<(string Column, string Name)> fields)
    {
        var made = new List<Named>();
        _cells.TryAdd(place, new(row.Line, 1));
        foreach (var (column, name) in fields)
        {
            if (!table.Columns.ContainsKey(column))
                continue;
            _cells[place[name]] = Cell(table, row, column);
            if (Text(table, row, column) is { Length: > 0 } text)
                made.Add(new(name, JobValue.OfText(text)));
        }
        return made;
    }

    private void Problem(SheetTable table, SheetRow row, string column, string value, string text)
    {
        var cell = Cell(table, row, column);
        _problems.Add(new("$", value, text, cell.Line, cell.Column));
    }

    private static SheetCell Cell(SheetTable table, SheetRow row, string column) =>
        new(row.Line, table.Columns.TryGetValue(column, out var index) ? index + 1 : 1);

    private static string Text(SheetTable table, SheetRow row, string column) =>
        table.Columns.TryGetValue(column, out var index) ? row[index] : "";

    private sealed record SheetLine(string Mark, JobPlace Place)
    {
        public List<JobValue> Posts { get; } = [];

        public List<List<Named>> Sections { get; } = [];

        public List<JobValue> Rows { get; } = [];

        public JobValue Value() => JobValue.OfFields(
            [
                new("mark", JobValue.OfText(Mark)),
                new("posts", JobValue.OfList(Posts, post => post)),
                new("sections", JobValue.OfList(Sections, JobValue.OfFields)),
                new("rows", JobValue.OfList(Rows, row => row)),
            ]);
    }
}
