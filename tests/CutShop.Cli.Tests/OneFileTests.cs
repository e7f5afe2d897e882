using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Text.Json;
using CutShop.Testing;
using CutShop.Testing.Stores;
using CutShop.Testing.Trust;

namespace CutShop.Cli.Tests;

/// <summary>The program as a shop gets it, published as one file: it starts, reads what is built into it, and serves.</summary>
public sealed class OneFileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("cutshop-one-file-").FullName;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_program_published_as_one_file_takes_off_a_job_and_serves_its_pages()
    {
        var published = Path.Combine(_folder, "out");
        var project = Path.Combine(SourceTree.Root, "src", "CutShop.Cli");
        // Built in a folder of its own: the program beside these tests is left as it is.
        var (exit, said, _) = await RunAsync("dotnet", "publish", project, "-p:PublishProfile=linux-x64", "-p:RunAnalyzers=false", "--artifacts-path", Path.Combine(_folder, "built"), "-o", published, "-nologo");
        Assert.True(exit == 0, said);
        var program = Assert.Single(Directory.GetFileSystemEntries(published));

        Assert.Equal((0, ProgramVersion.Text + "\n", ""), await RunAsync(program, "--version"));
        var (_, takeoff, wrong) = await RunAsync(program, "takeoff", Path.Combine(AppContext.BaseDirectory, "demo", "lq-1043-beach-ramp.json"));
        Assert.Equal("", wrong);
        Assert.Equal("LQ-1043", JsonDocument.Parse(takeoff).RootElement.GetProperty("job").GetString());

        var address = string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{FreePort.Find()}");
        using var server = await ServerProcess.StartAsync(Start(program, "serve", "--shop", Path.Combine(_folder, "shop"), "--listen", address, "--backup-at", "never"));
        using var client = new HttpClient { BaseAddress = server.Address };
        foreach (var page in new[] { "/health/ready", "/sign-in" })
        {
            using var answer = await client.GetAsync(new Uri(page, UriKind.Relative), Cancel);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        }
        Assert.Equal(0, await server.StopAsync());
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static async Task<(int Exit, string Output, string Errors)> RunAsync(string program, params string[] arguments)
    {
        using var process = Process.Start(Start(program, arguments))!;
        var (output, errors) = (process.StandardOutput.ReadToEndAsync(Cancel), process.StandardError.ReadToEndAsync(Cancel));
        await process.WaitForExitAsync(Cancel);
        return (process.ExitCode, await output, await errors);
    }

    private static ProcessStartInfo Start(string program, params string[] arguments) =>
        new(program, arguments) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
}
