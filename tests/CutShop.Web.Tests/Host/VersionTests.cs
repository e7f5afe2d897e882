using System.Diagnostics;
using CutShop.Testing;
using CutShop.Testing.Trust;

namespace CutShop.Web.Tests.Host;

public sealed class VersionTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_command_the_foot_of_a_page_and_the_changelog_tell_one_version()
    {
        using var process = Process.Start(ServerProcess.Command("--version"))!;
        var said = (await process.StandardOutput.ReadToEndAsync(Cancel)).Trim();
        await process.WaitForExitAsync(Cancel);
        Assert.Matches(@"^\d+\.\d+\.\d+$", said);

        await using var shop = await RunningShop.StartAsync();
        Assert.Contains($"CutShop {said}</span>", await shop.Client.GetStringAsync(new Uri("/", UriKind.Relative), Cancel), StringComparison.Ordinal);
        var newest = (await File.ReadAllLinesAsync(Path.Combine(SourceTree.Root, "CHANGELOG.md"), Cancel)).First(line => line.StartsWith("## ", StringComparison.Ordinal));
        Assert.Equal($"## {said}", newest);
    }

    [Fact]
    public async Task A_stranger_is_told_no_version()
    {
        await using var shop = await RunningShop.StartAsync();
        Assert.DoesNotContain(ProgramVersion.Text, await shop.Stranger.GetStringAsync(new Uri("/sign-in", UriKind.Relative), Cancel), StringComparison.Ordinal);
    }
}
