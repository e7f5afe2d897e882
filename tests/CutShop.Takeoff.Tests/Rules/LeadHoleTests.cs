namespace CutShop.Takeoff.Tests.Rules;

/// <summary>
/// Lead holes of the National Design Specification: wood screws that hold by their thread 90 % of the root at G of 0.6 and more, 70 %
/// from 0.5, none below; loaded sideways 7/8 of root and shank under 0.6, root and shank from there on; lag screws 65 to 85 %, 60 to 75 % and 40 to 70 % of the shank (from memory). To the nearest 1/64 in.
/// </summary>
public class LeadHoleTests
{
    /// <summary>#10: root 0.130 in, 70 % is 0.091, 90 % is 0.117; #8: 0.112, 0.0784; #12: 0.148, 0.1036, 0.1332.</summary>
    [Theory]
    [InlineData("#10", 0.55, 6)]
    [InlineData("#10", 0.65, 7)]
    [InlineData("#10", 0.6, 7)]
    [InlineData("#10", 0.5, 6)]
    [InlineData("#10", 0.49, 0)]
    [InlineData("#10", 0.42, 0)]
    [InlineData("#8", 0.55, 5)]
    [InlineData("#12", 0.55, 7)]
    [InlineData("#12", 0.65, 9)]
    public void A_deck_screw_takes_a_share_of_its_root(string size, double gravity, int sixtyFourths) =>
        Assert.Equal(Length.FromSixtyFourths(sixtyFourths), LeadHole.Pilot(Screw(ScrewKind.DeckScrew, size), FixingPurpose.End, (decimal)gravity));

    /// <summary>#12: 7/8 of 0.148 is 0.1295, 1/8 in, and of 0.216 0.189, 3/16 in; from G 0.6 on 0.148 is 9/64 and 0.216 is 14/64 in.</summary>
    [Theory]
    [InlineData("#12", 0.55, 8, 12)]
    [InlineData("#12", 0.42, 8, 12)]
    [InlineData("#12", 0.6, 9, 14)]
    [InlineData("#10", 0.55, 7, 11)]
    public void A_deck_screw_that_is_loaded_sideways_takes_two_holes(string size, double gravity, int thread, int shank)
    {
        var screw = Screw(ScrewKind.DeckScrew, size);
        foreach (var purpose in new[] { FixingPurpose.Line, FixingPurpose.Wrap, FixingPurpose.Join, FixingPurpose.Beside })
        {
            Assert.Equal(Length.FromSixtyFourths(thread), LeadHole.Pilot(screw, purpose, (decimal)gravity));
            Assert.Equal(Length.FromSixtyFourths(shank), LeadHole.Shank(screw, purpose, (decimal)gravity));
        }
        Assert.Equal(Length.Zero, LeadHole.Shank(screw, FixingPurpose.End, (decimal)gravity));
    }

    [Theory]
    [InlineData("1/4 in", 0.65, 0.65, 0.85)]
    [InlineData("3/8 in", 0.65, 0.65, 0.85)]
    [InlineData("1/4 in", 0.55, 0.60, 0.75)]
    [InlineData("3/8 in", 0.55, 0.60, 0.75)]
    [InlineData("1/4 in", 0.42, 0.40, 0.70)]
    [InlineData("3/8 in", 0.42, 0.40, 0.70)]
    public void A_lag_screws_thread_hole_lies_in_the_published_range_of_its_shank(string size, double gravity, double least, double most)
    {
        var lag = Screw(ScrewKind.LagScrew, size);
        var pilot = LeadHole.Pilot(lag, FixingPurpose.End, (decimal)gravity);
        Assert.InRange(pilot.Inches / lag.Shank.Inches, least, most);
        Assert.True(pilot.IsWhole(Length.FromSixtyFourths(1)));
    }

    /// <summary>A lag's shank hole is its shank and 1/64 in, its counterbore the head across the corners up to the next 1/16 in: 0.505 is 9/16, 0.65 is 11/16.</summary>
    [Theory]
    [InlineData("1/4 in", "1/4 in", "9/16 in", "3/16 in")]
    [InlineData("3/8 in", "3/8 in", "11/16 in", "1/4 in")]
    public void A_lag_screw_has_a_shank_hole_and_a_counterbore(string size, string shank, string counterbore, string depth)
    {
        var lag = Screw(ScrewKind.LagScrew, size);
        Assert.Equal((Read(shank), Read(counterbore), Read(depth)), (lag.Shank, lag.Counterbore, lag.CounterboreDepth));
        Assert.Equal(lag.Shank + Length.FromSixtyFourths(1), LeadHole.Shank(lag, FixingPurpose.Line, 0.55m));
    }

    /// <summary>Shank and root: wood screw table of the American wood handbook; lags ASME B18.2.1.</summary>
    [Theory]
    [InlineData(ScrewKind.DeckScrew, "#8", 0.164, 0.112)]
    [InlineData(ScrewKind.DeckScrew, "#10", 0.190, 0.130)]
    [InlineData(ScrewKind.DeckScrew, "#12", 0.216, 0.148)]
    [InlineData(ScrewKind.LagScrew, "1/4 in", 0.250, 0.173)]
    [InlineData(ScrewKind.LagScrew, "3/8 in", 0.375, 0.265)]
    public void The_catalogue_has_the_published_diameters(ScrewKind kind, string size, double shank, double root)
    {
        var screw = Screw(kind, size);
        Assert.Equal((shank, root), (screw.Shank.Inches, screw.Root.Inches));
    }

    private static Screw Screw(ScrewKind kind, string size) =>
        ShopTables.Standard.Screws.Screws.First(screw => screw.Kind == kind && screw.Size == size);

    private static Length Read(string text) => LengthText.Parse(text).OrThrow();
}
