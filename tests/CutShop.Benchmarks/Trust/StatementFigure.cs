using System.Globalization;
using CutShop.Testing.Trust;

namespace CutShop.Benchmarks.Trust;

/// <summary>Each statement of each operation that writes fails once, and then three times over.</summary>
internal static class StatementFigure
{
    public static async Task<TrustRow> OfAsync()
    {
        var (statements, faults, harm) = (0, 0, new List<string>());
        foreach (var operation in WriteOperations.All)
        {
            foreach (var times in new[] { 1, 3 })
            {
                var answer = await WriteFaults.BreakEachAsync(operation, times);
                statements += times == 1 ? answer.Statements : 0;
                faults += answer.Faults;
                harm.AddRange(answer.Problems);
            }
        }
        return new(
            "each statement of each operation that writes failed, once and again",
            string.Create(CultureInfo.InvariantCulture, $"{WriteOperations.All.Count} operations of {statements} statements; {faults} faults; each time wholly before, then wholly after"),
            harm.Count,
            harm);
    }
}
