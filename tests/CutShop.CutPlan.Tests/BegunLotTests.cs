namespace CutShop.CutPlan.Tests;

public sealed class BegunLotTests
{
    private static readonly CutAllowances NoLoss = new(Length.Zero, Length.Zero, Length.Zero, Length.FromInches(36));

    [Fact]
    public void A_job_begun_in_a_lot_stays_in_it_where_another_coil_would_leave_less()
    {
        // The 50 in coil of lot L1 would be used up; the job was begun in L2.
        var plan = Plan(Piece(50, "L2"), [Coil("C1", "L1", 50), Coil("C2", "L2", 200)]).Plan!;
        Assert.Equal("C2", Assert.Single(plan.Coils, coil => coil.Pieces.Count > 0).Coil);
        Assert.Equal("C1", Assert.Single(Plan(Piece(50, begunLot: null), [Coil("C1", "L1", 50), Coil("C2", "L2", 200)]).Plan!.Coils).Coil);
    }

    [Fact]
    public void A_begun_lot_that_is_short_is_named_with_what_is_missing()
    {
        var problem = Assert.Single(Plan(Piece(50, "L2"), [Coil("C1", "L1", 500), Coil("C2", "L2", 40)]).Problems);
        Assert.Equal(("pieces of J", "L2"), (problem.Path, problem.Value));
        Assert.Contains("of which there is 10\" too little on hand", problem.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Rope_bought_is_another_lot_than_the_one_begun()
    {
        var request = new CutRequest([Piece(50, "L2")], [Coil("C2", "L2", 60)], [Length.FromInches(50)], NoLoss);
        Assert.Equal("C2", Assert.Single(CutPlanner.Plan(request).Plan!.Coils).Coil);
    }

    private static WaitingPiece Piece(int inches, string? begunLot) => new("P", Length.FromInches(inches), "J", Due: null, begunLot);

    private static Coil Coil(string id, string lot, int inches) => new(id, lot, Length.FromInches(inches), IsOffcut: true);

    private static CutPlanResult Plan(WaitingPiece piece, IReadOnlyList<Coil> coils) =>
        CutPlanner.Plan(new CutRequest([piece], coils, [], NoLoss));
}
