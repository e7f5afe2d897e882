using CutShop.Paper.Tests.Samples;

namespace CutShop.Paper.Tests.Tickets;

public sealed class PostWorkTests
{
    [Fact]
    public void A_face_s_bores_are_drilled_together_from_the_top_down()
    {
        var work = PostWork.Of(SampleJobs.Takeoff(SampleJobs.LanternQuay)).Single(w => w.Post.Mark == "A2");
        Assert.Equal(
            [(1, "top", "toward A1"), (2, "low", "toward A1"), (3, "top", "toward A3"), (4, "low", "toward A3")],
            work.Drillings().Select(d => (d.Number, d.Bore.Row, d.Operation.Face.ToString())));
    }

    [Fact]
    public void The_larger_bit_comes_first_and_is_not_taken_up_again()
    {
        var json = SampleJobs.LanternQuay.Replace(
            "\"mark\": \"low\", \"height\": \"18 in\",",
            "\"mark\": \"low\", \"height\": \"18 in\", \"rope\": { \"material\": \"nylon\", \"diameter\": \"2 in\" },",
            StringComparison.Ordinal);
        var work = PostWork.Of(SampleJobs.Takeoff(json)).Single(w => w.Post.Mark == "A2");
        Assert.Equal(["low", "low", "top", "top"], work.Drillings().Select(d => d.Bore.Row));
    }

    // By hand: a rise of 9 in over 78 in of centres, half of 5 1/2 in: 2.75 x 9 / 78 = 0.3173 in lower on the downhill
    // face and as much higher on the uphill one.
    [Fact]
    public void A_raked_bore_is_marked_where_it_comes_out()
    {
        var work = PostWork.Of(SampleJobs.Takeoff(SampleJobs.LanternQuay)).Single(w => w.Post.Mark == "A5");
        var marks = work.Drillings().Where(d => d.Bore.Row == "top").ToDictionary(d => d.Operation.Face.ToString(), d => d.Mark.Inches);
        Assert.Equal(35.6827, marks["toward A4"], 4);
        Assert.Equal(36.3173, marks["away from A4"], 4);
        Assert.Equal(42 - 35.6827, work.Post.HeightFrom(Datum.Top, work.Drillings().First(d => d.Operation.Face.ToString() == "toward A4").Mark).Inches, 4);
    }

    // A line post of two rows: both bores of a face in one step, and both screw holes, which are in one face, in one.
    [Fact]
    public void A_step_goes_on_until_the_post_is_turned_or_the_drill_is_set_otherwise()
    {
        var a2 = PostWork.Of(SampleJobs.Takeoff(SampleJobs.LanternQuay)).Single(w => w.Post.Mark == "A2");
        Assert.Equal(
            [(1, 2, "toward A1"), (3, 4, "toward A3"), (5, 6, "side, left when facing A3")],
            a2.Steps().Select(step => (step.First, step.Last, step.Face.ToString())));
        Assert.Equal([2, 2, 0], a2.Steps().Select(step => step.Drillings.Count));
        Assert.Equal([0, 0, 2], a2.Steps().Select(step => step.ScrewHoles.Count));
        var twoBits = SampleJobs.LanternQuay.Replace(
            "\"mark\": \"low\", \"height\": \"18 in\",",
            "\"mark\": \"low\", \"height\": \"18 in\", \"rope\": { \"material\": \"nylon\", \"diameter\": \"2 in\" },",
            StringComparison.Ordinal);
        Assert.Equal([1, 2, 3, 4, 5, 6], PostWork.Of(SampleJobs.Takeoff(twoBits)).Single(w => w.Post.Mark == "A2").Steps().Select(step => step.Last));
    }

    /// <summary>Every hole of every post is in one step, in the ticket's order, so that ticking the steps ticks them all.</summary>
    [Fact]
    public void The_steps_of_a_post_are_its_drillings_and_then_its_screw_holes()
    {
        foreach (var json in new[] { SampleJobs.LanternQuay, SampleJobs.Corner(12), SampleJobs.TwoPosts(start: "knot") })
        {
            foreach (var work in PostWork.Of(SampleJobs.Takeoff(json)))
            {
                Assert.Equal(work.Drillings(), work.Steps().SelectMany(step => step.Drillings));
                Assert.Equal(work.ScrewHoles, work.Steps().SelectMany(step => step.ScrewHoles));
                Assert.Equal(work.Steps().Skip(1).Select(step => step.First), work.Steps().SkipLast(1).Select(step => step.Last + 1));
            }
        }
    }

