using System.Globalization;
using System.Text;

namespace CutShop.Benchmarks;

/// <summary><c>all [--write FILE]</c>: measures every subject, one after the other, and writes what each printed as one page.</summary>
internal static class AllCommand
{
    private const string Intro =
        """
        # Benchmarks

        For anyone who wants to know how fast CutShop is, and for programmers who measure a change. Ratios compare with a baseline of the same
        run, so they are valid on other machines; times are this machine's. Each part is what one subject of `tests/CutShop.Benchmarks` printed.
        This command makes the page:

        ```
        dotnet run --project tests/CutShop.Benchmarks -c Release -- all --write docs/benchmarks.md
        ```

        A subject's name, such as `-- takeoff`, measures only that. [cut-plan.md](cut-plan.md) shows how good the cut plans are and
        [trust.md](trust.md) what is lost when machines fail; `-- cutting` and `-- trust` measure those. `-- against COMMIT` compares this version
        with that of another commit: see [DEVELOPERS.md](../DEVELOPERS.md).

        """;

    /// <summary>Measures the subjects.</summary>
    /// <param name="subjects">Each subject's name, what it is about, and how it is run.</param>
    /// <param name="arguments">May be <c>--write FILE</c>.</param>
    /// <returns>0 where every subject met its targets.</returns>
    public static int Run(IReadOnlyList<(string Name, string About, Func<string[], int> Run)> subjects, string[] arguments)
    {
        var page = new StringBuilder(Intro);
        page.Append(CultureInfo.InvariantCulture, $"{Environment.ProcessorCount} cores, .NET {Environment.Version}, {DateTime.UtcNow:yyyy-MM-dd}.\n");
        var worst = 0;
        foreach (var (name, about, run) in subjects)
        {
            var (exitCode, printed) = Captured(run);
            worst = Math.Max(worst, exitCode);
            page.Append(CultureInfo.InvariantCulture, $"\n## {name}\n\n{about}{(exitCode == 0 ? "" : " **Not every target is met.**")}\n\n```\n{printed.TrimEnd()}\n```\n");
        }
        if (arguments is ["--write", var file])
            File.WriteAllText(file, page.ToString());
        return worst;
    }

    private static (int ExitCode, string Printed) Captured(Func<string[], int> run)
    {
        var console = Console.Out;
        using var kept = new StringWriter(CultureInfo.InvariantCulture);
        Console.SetOut(kept);
        try
        {
            return (run([]), kept.ToString());
        }
        finally
        {
            Console.SetOut(console);
            console.Write(kept.ToString());
        }
    }
}
