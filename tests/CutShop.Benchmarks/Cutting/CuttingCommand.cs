using System.Globalization;
using System.Text;

namespace CutShop.Benchmarks.Cutting;

/// <summary>Measures the cut planner and prints the tables of <c>docs/cut-plan.md</c>.</summary>
internal static class CuttingCommand
{
    /// <summary>Runs with the command's arguments.</summary>
    public static int Run(string[] args)
    {
        var seconds = double.Parse(Option(args, "--seconds") ?? "10", CultureInfo.InvariantCulture);
        var direct = int.Parse(Option(args, "--direct") ?? "20", CultureInfo.InvariantCulture);
        var only = Option(args, "--only") ?? "";
        var file = Option(args, "--write");
        if (only != "shop")
            Print("published", report => Published.Measure(report, TimeSpan.FromSeconds(seconds), direct, only), file);
        if (only is "" or "shop")
            Print("shop", report => Shop.Measure(report, withSolverAlone: direct > 0), file);
        return 0;
    }

    private static string? Option(string[] args, string name)
    {
        var at = Array.IndexOf(args, name);
        return at >= 0 && at + 1 < args.Length ? args[at + 1] : null;
    }

    private static void Print(string section, Action<StringBuilder> measure, string? file)
    {
        var report = new StringBuilder();
        measure(report);
        Console.WriteLine();
        Console.WriteLine(report);
        if (file is not null)
            Write(file, section, report.ToString());
    }

    /// <summary>Puts tables between the lines of a document that mark a section's place.</summary>
    private static void Write(string file, string section, string tables)
    {
        var (first, last) = ($"<!-- measured: {section} -->", $"<!-- end of {section} -->");
        var text = File.ReadAllText(file);
        var (from, to) = (text.IndexOf(first, StringComparison.Ordinal), text.IndexOf(last, StringComparison.Ordinal));
        if (from < 0 || to < from)
            throw new InvalidDataException($"{file} has no lines '{first}' and '{last}' to put the tables between.");
        File.WriteAllText(file, $"{text[..(from + first.Length)]}\n\n{tables.ReplaceLineEndings("\n").TrimEnd()}\n\n{text[to..]}");
    }
}
