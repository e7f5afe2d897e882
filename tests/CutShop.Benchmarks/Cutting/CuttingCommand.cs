using System.Globalization;
using System.Text;

namespace CutShop.Benchmarks.Cutting;

/// <summary>Measures the cut planner and prints the tables of <c>docs/cut-plan.md</c>.</summary>
internal static class CuttingCommand
{
    private const string From = "<!-- measured -->";
    private const string To = "<!-- /measured -->";

    /// <summary>Runs with the command's arguments.</summary>
    public static int Run(string[] args)
    {
        var seconds = double.Parse(Option(args, "--seconds") ?? "10", CultureInfo.InvariantCulture);
        var direct = int.Parse(Option(args, "--direct") ?? "20", CultureInfo.InvariantCulture);
        var only = Option(args, "--only") ?? "";
        var report = new StringBuilder();
        if (only != "shop")
            Published.Measure(report, TimeSpan.FromSeconds(seconds), direct, only);
        if (only is "" or "shop")
            Shop.Measure(report, withSolverAlone: direct > 0);
        Console.WriteLine();
        Console.WriteLine(report);
        if (Option(args, "--write") is { } file)
            Write(file, report.ToString());
        return 0;
    }

    private static string? Option(string[] args, string name)
    {
        var at = Array.IndexOf(args, name);
        return at >= 0 && at + 1 < args.Length ? args[at + 1] : null;
    }

    private static void Write(string file, string tables)
    {
        var text = File.ReadAllText(file);
        var (from, to) = (text.IndexOf(From, StringComparison.Ordinal), text.IndexOf(To, StringComparison.Ordinal));
        if (from < 0 || to < from)
            throw new InvalidDataException($"{file} has no lines '{From}' and '{To}' to put the tables between.");
        File.WriteAllText(file, $"{text[..(from + From.Length)]}\n\n{tables.TrimEnd()}\n\n{text[to..]}");
    }
}
