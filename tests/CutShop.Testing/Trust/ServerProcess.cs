using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;

namespace CutShop.Testing.Trust;

/// <summary>The real program, serving a shop in a process of its own, so that it can be killed.</summary>
internal sealed class ServerProcess : IDisposable
{
    private const string Announced = "The shop's pages: ";

    private readonly Process _process;
    private readonly ConcurrentQueue<string> _said = new();

    private ServerProcess(Process process) => _process = process;

    public int Id => _process.Id;

    /// <summary>Where it listens.</summary>
    public Uri Address { get; private set; } = null!;

    /// <summary>All lines it has written so far.</summary>
    public IReadOnlyCollection<string> Said => _said;

    /// <summary>Starts it and waits until it listens.</summary>
    /// <param name="shop">The shop's folder.</param>
    /// <param name="port">Where it listens on this machine.</param>
    /// <param name="connection">Its database on a server, or null for the file in the folder.</param>
    public static Task<ServerProcess> StartAsync(string shop, int port, string? connection = null)
    {
        var program = Command("serve", "--shop", shop, "--listen", string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}"), "--backup-at", "never");
        if (connection is not null)
            program.Environment["CUTSHOP_DATABASE"] = connection;
        return StartAsync(program);
    }

    /// <summary>Starts it by a command of one's own and waits until it listens.</summary>
    public static async Task<ServerProcess> StartAsync(ProcessStartInfo start)
    {
        var server = new ServerProcess(Process.Start(start)!);
        var listens = new TaskCompletionSource<Uri>(TaskCreationOptions.RunContinuationsAsynchronously);
        server._process.ErrorDataReceived += (_, said) => server.Hear(said.Data);
        server._process.OutputDataReceived += (_, said) =>
        {
            server.Hear(said.Data);
            if (said.Data is null)
                listens.TrySetException(new InvalidOperationException($"The server ended before it listened: {string.Join('\n', server.Said)}"));
            else if (said.Data.StartsWith(Announced, StringComparison.Ordinal))
                listens.TrySetResult(new(said.Data[Announced.Length..].Split(' ')[0]));
        };
        server._process.BeginErrorReadLine();
        server._process.BeginOutputReadLine();
        server.Address = await listens.Task;
        return server;
    }

    /// <summary>A command of the program that lies beside this one.</summary>
    public static ProcessStartInfo Command(params string[] args) => CommandOf(Path.Combine(AppContext.BaseDirectory, "cutshop.dll"), args);

    /// <summary>A command of a program that lies anywhere.</summary>
    public static ProcessStartInfo CommandOf(string program, params string[] args)
    {
        var start = new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet")
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.ArgumentList.Add(program);
        foreach (var arg in args)
            start.ArgumentList.Add(arg);
        return start;
    }

    /// <summary>Ends it at once, in the middle of whatever it does (SIGKILL).</summary>
    public async Task KillAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
    }

    /// <summary>Asks it to stop, as a system's own manager of services does (SIGTERM), and waits until it has ended.</summary>
    /// <returns>Its exit code.</returns>
    public async Task<int> StopAsync()
    {
        using var kill = Process.Start("kill", ["-TERM", Id.ToString(CultureInfo.InvariantCulture)]);
        await kill.WaitForExitAsync();
        await _process.WaitForExitAsync();
        return _process.ExitCode;
    }

    public void Dispose()
    {
        if (!_process.HasExited)
            _process.Kill();
        _process.WaitForExit();
        _process.Dispose();
    }

    private void Hear(string? line)
    {
        if (line is not null)
            _said.Enqueue(line);
    }
}
