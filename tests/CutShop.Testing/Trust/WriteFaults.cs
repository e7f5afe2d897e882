using Microsoft.Data.Sqlite;

namespace CutShop.Testing.Trust;

/// <summary>What breaking the statements of an operation came to.</summary>
/// <param name="Statements">How many statements it has.</param>
/// <param name="Faults">How many faults it met.</param>
/// <param name="Problems">Where something of it stayed, or it could not be done afterwards.</param>
internal sealed record FaultAnswer(int Statements, int Faults, IReadOnlyList<string> Problems);

/// <summary>
/// Breaks statement 1, 2, 3 … of an operation, as a failing disk would, until it runs through. After each fault the database must
/// be as the last whole transaction left it, and in the end the operation must be done and the shop well.
/// </summary>
internal static class WriteFaults
{
    private const int InputOutput = 10;

    /// <param name="operation">The operation.</param>
    /// <param name="timesEach">How often it is tried while a statement fails: once, or more often for a fault that stays a while.</param>
    public static async Task<FaultAnswer> BreakEachAsync(WriteOperation operation, int timesEach)
    {
        using var shop = await FaultShop.MakeAsync();
        await operation.Prepare(shop);
        var (problems, faults) = (new List<string>(), 0);
        for (var broken = 1; ; broken++)
        {
            for (var time = 0; time < timesEach; time++)
            {
                var fault = await TryAsync(shop, operation, broken, problems);
                if (!fault)
                {
                    problems.AddRange(ShopCheck.OfFile(shop.Database.Path, TimeProvider.System).Select(finding => $"{operation.Name}: {finding}"));
                    return new(broken - 1, faults, problems);
                }
                faults++;
            }
        }
    }

    /// <returns>False where the operation has fewer statements and ran through.</returns>
    private static async Task<bool> TryAsync(FaultShop shop, WriteOperation operation, int broken, List<string> problems)
    {
        var (count, committed) = (0, "");
        shop.Database.BeforeEachWrite = () =>
        {
            if (++count != broken)
                return;
            committed = ShopDigest.Of(shop.Database.Path);
            throw new SqliteException("disk I/O error", InputOutput);
        };
        try
        {
            var isDone = await operation.Do(shop);
            if (committed.Length > 0)
                problems.Add($"{operation.Name}: statement {broken} failed and nothing said so");
            else if (!isDone)
                problems.Add($"{operation.Name}: could not be done after its faults");
            return committed.Length > 0;
        }
        catch (SqliteException)
        {
            if (ShopDigest.Of(shop.Database.Path) != committed)
                problems.Add($"{operation.Name}: statement {broken} failed and something stayed");
            return true;
        }
        finally
        {
            shop.Database.BeforeEachWrite = null;
        }
    }
}
