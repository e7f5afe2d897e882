namespace CutShop.Paper.Tests.Words;

public sealed class FiguresTests
{
    [Theory]
    [InlineData(5657_949_000, "5658 mm", "≈ 5657.9 mm")]
    [InlineData(5658_000_000, "5658 mm", "5658 mm")]
    [InlineData(499_999, "0 mm", "≈ 0.5 mm")]
    [InlineData(38_100_000, "38 mm", "38.1 mm")]
    public void At_a_bench_millimetres_are_whole_and_bits_and_paper_keep_their_tenths(long nanometres, string bench, string paper)
    {
        var length = Length.FromNanometres(nanometres);
        var figures = new Figures(UnitsFirst.Millimetres, WholeMillimetres: true);
        Assert.Equal(bench, figures.LongLead(length).Replace('\u00A0', ' '));
        Assert.Equal(bench, figures.Lead(length).Replace('\u00A0', ' '));
        Assert.Equal(paper, figures.ToTheTenth().Lead(length).Replace('\u00A0', ' '));
        Assert.Equal(paper, new Figures(UnitsFirst.Millimetres).LongLead(length).Replace('\u00A0', ' '));
    }
}
