using CutShop.Paper.Tests.Samples;

namespace CutShop.Paper.Tests.Drawings;

public sealed class RakeTextTests
{
    // The angles are the arctangents of rise over centres, reckoned by hand: 9 in 77 1/2 and 4 in 77 1/2.
    [Theory]
    [InlineData("9 in", "-4 in", "6.6° down toward A2", "3.0° down toward A4")]
    [InlineData("-9 in", "4 in", "6.6° up toward A2", "3.0° up toward A4")]
    [InlineData("9 in", "9 in", "6.6° down toward A2", "6.6° up toward A4")]
    [InlineData("0 in", "4 in", "level", "3.0° up toward A4")]
    public void A_corner_s_bores_are_each_told_by_the_post_that_they_look_to(string risesTo, string risesFrom, string arriving, string departing)
    {
        var takeoff = SampleJobs.Takeoff(Corner(risesTo, risesFrom));
        var work = PostWork.Of(takeoff).Single(post => post.Post.Mark == "A3");
        Assert.Equal([arriving, departing], work.Bores.Select(bore => RakeText.Of(bore, work, PaperSettings.Default)));
        // No ticket puts the two under one heading unless one word is right for both.
        Assert.Equal(work.Bores.Select(bore => RakeText.Of(bore, work, PaperSettings.Default)).Distinct().Count(), DrilledAlike.Of(work).Count());
    }

    [Fact]
    public void A_line_post_s_bore_climbs_toward_the_higher_neighbour_and_an_end_post_s_is_told_by_its_only_one()
    {
        var takeoff = SampleJobs.Takeoff(Corner("9 in", "-4 in"));
        Assert.Equal(["3.3° up toward A3", "3.0° up toward A3"], new[] { "A2", "A4" }.Select(mark =>
        {
            var work = PostWork.Of(takeoff).Single(post => post.Post.Mark == mark);
            return RakeText.Of(work.Bores[0], work, PaperSettings.Default);
        }));
    }

    private static string Corner(string risesTo, string risesFrom) => $$"""
        {
          "number": "LQ-7", "rope": { "material": "polypropylene", "diameter": "1 1/2 in" },
          "lines": [ {
            "mark": "A",
            "posts": [
              { "mark": "A1", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
              { "mark": "A2", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
              { "mark": "A3", "shape": "square", "across": "5 1/2 in", "height": "42 in", "turn": "90 left" },
              { "mark": "A4", "shape": "square", "across": "5 1/2 in", "height": "42 in" } ],
            "sections": [ { "centres": "77 1/2 in" }, { "centres": "77 1/2 in", "rise": "{{risesTo}}" }, { "centres": "77 1/2 in", "rise": "{{risesFrom}}" } ],
            "rows": [ { "mark": "top", "height": "36 in", "sag": "5 in", "start": "stopped", "finish": "stopped" } ]
          } ]
        }
        """;
}
