using CutShop.Testing.Trust;

namespace CutShop.Shop.Tests.Benches;

/// <summary>Some of the days that the benchmarks' command <c>trust days</c> tries in thousands. A day's number repeats it.</summary>
public sealed class RandomDaysTests
{
    private const int Days = 120;

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public async Task Whatever_slips_the_books_are_whole_and_everybody_has_a_way_on(int part)
    {
        for (var day = part; day < Days; day += 4)
            Assert.Null(await RandomDay.OfAsync(day));
    }
}