    [Theory]
    [InlineData("", "", true, true)]
    [InlineData("\"mark\": \"T2\", \"shape\": \"square\", \"across\": \"5 1/2 in\"", "\"mark\": \"T2\", \"shape\": \"square\", \"across\": \"6 in\"", false, true)]
    [InlineData("{ \"clear\": \"60 in\" }, { \"clear\": \"60 in\" } ]", "{ \"clear\": \"60 in\" }, { \"clear\": \"60 in\", \"rise\": \"2 in\" } ]", false, false)]
    public void Posts_are_drilled_alike_where_only_their_neighbours_have_other_names(string replaced, string by, bool alike, bool endsAlike)
    {
        const string Level =
            """
            { "number": "LQ-9", "rope": { "material": "nylon", "diameter": "1 in" }, "lines": [ { "mark": "T", "posts": [
              { "mark": "T1", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
              { "mark": "T2", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
              { "mark": "T3", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
              { "mark": "T4", "shape": "square", "across": "5 1/2 in", "height": "42 in" } ],
              "sections": [ { "clear": "60 in" }, { "clear": "60 in" }, { "clear": "60 in" } ],
              "rows": [ { "mark": "top", "height": "36 in", "sag": "3 in", "start": "stopped", "finish": "stopped" } ] } ] }
            """;
        var posts = PostWork.Of(SampleJobs.Takeoff(replaced.Length == 0 ? Level : Level.Replace(replaced, by, StringComparison.Ordinal))).ToList();
        Assert.Equal(alike, posts[1].IsDrilledLike(posts[2]));
        Assert.Equal(alike, posts[2].IsDrilledLike(posts[1]));
        Assert.False(posts[0].IsDrilledLike(posts[1]));
        Assert.Equal(endsAlike, posts[0].IsDrilledLike(posts[3]));
    }

    // Downhill from P2 to P3 by 6 in in 96, level before: mean slope -1/32, so half of 9 1/2 in gives 0.1484 in.
    [Fact]
    public void A_bore_that_falls_is_higher_on_the_face_that_looks_back()
    {
        var work = PostWork.Of(SampleJobs.Takeoff(SampleJobs.LanternQuay)).Single(w => w.Post.Mark == "P2");
        var marks = work.Drillings().ToDictionary(d => d.Operation.Face.ToString(), d => d.Mark.Inches);
        Assert.Equal(38.1484, marks["toward P1"], 4);
        Assert.Equal(37.8516, marks["toward P3"], 4);
    }

    [Fact]
    public void The_side_screw_stays_at_the_row_s_height()
    {
        var work = PostWork.Of(SampleJobs.Takeoff(SampleJobs.LanternQuay)).Single(w => w.Post.Mark == "P2");
        Assert.Equal(Length.FromInches(38), Assert.Single(work.Fixings).Mark);
    }

    [Fact]
    public void Posts_come_along_the_lines_and_each_once()
    {
        var marks = PostWork.Of(SampleJobs.Takeoff(SampleJobs.LanternQuay)).Select(w => w.Post.Mark);
        Assert.Equal(["A1", "A2", "A3", "A4", "A5", "P1", "P2", "P3", "P4"], marks);
    }

    [Theory]
    [InlineData("2 7/8 in", "2 7/8 in")]
    [InlineData("2 57/64 in", "2 15/16 in")]
    [InlineData("73.1 mm", "2 15/16 in")]
    [InlineData("1/64 in", "1/16 in")]
    public void A_stop_collar_is_set_to_the_next_mark_of_the_rule(string depth, string setting) =>
        Assert.Equal(LengthText.Parse(setting).OrThrow(), StopCollar.For(LengthText.Parse(depth).OrThrow()));
}
