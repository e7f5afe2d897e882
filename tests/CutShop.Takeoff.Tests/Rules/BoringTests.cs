namespace CutShop.Takeoff.Tests.Rules;

public class BoringTests
{
    /// <summary>Common practice, no source: 1/16 in over true rope, 3/16 in over natural rope, up to the next 1/16 in.</summary>
    [Theory]
    [InlineData(RopeMaterial.Polypropylene, "1 1/2 in", null, "1 9/16 in")]
    [InlineData(RopeMaterial.Nylon, "2 in", null, "2 1/16 in")]
    [InlineData(RopeMaterial.Manila, "1 1/2 in", null, "1 11/16 in")]
    [InlineData(RopeMaterial.Cotton, "1 in", null, "1 3/16 in")]
    [InlineData(RopeMaterial.Manila, "1 1/2 in", "1 9/16 in", "1 5/8 in")]
    [InlineData(RopeMaterial.Polyester, "1 1/2 in", "1 7/16 in", "1 1/2 in")]
    [InlineData(RopeMaterial.Hemp, "1 1/2 in", "1 33/64 in", "1 5/8 in")]
    [InlineData(RopeMaterial.Polypropylene, "1 33/64 in", null, "1 5/8 in")]
    [InlineData(RopeMaterial.Polypropylene, "38.1 mm", null, "1 9/16 in")]
    [InlineData(RopeMaterial.Polypropylene, "38.100001 mm", null, "1 5/8 in")]
    [InlineData(RopeMaterial.Polyethylene, "40 mm", null, "1 11/16 in")]
    public void The_bit_is_a_little_over_the_rope(RopeMaterial material, string diameter, string? measured, string bit) =>
        Assert.Equal(Read(bit), RopeBit.DiameterFor(new Rope(material, Read(diameter), measured is null ? null : Read(measured))));

    /// <summary>W / 2 and 1/8 in; along a 3-4-5 slope W is 5/4 as long.</summary>
    [Theory]
    [InlineData("5 1/2 in", 0.0, 2.875)]
    [InlineData("5 1/2 in", 0.75, 3.5625)]
    [InlineData("5 1/2 in", -0.75, 3.5625)]
    [InlineData("3 1/2 in", 0.0, 1.875)]
    public void Both_halves_of_a_through_bore_break_into_each_other(string across, double slope, double inches) =>
        Assert.Equal(inches, BoreRules.ThroughDepth(Read(across), slope).Inches, 1e-7);

    [Fact]
    public void A_stopped_bore_goes_half_way() => Assert.Equal(Read("2 3/4 in"), BoreRules.StoppedDepth(Read("5 1/2 in")));

    /// <summary>(5.5 − 1.5625) / 2 = 1.96875; (3.5 − 2.0625) / 2 = 0.71875.</summary>
    [Theory]
    [InlineData("5 1/2 in", "1 9/16 in", "1 31/32 in")]
    [InlineData("3 1/2 in", "2 1/16 in", "23/32 in")]
    public void The_side_wall_is_what_the_bit_leaves_on_each_side(string across, string bit, string wall) =>
        Assert.Equal(Read(wall), BoreRules.SideWall(Read(across), Read(bit)));

    /// <summary>15 degrees off the square: 2.75 - 2.75 tan 15 = 2.75 - 0.736860, less 1.5625 / (2 cos 15) = 0.808810.</summary>
    [Fact]
    public void A_bore_off_the_square_leaves_less_at_its_mouth() =>
        Assert.Equal(1.204330, BoreRules.SideWall(Read("5 1/2 in"), Read("1 9/16 in"), skewDegrees: 15).Inches, 1e-6);

    [Theory]
    [InlineData("1 9/16 in", "1 1/2 in", "1 5/8 in", BitKind.ThreadedForstner, true)]
    [InlineData("1 1/16 in", "1 in", "1 1/8 in", BitKind.ThreadedForstner, true)]
    [InlineData("9/16 in", "1/2 in", "5/8 in", BitKind.Spade, true)]
    [InlineData("2 11/16 in", "2 1/2 in", "2 3/4 in", BitKind.HoleSaw, true)]
    [InlineData("2 5/16 in", "2 1/4 in", "2 5/16 in", BitKind.ThreadedForstner, false)]
    [InlineData("3 1/16 in", "3 in", "3 1/16 in", BitKind.ThreadedForstner, false)]
    public void The_smallest_bit_on_the_rack_up_to_an_eighth_over_is_chosen(string wanted, string rope, string bit, BitKind kind, bool onRack)
    {
        var (chosen, choice) = ShopTables.Standard.Rack.Choose(Read(wanted), Read(rope));
        Assert.Equal((Read(bit), kind, onRack), (chosen, choice.Kind, choice.OnRack));
        Assert.NotEmpty(choice.ReasonFor(chosen).ToString());
    }

    [Fact]
    public void Of_two_kinds_of_one_size_the_threaded_Forstner_is_taken_and_a_smaller_bit_before_a_better_kind()
    {
        var rack = new BitRack([new(BitKind.ThreadedForstner, Read("1 1/8 in")), new(BitKind.HoleSaw, Read("1 1/8 in")), new(BitKind.HoleSaw, Read("1 1/16 in"))]);
        Assert.Equal((Read("1 1/8 in"), BitKind.ThreadedForstner), Kind(rack.Choose(Read("1 3/32 in"), Read("1 in"))));
        Assert.Equal((Read("1 1/16 in"), BitKind.HoleSaw), Kind(rack.Choose(Read("1 1/16 in"), Read("1 in"))));

        static (Length Bit, BitKind Kind) Kind((Length Bit, BitChoice Choice) chosen) => (chosen.Bit, chosen.Choice.Kind);
    }

    [Fact]
    public void A_spade_is_for_rope_under_an_inch_and_a_half()
    {
        var rack = new BitRack([new(BitKind.Spade, Read("1 9/16 in"))]);
        Assert.True(rack.Choose(Read("1 9/16 in"), Read("1 31/64 in")).Choice.OnRack);
        Assert.False(rack.Choose(Read("1 9/16 in"), Read("1 1/2 in")).Choice.OnRack);
    }

    private static Length Read(string text) => LengthText.Parse(text).OrThrow();
}
