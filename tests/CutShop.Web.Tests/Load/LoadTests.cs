using CutShop.Testing.Load;

namespace CutShop.Web.Tests.Load;

/// <summary>A short dose of what the benchmarks' command <c>load</c> gives for five minutes.</summary>
public sealed class LoadTests
{
    [Fact]
    public async Task Tablets_and_phones_together_get_every_answer_and_every_piece_is_given_once()
    {
        using var run = new LoadRun(new LoadPlan(
            Tablets: 6, Phones: 12, Duration: TimeSpan.FromSeconds(5), BetweenTaps: TimeSpan.FromMilliseconds(40), BetweenPages: TimeSpan.FromMilliseconds(200)));
        var figures = await run.RunAsync(TestContext.Current.CancellationToken);
        Assert.Empty(figures.Errors);
        Assert.Empty(figures.Findings);
        Assert.True(figures.Cut >= 6, $"Only {figures.Cut} pieces were cut.");
        Assert.NotEmpty(figures.Pages);
    }
}
