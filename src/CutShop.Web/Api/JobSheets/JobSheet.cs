using CutShop.Takeoff.JobFile;

namespace CutShop.Web.Api;

/// <summary>A job's sheet as a job file, and where each part of it stands in the sheet.</summary>
/// <param name="JobFile">The job file, in UTF-8.</param>
/// <param name="Problems">What is wrong with the sheet itself; a sheet with a problem has no job file worth reading.</param>
/// <param name="Places">The cell of each JSON path.</param>
internal sealed record JobSheet(byte[] JobFile, IReadOnlyList<ProblemPlace> Problems, IReadOnlyDictionary<string, SheetCell> Places)
{
    /// <summary>The cell that a JSON path speaks of, or the nearest thing above it that stands in a cell.</summary>
    public SheetCell CellOf(string path)
    {
        for (var cut = path; cut.Length > 0; cut = cut[..Math.Max(0, cut.LastIndexOfAny(['.', '[']))])
        {
            if (Places.TryGetValue(cut, out var cell))
                return cell;
        }
        return new(1, 1);
    }
}

/// <summary>A cell of a sheet.</summary>
/// <param name="Line">Its line in the file, from 1.</param>
/// <param name="Column">Its column, from 1.</param>
internal readonly record struct SheetCell(int Line, int Column);

/// <summary>A row of a sheet.</summary>
/// <param name="Line">The line of the file where it starts, from 1.</param>
/// <param name="Cells">Its cells, without spaces around them.</param>
internal sealed record SheetRow(int Line, IReadOnlyList<string> Cells)
{
    public bool IsBlank => Cells.All(cell => cell.Length == 0);

    public string this[int column] => column < Cells.Count ? Cells[column] : "";
}

/// <summary>One of a sheet's tables: the names of its columns and its rows.</summary>
/// <param name="Columns">The index of each column, by name.</param>
/// <param name="Rows">The rows under the names.</param>
internal sealed record SheetTable(IReadOnlyDictionary<string, int> Columns, List<SheetRow> Rows);
