using CutShop.Shop.Maintenance;

namespace CutShop.Cli;

/// <summary>Tells what a check found, a line a finding, on standard error.</summary>
internal static class FindingLines
{
    public static async Task WriteAsync(IEnumerable<CheckFinding> findings)
    {
        foreach (var finding in findings)
            await Console.Error.WriteLineAsync(finding.ToString());
    }
}
