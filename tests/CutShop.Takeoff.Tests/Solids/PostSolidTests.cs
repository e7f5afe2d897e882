using CutShop.Testing.Solids;

namespace CutShop.Takeoff.Tests.Solids;

public class PostSolidTests
{
    /// <summary>The benchmark <c>solid</c> counts in 10,000 posts.</summary>
    [Fact]
    public void Figures_of_a_post_agree_with_random_points_counted_in_its_bodies() =>
        Assert.Equal([], Enumerable.Range(0, 200).SelectMany(CountedPost.Differences));

    /// <summary>The contract's example: 5 1/2 in posts, a turn of 60 degrees, bit 1 9/16: 2.75 − 0.736860 − 0.808810.</summary>
    [Theory]
    [InlineData(60, "1 9/16 in", 1.204330)]
    [InlineData(90, "1 9/16 in", 1.968750)]
    [InlineData(120, "1 9/16 in", 1.204330)]
    public void The_wood_beside_a_corners_bores_is_least_at_their_mouths(int turn, string bit, double wall)
    {
        var solid = CornerOf(turn, bit, rakeDegrees: 0);
        Assert.All(solid.Bores, bore => Assert.Equal(wall, solid.WoodRound(bore).Beside.Inches, 1e-6));
    }

    [Theory]
    [InlineData(20, 0)]
    [InlineData(60, 25)]
    [InlineData(90, -10)]
    [InlineData(135, 40)]
    public void The_wood_beside_a_bore_is_the_rules_wall_whatever_its_rake(int turn, double rakeDegrees)
    {
        var solid = CornerOf(turn, "1 3/4 in", rakeDegrees);
        var wall = BoreRules.SideWall(Across, Read("1 3/4 in"), solid.Post.SkewDegrees);
        Assert.All(solid.Bores, bore => Assert.Equal(wall.Inches, solid.WoodRound(bore).Beside.Inches, 1e-6));
    }

    /// <summary>
    /// Bit 1 5/8 in at 36 in in a post of 42 in, rising 1 in 2: at the higher mouth its middle is 2 3/4 / 2 = 1.375 in up and its edge
    /// 13/16 x √1.25 = 0.908403 in over it.
    /// </summary>
    [Fact]
    public void Wood_above_a_raked_bore_is_measured_at_the_higher_mouth_and_wood_below_at_the_lower()
    {
        var solid = new PostSolid(Post(), isStart: false);
        solid.Add(Bore(solid.Post, AtPostKind.Through, "1 5/8 in", "36 in", Math.Atan(0.5) * 180 / Math.PI));
        var wood = solid.WoodRound(solid.Bores[0]);
        Assert.Equal(42 - 36 - 1.375 - 0.908403, wood.Above.Inches, 1e-6);
        Assert.Equal(36 - 1.375 - 0.908403, wood.Below.Inches, 1e-6);
        Assert.Null(wood.Beyond);
    }

    /// <summary>Two level bores of 1 5/8 in, 3 1/4 in from middle to middle, have their own width between them.</summary>
    [Fact]
    public void Wood_between_level_bores_is_what_lies_between_their_edges()
    {
        var solid = new PostSolid(Post(), isStart: false);
        solid.Add(Bore(solid.Post, AtPostKind.Through, "1 5/8 in", "36 in", 0));
        solid.Add(Bore(solid.Post, AtPostKind.Through, "1 5/8 in", "32 3/4 in", 0));
        Assert.Equal(1.625, Gap.Between(solid.Bores[0].Body, solid.Bores[1].Body), 1e-9);
    }

    /// <summary>A hole that ends before a bore: its flat end is nearer than the round end that a simpler reckoning would give it.</summary>
    [Fact]
    public void A_hole_that_ends_before_a_bore_keeps_the_wood_before_its_flat_end()
    {
        var bore = new Cylinder(new(-3, 0, 10), new(3, 0, 10), 0.8);
        var hole = new Cylinder(new(0, 3, 10), new(0, 1.1, 10), 0.3);
        Assert.Equal(0.3, Gap.Between(bore, hole), 1e-6);
        Assert.Equal(0.3, Gap.Between(hole, bore), 1e-6);
        Assert.Equal(0, Gap.Between(bore, new(new(0, 3, 10), new(0, 0.79, 10), 0.3)), 1e-6);
    }

    [Fact]
    public void A_point_is_inside_the_post_down_to_its_foot()
    {
        var solid = new PostSolid(Post(), isStart: false);
        Assert.Equal(-24, solid.Foot);
        Assert.True(solid.IsInside(new(2.5, -2.75, -24)));
        Assert.False(solid.IsInside(new(2.76, 0, 10)));
        Assert.False(solid.IsInside(new(0, 0, 42.01)));
        Assert.False(solid.IsInside(new(0, 0, -24.01)));
    }

    [Fact]
    public void A_takeoffs_post_is_a_solid_with_all_that_is_in_it()
    {
        var takeoff = Sample.Takeoff(Sample.Line(Sample.PlainRow).Replace("\"A2\",", "\"A2\", \"turn\": \"90 left\",", StringComparison.Ordinal));
        var work = PostWork.Of(takeoff).Single(post => post.Post.Mark == "A2");
        var solid = PostSolid.Of(work, ShopTables.Standard.Screws);
        Assert.Equal([true, false], solid.Bores.Select(bore => bore.IsFirst));
        Assert.Equal([FixingPurpose.CornerFirst, FixingPurpose.CornerSecond], solid.Screws.Select(screw => screw.Purpose));
        // The first rope comes along the line, so its screw comes from beyond; the second leaves to the left, so its screw comes from the right.
        Assert.Equal((2.75, -2.75), (solid.Screws[0].Body.From.X, solid.Screws[1].Body.From.Y));
        Assert.All(solid.Screws, screw => Assert.True(solid.IsInside(screw.Body.To)));
    }

    private static Length Across => Read("5 1/2 in");

    private static Post Post(Turn? turn = null) => new("A2", PostShape.Square, Across, Read("42 in"), turn, Read("24 in"));

    private static PostSolid CornerOf(int turn, string bit, double rakeDegrees)
    {
        var solid = new PostSolid(Post(new(turn, TurnSide.Left)), isStart: false);
        solid.Add(Bore(solid.Post, AtPostKind.Corner, bit, "20 in", rakeDegrees));
        solid.Add(Bore(solid.Post, AtPostKind.Corner, bit, "20 in", -rakeDegrees));
        return solid;
    }

    private static Bore Bore(Post post, AtPostKind kind, string bit, string height, double rakeDegrees) => new(
        post, "top", "A-top-1", kind, new(RopeMaterial.Polypropylene, Read("1 1/2 in")), Read(bit), new(BitKind.ThreadedForstner, OnRack: true), Read(height), Length.Zero, rakeDegrees, []);

    private static Length Read(string length) => LengthText.Parse(length).OrThrow();
}
