using CsvHelper;

namespace CutShop.Web.Api;

/// <summary>Reads a sheet's rows and parts them into its tables: the job, the posts, the rows of rope, and what is said of whole lines.</summary>
internal static class SheetRows
{
    public const string JobTable = "number";
    public const string PostTable = "post";
    public const string RopeTable = "row";
    public const string LineTable = "line";

    /// <summary>The columns of an eye, behind <c>start</c> or <c>finish</c>.</summary>
    public static readonly string[] EyeNames = ["pin", "length", "reach", "tucks", "thimble"];

    /// <summary>The columns of an arc.</summary>
    public static readonly string[] CurveNames = ["radius", "string", "middle", "chord", "angle", "turns", "rise", "sag", "slack"];

    /// <summary>The columns of a rope.</summary>
    public static readonly string[] RopeNames = ["material", "diameter", "measured", "construction", "colour"];

    private static readonly Dictionary<string, string[]> Names = new()
    {
        [JobTable] = ["number", "customer", "due", .. RopeNames, "one lot", "datum", "bore", "boring", "longest", "shrink", "loses", "manner", "per piece", "round up"],
        [PostTable] =
        [
            "line", "post", "shape", "across", "girth", "height", "turn", "corner", "buried", "boring", "holes",
            "clear", "centres", "clear at", "rise", "sag", "slack", "drop",
        ],
        [RopeTable] =
        [
            "line", "row", "height", "heights", "sag", "slack", "start", "finish", "between", "at", "bore", "unbroken", .. RopeNames,
            .. EyeNames.Select(name => $"start {name}"), .. EyeNames.Select(name => $"finish {name}"),
        ],
        [LineTable] = ["line", "closed", "drop", "boring", .. CurveNames],
    };

    private static readonly CsvReaderOptions Options = new()
    {
        HasHeader = false,
        TrackLineNumbers = true,
        MalformedData = CsvMalformedDataHandling.Throw,
    };

    /// <summary>The tables by name; what is wrong goes to <paramref name="problems"/>.</summary>
    public static Dictionary<string, SheetTable> Read(byte[] bytes, List<ProblemPlace> problems)
    {
        var tables = new Dictionary<string, SheetTable>();
        SheetTable? table = null;
        foreach (var row in Rows(bytes, problems).Where(row => !row.IsBlank))
        {
            if (KindOf(row) is { } kind)
            {
                table = new(Columns(kind, row, problems), []);
                if (!tables.TryAdd(kind, table))
                    problems.Add(new("$", row[0], JobSheetWords.Say("SecondTable"), row.Line, 1));
            }
            else if (table is null)
            {
                problems.Add(new("$", row[0], JobSheetWords.Say("NamesFirst"), row.Line, 1));
                return tables;
            }
            else
            {
                table.Rows.Add(row);
            }
        }
        return tables;
    }

    private static List<SheetRow> Rows(byte[] bytes, List<ProblemPlace> problems)
    {
        var rows = new List<SheetRow>();
        try
        {
            using var csv = CsvReader.Create(bytes, Options);
            while (csv.Read())
                rows.Add(new((int)csv.LineNumber, [.. csv.Current.ToArray().Select(cell => cell.Trim())]));
        }
        catch (CsvFormatException e)
        {
            problems.Add(new("$", "", JobSheetWords.Say("BadQuotes"), (int)e.LineNumber, 1));
        }
        return rows;
    }

    /// <summary>Which table a row of names starts, or null where it is no row of names.</summary>
    private static string? KindOf(SheetRow row) => (Name(row[0]), row) switch
    {
        ("number", _) => JobTable,
        ("line", _) when row.Cells.Any(cell => Name(cell) == "post") => PostTable,
        ("line", _) when row.Cells.Any(cell => Name(cell) == "row") => RopeTable,
        ("line", _) => LineTable,
        _ => null,
    };

    private static Dictionary<string, int> Columns(string kind, SheetRow row, List<ProblemPlace> problems)
    {
        var columns = new Dictionary<string, int>();
        foreach (var (column, cell) in row.Cells.Index())
        {
            if (cell.Length == 0)
                continue;
            if (!Names[kind].Contains(Name(cell)))
                problems.Add(new("$", cell, JobSheetWords.Say("Columns", string.Join(", ", Names[kind])), row.Line, column + 1));
            else if (!columns.TryAdd(Name(cell), column))
                problems.Add(new("$", cell, JobSheetWords.Say("ColumnTwice"), row.Line, column + 1));
        }
        return columns;
    }

    private static string Name(string cell) => cell.ToLowerInvariant();
}
