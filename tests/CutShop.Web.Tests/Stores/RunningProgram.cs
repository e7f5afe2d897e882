using System.Diagnostics;

namespace CutShop.Web.Tests;

/// <summary>The program itself, serving a shop from a process of its own on a free port.</summary>
public sealed class RunningProgram : IDisposable
{
    private const string Announced = "The shop's pages: ";

    private readonly Process _process;

    private RunningProgram(Process process, Uri address) => (_process, Address) = (process, address);

    public Uri Address { get; }

    /// <summary>Starts it and waits until it listens.</summary>
    /// <param name="folder">The shop's folder.</param>
    /// <param name="connection">The database's connection string.</param>
    public static async Task<RunningProgram> StartAsync(string folder, string connection)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "cutshop.dll"), "serve", "--shop", folder, "--listen", "http://127.0.0.1:0"])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            Environment = { ["CUTSHOP_DATABASE"] = connection },
        };
        var process = Process.Start(start)!;
        while (await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken) is { } line)
        {
            if (line.StartsWith(Announced, StringComparison.Ordinal))
                return new(process, new Uri(line[Announced.Length..].Split(' ')[0]));
        }
        throw new InvalidOperationException("The program ended before it listened.");
    }

    public void Dispose()
    {
        _process.Kill();
        _process.WaitForExit();
        _process.Dispose();
    }
}
