using CutShop.Shop.Orders;
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
        var lines = reader.Lines(tables.GetValueOrDefault(SheetRows.PostTable), tables.GetValueOrDefault(SheetRows.RopeTable), tables.GetValueOrDefault(SheetRows.LineTable));
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
            .. Fields(table, row, JobPlace.Job, ("one lot", "oneLot")).Select(YesOrNo),
            .. Fields(table, row, JobPlace.Job, ("datum", "datum"), ("bore", "bore"), ("boring", "boring"), ("longest", "longest")),
            new("allowances", JobValue.OfFields(
                [
                    .. Fields(table, row, JobPlace.Job["allowances"], ("shrink", "shrink"), ("per piece", "perPiece"), ("round up", "roundUp")),
                    new("wetting", FieldsOrNone(Fields(table, row, JobPlace.Job["allowances"]["wetting"], ("loses", "loses"), ("manner", "manner")))),
                ])),
        ];
    }

    private List<SheetLine> Lines(SheetTable? posts, SheetTable? ropes, SheetTable? wholes)
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
        foreach (var (mark, row) in WithLine(wholes))
        {
            if (!lines.TryGetValue(mark, out var line))
                Problem(wholes!, row, "line", mark, JobSheetWords.Say("LineWithPosts"));
            else if (line.Own.Count > 0)
                Problem(wholes!, row, "line", mark, JobSheetWords.Say("LineOnce"));
            else
                SayOfLine(line, wholes!, row);
        }
        foreach (var line in lines.Values)
            DropSections(line);
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
            ("girth", "girth"),
            ("height", "height"),
            ("turn", "turn"),
            ("corner", "corner"),
            ("buried", "buried"),
            ("boring", "boring"),
            ("holes", "holes")).Select(field => field.Key == "holes" ? OfMarks(field, MarkedText.Hole) : field)));
        line.Sections.Add([.. Fields(
            table,
            row,
            line.Place["sections"][line.Sections.Count],
            ("clear", "clear"),
            ("centres", "centres"),
            ("clear at", "clearAt"),
            ("rise", "rise"),
            ("sag", "sag"),
            ("slack", "slack"),
            ("drop", "drop")).Select(field => field.Key == "clearAt" ? OfMarks(field, JobValue.OfText) : field)]);
    }

    /// <summary>What is said of a whole line: that it is closed, its drop, who bores it, and the arc that its posts stand on.</summary>
    private void SayOfLine(SheetLine line, SheetTable table, SheetRow row)
    {
        line.Own.AddRange(Fields(table, row, line.Place, ("closed", "closed")).Select(YesOrNo));
        line.Own.AddRange(Fields(table, row, line.Place, ("drop", "drop"), ("boring", "boring")));
        line.Own.Add(new("curve", FieldsOrNone(Fields(table, row, line.Place["curve"], [.. SheetRows.CurveNames.Select(name => (name, name))]))));
    }

    /// <summary>A section is in the row of its first post, so the last post has none, unless the line is closed; on a curve none has.</summary>
    private void DropSections(SheetLine line)
    {
        for (var i = line.IsOnCurve ? 0 : line.IsClosed ? line.Sections.Count : line.Sections.Count - 1; i < line.Sections.Count; i++)
        {
            foreach (var (name, value) in line.Sections[i])
            {
                var cell = _cells[line.Place["sections"][i][name]];
                _problems.Add(new(line.Place.ToString(), value!.Value.Text ?? "", JobSheetWords.Say(line.IsOnCurve ? "NoSectionOnCurve" : "NoLastSection"), cell.Line, cell.Column));
            }
        }
        line.Sections.RemoveRange(line.IsOnCurve ? 0 : line.Sections.Count - 1, line.IsOnCurve ? line.Sections.Count : line.IsClosed ? 0 : 1);
    }

    private void AddRope(SheetLine line, SheetTable table, SheetRow row)
    {
        var place = line.Place["rows"][line.Rows.Count];
        var own = Rope(table, row, place["rope"]);
        line.Rows.Add(JobValue.OfFields(
            [
                .. Fields(table, row, place, ("row", "mark"), ("height", "height"), ("sag", "sag"), ("slack", "slack"), ("between", "between"), ("bore", "bore")),
                .. Fields(table, row, place, ("heights", "heights"), ("at", "at")).Select(field => OfMarks(field, JobValue.OfText)),
                .. Fields(table, row, place, ("unbroken", "unbroken")).Select(YesOrNo),
                .. End(table, row, place, "start"),
                .. End(table, row, place, "finish"),
                new("rope", FieldsOrNone(own)),
            ]));
    }

    /// <summary>An end: what is done there, or an eye by its figures, beside which stands nothing or its name.</summary>
    private List<Named> End(SheetTable table, SheetRow row, JobPlace place, string name)
    {
        var said = Fields(table, row, place, (name, name));
        var eye = Fields(table, row, place[name][DraftEye.Word], [.. SheetRows.EyeNames.Select(field => ($"{name} {field}", field))]);
        if (said.Count > 0 && said[0].Value!.Value.Text != DraftEye.Word && eye.Count > 0)
            Problem(table, row, name, said[0].Value!.Value.Text!, JobSheetWords.Say("EyeOrOther"));
        return eye.Count > 0 || (said.Count > 0 && said[0].Value!.Value.Text == DraftEye.Word)
            ? [new(name, JobValue.OfFields([new(DraftEye.Word, JobValue.OfFields(eye))]))]
            : said;
    }

    /// <summary>What a cell says of single posts or rows, such as <c>A4: wrap 2; A5: stopped</c>.</summary>
    private static Named OfMarks(Named field, Func<string, JobValue> read) => new(field.Key, MarkedText.Values(field.Value!.Value.Text!, read, isPartedByCommas: false));

    private static Named YesOrNo(Named field) => new(field.Key, field.Value!.Value.Text!.ToLowerInvariant() switch
    {
        "yes" => JobValue.Yes,
        "no" => JobValue.No,
        _ => field.Value,
    });

    private List<Named> Rope(SheetTable table, SheetRow row, JobPlace place) => Fields(table, row, place, [.. SheetRows.RopeNames.Select(name => (name, name))]);

    private static JobValue? FieldsOrNone(List<Named> fields) => fields.Count > 0 ? JobValue.OfFields(fields) : null;

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

        /// <summary>What is said of the line itself.</summary>
        public List<Named> Own { get; } = [];

        public bool IsClosed => Own.Exists(said => said is { Key: "closed", Value.Kind: not JobValueKind.No });

        public bool IsOnCurve => Own.Exists(said => said is { Key: "curve", Value: not null });

        public JobValue Value() => JobValue.OfFields(
            [
                new("mark", JobValue.OfText(Mark)),
                .. Own,
                new("posts", JobValue.OfList(Posts, post => post)),
                new("sections", IsOnCurve ? null : JobValue.OfList(Sections, JobValue.OfFields)),
                new("rows", JobValue.OfList(Rows, row => row)),
            ]);
    }
}
