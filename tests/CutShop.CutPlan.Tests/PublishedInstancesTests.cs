using CutShop.Testing.CutPlans;

namespace CutShop.CutPlan.Tests;

/// <summary>Best known numbers: Instances/README.md. All instances are measured by the benchmark; a sample is here.</summary>
public sealed class PublishedInstancesTests
{
    [Theory]
    [InlineData("Falkenauer_u120_08", 50)]
    [InlineData("Falkenauer_u250_12", 105)]
    [InlineData("Falkenauer_u1000_10", 400)]
    [InlineData("t60_01", 20)]
    [InlineData("Falkenauer_t120_04", 40)]
    [InlineData("Falkenauer_t249_08", 83)]
    [InlineData("HARD2", 56)]
    [InlineData("HARD3", 55)]
    [InlineData("N2W2B1R5", 21)]
    [InlineData("N4W3B1R9", 71)]
    [InlineData("Schwerin1_BPP4", 18)]
    [InlineData("Waescher_TEST0014", 23)]
    [InlineData("Waescher_TEST0075", 13)]
    [InlineData("Hard28_BPP60", 63)]
    [InlineData("Hard28_BPP119", 77)]
    [InlineData("Hard28_BPP640", 74)]
    public void A_published_instance_is_cut_from_the_fewest_coils_known(string name, int bestKnown)
    {
        var instance = PublishedInstance.Named(name);
        var plan = FewestCoils.Of(instance.Items, instance.Capacity, withSolver: true, new(TimeSpan.FromSeconds(60), default));
        Assert.Equal(bestKnown, plan.Coils.Count);
        Assert.True(plan.IsProved);
        Assert.All(plan.Coils, coil => Assert.True(coil.Sum() <= instance.Capacity));
        Assert.Equal(instance.Items.Order(), plan.Coils.SelectMany(coil => coil).Order());
    }

    [Fact]
    public void No_quick_bound_is_over_the_fewest_coils_known()
    {
        Assert.All(PublishedInstance.All(), instance =>
            Assert.InRange(RoomBound.Of(PieceMix.Of(instance.Items, instance.Capacity)), 1, instance.BestKnown));
    }

    [Fact]
    public void The_index_lists_195_instances() => Assert.Equal(195, PublishedInstance.All().Count());

    [Fact]
    public void Without_the_solver_the_quick_rules_answer_with_a_sound_bound()
    {
        var instance = PublishedInstance.Named("Hard28_BPP60");
        var plan = FewestCoils.Of(instance.Items, instance.Capacity, withSolver: false, new(TimeSpan.FromSeconds(60), default));
        Assert.InRange(plan.Coils.Count, 63, 64);
        Assert.InRange(plan.Bound, 1, 63);
    }

    [Fact]
    public void The_planner_with_nothing_on_hand_buys_the_fewest_coils_known()
    {
        var instance = PublishedInstance.Named("Waescher_TEST0014");
        var request = new CutRequest(
            [.. instance.Items.Select((item, n) => new WaitingPiece($"P{n}", Takeoff.Lengths.Length.Millimetre * item))],
            [],
            [Takeoff.Lengths.Length.Millimetre * instance.Capacity],
            new(Takeoff.Lengths.Length.Zero, Takeoff.Lengths.Length.Zero, Takeoff.Lengths.Length.Zero, Takeoff.Lengths.Length.Zero));
        var told = new Told();
        var plan = CutPlanner.Plan(request, new(TimeSpan.FromSeconds(10)), told).Plan;
        Assert.Contains(told.All, progress => progress.Best.Bought == Takeoff.Lengths.Length.Millimetre * (23 * instance.Capacity));
        Assert.Equal(23, plan?.ToBuy.Count());
        Assert.NotEqual(PlanAim.Bought, plan!.Proof.FirstOpen);
    }
}
