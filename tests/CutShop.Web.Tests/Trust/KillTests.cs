using CutShop.Testing.Trust;

namespace CutShop.Web.Tests.Trust;

/// <summary>The server is killed in the middle of its work, 20 times here and more often by the benchmarks' command <c>trust kills</c>.</summary>
public sealed class KillTests
{
    [Fact]
    public async Task After_each_of_twenty_kills_every_acknowledged_change_is_there_and_the_rope_adds_up()
    {
        using var run = new KillRun(seed: 20270201);
        var figures = await run.RunAsync(kills: 20, progress: null, TestContext.Current.CancellationToken);
        Assert.Empty(figures.Lost);
        Assert.Empty(figures.Findings);
        Assert.Empty(figures.Faults);
        Assert.True(figures is { Acknowledged: > 200, SentAgain: > 0, Cut: > 0, Drilled: > 0, Plans: > 0, Jobs: > 0 }, $"Too little was done to tell: {figures}");
    }
}
