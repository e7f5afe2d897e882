using System.Globalization;
using System.Text;
using CutShop.Benchmarks.Fuzz;
using CutShop.Benchmarks.Load;

namespace CutShop.Benchmarks.Trust;

/// <summary>
/// <c>trust [FIGURE…] [--kills N] [--lengths N] [--files N] [--days N] [--seconds N] [--store postgresql] [--write FILE]</c>: prints the table of trust as Markdown;
/// names choose rows, and none means all. With a file the table there is written anew between its marks.
/// </summary>
internal static class TrustCommand
{
    private const string Begin = "<!-- figures -->";
    private const string End = "<!-- end of figures -->";

    /// <summary>The figures by name. A new one is a row here.</summary>
    private static readonly Dictionary<string, Func<TrustDose, Task<TrustRow>>> Figures = new()
    {
        ["kills"] = dose => KillFigure.OfAsync(dose.Kills),
        ["statements"] = _ => StatementFigure.OfAsync(),
        ["backups"] = _ => BackupFigure.OfAsync(),
        ["fuzz"] = FuzzFigure.OfAsync,
        ["days"] = dose => DaysFigure.OfAsync(dose.Days),
        ["load"] = LoadFigure.OfAsync,
    };

    public static int Run(string[] args)
    {
        var (names, dose, file) = (new List<string>(), new TrustDose(), (string?)null);
        for (var i = 0; i < args.Length; i++)
        {
            if (i + 1 < args.Length && TrustDose.Options.TryGetValue(args[i], out var set))
                dose = set(dose, args[++i]);
            else if (args[i] == "--write" && i + 1 < args.Length)
                file = args[++i];
            else
                names.Add(args[i]);
        }
        if (names.Find(name => !Figures.ContainsKey(name)) is { } unknown)
        {
            Console.Error.WriteLine($"\"{unknown}\" is no figure; accepted: {string.Join(", ", Figures.Keys)}");
            return 2;
        }

        var rows = new List<TrustRow>();
        foreach (var (_, figure) in Figures.Where(figure => names.Count == 0 || names.Contains(figure.Key)))
            rows.Add(figure(dose).GetAwaiter().GetResult());
        var table = Table(rows);
        Console.Write(table);
        foreach (var harm in rows.SelectMany(row => row.Harm))
            Console.Error.WriteLine(harm);
        if (file is not null)
            Write(file, table);
        return rows.TrueForAll(row => row.Lost == 0 && row.Harm.Count == 0) ? 0 : 1;
    }

    private static string Table(List<TrustRow> rows)
    {
        var text = new StringBuilder("| what was done | how much | lost |\n| --- | --- | ---: |\n");
        foreach (var row in rows)
            text.Append(CultureInfo.InvariantCulture, $"| {row.What} | {row.HowMuch} | {row.Lost} |\n");
        return text.ToString();
    }

    private static void Write(string file, string table)
    {
        var text = File.ReadAllText(file);
        var (begin, end) = (text.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length, text.IndexOf(End, StringComparison.Ordinal));
        if (begin < Begin.Length || end < begin)
            throw new InvalidDataException($"{file} has no place for the figures between {Begin} and {End}.");
        File.WriteAllText(file, $"{text[..begin]}\n\n{table}\n{text[end..]}");
    }
}
