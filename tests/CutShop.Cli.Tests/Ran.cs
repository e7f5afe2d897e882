using System.Diagnostics;

namespace CutShop.Cli.Tests;

/// <summary>A run of the program as a person runs it: a process of its own.</summary>
/// <param name="ExitCode">Its exit code.</param>
/// <param name="Output">What it wrote to standard output.</param>
/// <param name="Errors">What it wrote to standard error.</param>
public sealed record Ran(int ExitCode, string Output, string Errors)
{
    /// <summary>Runs the program to its end.</summary>
    public static Task<Ran> WithAsync(string? input, params string[] arguments) => RunAsync(input, server: null, arguments);

    /// <summary>Runs the program with a database on a server named in its environment.</summary>
    public static Task<Ran> OnServerAsync(string connection, params string[] arguments) => RunAsync(input: null, connection, arguments);

    private static async Task<Ran> RunAsync(string? input, string? server, string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = AppContext.BaseDirectory,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "cutshop.dll"));
        foreach (var argument in arguments)
            start.ArgumentList.Add(argument);
        if (server is not null)
            start.Environment["CUTSHOP_DATABASE"] = server;
        using var process = Process.Start(start)!;
        var (output, errors) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        if (input is not null)
            await process.StandardInput.WriteAsync(input);
        process.StandardInput.Close();
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return new(process.ExitCode, await output, await errors);
    }
}
