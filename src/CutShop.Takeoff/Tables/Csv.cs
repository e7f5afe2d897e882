namespace CutShop.Takeoff.Tables;

/// <summary>Reads the program's own tables: commas, a header line, no quotes; lines that start with # are notes.</summary>
internal static class Csv
{
    /// <summary>The rows of a table built into this assembly, each by column name.</summary>
    public static IReadOnlyList<IReadOnlyDictionary<string, string>> ReadResource(string name)
    {
        using var stream = typeof(Csv).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The table {name} was not built in.");
        using var reader = new StreamReader(stream);
        var lines = reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Where(line => !line.StartsWith('#')).ToList();
        var names = lines[0].Split(',');
        return [.. lines.Skip(1).Select(line => Row(names, line.Split(','), name))];
    }

    private static Dictionary<string, string> Row(string[] names, string[] values, string table) =>
        names.Length == values.Length
            ? names.Zip(values).ToDictionary(pair => pair.First, pair => pair.Second)
            : throw new FormatException($"{table}: {values.Length} values for {names.Length} columns in '{string.Join(',', values)}'.");
}
