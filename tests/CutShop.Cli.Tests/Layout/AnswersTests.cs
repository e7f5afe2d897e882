namespace CutShop.Cli.Tests.Layout;

/// <summary>What DEVELOPERS.md answers, against the files.</summary>
public sealed class AnswersTests
{
    [Fact]
    public void Every_answer_leads_to_a_file_that_is_there()
    {
        Assert.NotEmpty(ContributorGuide.Answers);
        Assert.All(ContributorGuide.Answers, answer =>
        {
            Assert.NotEmpty(answer.Paths);
            Assert.All(answer.Paths, path => Assert.True(Path.Exists(Path.Combine(ContributorGuide.Root, path)), $"{answer.Question}: {path} is not there."));
        });
    }
}
