using CutShop.Takeoff.Intake;
using CutShop.Takeoff.JobFile;

namespace CutShop.Web.Api;


/// <summary>A job's sheet as a source of a job, and where each part of it is in the sheet.</summary>
/// <param name="Job">The job as the sheet has it.</param>
/// <param name="Problems">What is wrong with the sheet itself; a sheet with a problem has no job worth reading.</param>
/// <param name="Cells">The cell of each place.</param>
internal sealed record JobSheet(JobValue Job, IReadOnlyList<ProblemPlace> Problems, IReadOnlyDictionary<JobPlace, SheetCell> Cells)
{
    /// <summary>The cell of a place, or of the nearest thing that holds it and has one.</summary>
    public SheetCell CellOf(JobPlace place)
    {
        SheetCell cell;
        while (!Cells.TryGetValue(place, out cell))
            place = place.Above;
        return cell;
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
