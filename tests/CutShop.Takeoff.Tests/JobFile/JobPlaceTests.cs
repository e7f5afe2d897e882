namespace CutShop.Takeoff.Tests.JobFile;

public sealed class JobPlaceTests
{
    [Theory]
    [InlineData("number")]
    [InlineData("rope.diameter")]
    [InlineData("lines")]
    [InlineData("lines[0]")]
    [InlineData("lines[12].mark")]
    [InlineData("lines[0].posts")]
    [InlineData("lines[0].posts[3]")]
    [InlineData("lines[0].posts[3].across")]
    [InlineData("lines[0].sections[0].clear")]
    [InlineData("lines[7].rows[1].rope.diameter")]
    [InlineData("lines[7].rows[1].at.A4")]
    public void A_place_is_found_by_its_name_and_by_its_path(string name)
    {
        var place = JobPlace.Find(name)!.Value;
        Assert.Equal(name, place.Name);
        Assert.Equal("$." + name, place.ToString());
        Assert.Equal(place, JobPlace.Find("$." + name));
    }

    [Theory]
    [InlineData("posts[0]")]
    [InlineData("lines[0]x")]
    [InlineData("lines[0")]
    [InlineData("lines[]")]
    [InlineData("lines[-1].mark")]
    [InlineData("lines[99999999999].mark")]
    [InlineData("lines[0].posts[0].posts[0]")]
    [InlineData("lines[0].lines[0]")]
    [InlineData("a.b.c.d")]
    public void Other_names_are_no_place(string name) => Assert.Null(JobPlace.Find(name));

    [Fact]
    public void A_place_knows_what_holds_it()
    {
        var place = JobPlace.Find("lines[2].rows[1].rope.diameter")!.Value;
        var above = new List<string>();
        for (; place != JobPlace.Job; place = place.Above)
            above.Add(place.Name);
        Assert.Equal(["lines[2].rows[1].rope.diameter", "lines[2].rows[1].rope", "lines[2].rows[1]", "lines[2]"], above);
        Assert.Equal(("", "$"), (place.Name, place.ToString()));
    }

    [Fact]
    public void A_name_that_is_not_plain_is_quoted() =>
        Assert.Equal("$.lines[0].rows[0].at['it\\'s']", JobPlace.Job["lines"][0]["rows"][0]["at"]["it's"].ToString());
}
