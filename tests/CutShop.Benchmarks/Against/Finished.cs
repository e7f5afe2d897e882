using System.Diagnostics;

namespace CutShop.Benchmarks.Against;

/// <summary>A command that has ended.</summary>
/// <param name="ExitCode">Its exit code.</param>
/// <param name="Written">What it wrote to its standard output.</param>
/// <param name="Trouble">What it wrote to its standard error.</param>
internal sealed record Finished(int ExitCode, string Written, string Trouble)
{
    /// <summary>Runs a command to its end.</summary>
    public static Finished Of(ProcessStartInfo start)
    {
        using var process = Process.Start(start)!;
        var trouble = process.StandardError.ReadToEndAsync();
        var written = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new(process.ExitCode, written, trouble.GetAwaiter().GetResult());
    }

    /// <summary>Runs a command of a tool of this machine to its end.</summary>
    public static Finished Of(string tool, params string[] args) =>
        Of(new ProcessStartInfo(tool, args) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true });
}
