using CutShop.Takeoff;
using Microsoft.Data.Sqlite;

namespace CutShop.Shop;

/// <summary>
/// Says in words what is off in a shop's database: the file itself, the rope of every coil, the states against the history, the
/// tickets against the stored job files. Changes nothing.
/// </summary>
public static class ShopCheck
{
    /// <summary>Checks a database file, as of one moment; a server may go on writing.</summary>
    /// <param name="path">The database file.</param>
    /// <param name="tables">The tables that the program brings.</param>
    /// <param name="time">The clock.</param>
    /// <returns>What is off; empty where all is well.</returns>
    public static IReadOnlyList<CheckFinding> OfFile(string path, ShopTables tables, TimeProvider time)
    {
        try
        {
            using var file = CareFile.Open(path, time);
            return Of(file, tables);
        }
        catch (FileNotFoundException e)
        {
            return [new("database", e.Message)];
        }
        catch (SqliteException e)
        {
            return [new("database", $"cannot be read: {StoreTrouble.Of(e)?.Text ?? e.Message}")];
        }
    }

    /// <summary>Checks a shop's folder: its database, and files that belong to nothing.</summary>
    public static IReadOnlyList<CheckFinding> OfFolder(string folder, ShopTables tables, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(time);
        return [.. OfFile(ShopFolder.DatabaseIn(folder), tables, time), .. StrayFiles.In(folder, time)];
    }

    internal static IReadOnlyList<CheckFinding> Of(CareFile file, ShopTables tables)
    {
        if (file.Version != SqliteMigrations.Newest)
            return [new("database", $"has migration {file.Version}, and this program knows {SqliteMigrations.Newest}: {(file.Version < SqliteMigrations.Newest ? "start the shop once, which brings it up to date" : "use the program that it was made with, or a newer one")}")];
        return file.Read(session => Of(session, tables));
    }

    private static List<CheckFinding> Of(ShopSession session, ShopTables tables)
    {
        var findings = SoundFile.Of(session).ToList();
        try
        {
            findings.AddRange(StockBalance.Of(session));
            findings.AddRange(StatesAgainstHistory.Of(session));
            findings.AddRange(JobsAgainstFiles.Of(session, tables));
            findings.AddRange(KeptCounts.Of(session));
        }
        catch (SqliteException e) when (findings.Count > 0)
        {
            findings.Add(new("database", $"what else it holds cannot be checked: {e.Message}"));
        }
        return findings;
    }
}
