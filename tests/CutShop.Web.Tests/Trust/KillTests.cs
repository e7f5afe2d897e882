using CutShop.Trust;

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
        Assert.True(figures.Acknowledged > 200, $"Only {figures.Acknowledged} writes were acknowledged.");
        Assert.True(figures.SentAgain > 0);
    }
}
