using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace CutShop.Trust;

/// <summary>The real program, serving a shop in a process of its own, so that it can be killed.</summary>
internal sealed class ServerProcess : IDisposable
{
    private const string Announced = "The shop's pages: ";

    private readonly Process _process;

    private ServerProcess(Process process) => _process = process;

    public int Id => _process.Id;

    /// <summary>Where it listens.</summary>
    public Uri Address { get; private set; } = null!;

    /// <summary>Starts it and waits until it listens.</summary>
    /// <param name="shop">The shop's folder.</param>
    /// <param name="port">Where it listens on this machine.</param>
    public static async Task<ServerProcess> StartAsync(string shop, int port)
    {
        return await StartAsync(Command("serve", "--shop", shop, "--listen", string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}"), "--backup-at", "never"));
    }

    /// <summary>Starts it by a command of one's own and waits until it listens.</summary>
    public static async Task<ServerProcess> StartAsync(ProcessStartInfo start)
    {
        var server = new ServerProcess(Process.Start(start)!);
        server._process.ErrorDataReceived += (_, _) => { };
        server._process.BeginErrorReadLine();
        while (await server._process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (!line.StartsWith(Announced, StringComparison.Ordinal))
                continue;
            server.Address = new(line[Announced.Length..].Split(' ')[0]);
            _ = server._process.StandardOutput.ReadToEndAsync();
            return server;
        }
        throw new InvalidOperationException("The server ended before it listened.");
    }

    /// <summary>A command of the program that lies beside this one.</summary>
    public static ProcessStartInfo Command(params string[] args)
    {
        var start = new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet")
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "cutshop.dll"));
        foreach (var arg in args)
            start.ArgumentList.Add(arg);
        return start;
    }

    /// <summary>A port of this machine that nobody listens on.</summary>
    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    /// <summary>Ends it at once, in the middle of whatever it does (SIGKILL).</summary>
    public async Task KillAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
    }

    public void Dispose()
    {
        if (!_process.HasExited)
            _process.Kill();
        _process.WaitForExit();
        _process.Dispose();
    }
}
