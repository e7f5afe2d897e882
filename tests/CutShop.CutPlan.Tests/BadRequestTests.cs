namespace CutShop.CutPlan.Tests;

public sealed class BadRequestTests
{
    private static readonly Coil TenFeet = new("C1", "lot 1", Length.FromInches(120), IsOffcut: false);

    [Fact]
    public void A_piece_longer_than_any_coil_is_named_with_the_longest_coil_that_can_be_had()
    {
        var result = CutPlanner.Plan(new(
            [new("J1-A", Length.FromInches(130)), new("J1-B", Length.FromInches(20))], [TenFeet], [Length.FromInches(125)], CutAllowances.Default));
        Assert.Equal(
            [new("pieces/J1-A", "10' 10\"", "piece J1-A of 10' 10\" needs 10' 11 3/8\" with its cut, after the first trim; the longest coil, on hand or to buy, is 10' 5\"")],
            result.Problems);
        Assert.Null(result.Plan);
    }

    [Fact]
    public void No_coil_and_nothing_to_buy_is_said_piece_by_piece()
    {
        var result = CutPlanner.Plan(new([new("J1-A", Length.Inch)], [], [], CutAllowances.Default));
        Assert.Equal(
            [new("pieces/J1-A", "1\"", "piece J1-A of 1\" has no coil: none is on hand and no standard length can be bought")], result.Problems);
    }

    [Fact]
    public void The_longest_piece_that_fits_is_planned_and_one_a_sixty_fourth_longer_is_not()
    {
        // 120 less 1 of trim, 1/8 of kerf and 1/4 of squaring: 118 5/8.
        var fits = Length.FromSixtyFourths((118 * 64) + 40);
        Assert.NotNull(CutPlanner.Plan(new([new("A", fits)], [TenFeet], [], CutAllowances.Default)).Plan);
        Assert.Null(CutPlanner.Plan(new([new("A", fits + Length.FromSixtyFourths(1))], [TenFeet], [], CutAllowances.Default)).Plan);
    }

    [Fact]
    public void Lengths_that_are_not_positive_are_all_named_at_once()
    {
        var result = CutPlanner.Plan(new(
            [new("A", Length.Zero), new("B", -Length.Inch)],
            [TenFeet with { Left = Length.Zero }],
            [-Length.Foot],
            new(-Length.Inch, Length.Zero, Length.Zero, Length.Zero)));
        Assert.Equal(
            [
                "allowances/kerf is -1\"; zero or more is accepted",
                "pieces/A is 0\"; a length over zero is accepted",
                "pieces/B is -1\"; a length over zero is accepted",
                "coils/C1 is 0\"; a length over zero is accepted",
                "standard lengths is -1' 0\"; a length over zero is accepted",
            ],
            result.Problems.Select(problem => problem.Text));
    }

    [Fact]
    public void A_code_that_is_there_twice_is_named()
    {
        var result = CutPlanner.Plan(new([new("A", Length.Inch), new("A", Length.Inch)], [TenFeet, TenFeet], [], CutAllowances.Default));
        Assert.Equal(["'A' is given twice; each name is accepted once", "'C1' is given twice; each name is accepted once"],
            result.Problems.Select(problem => problem.Text));
    }

    [Fact]
    public void Too_little_rope_with_nothing_to_buy_says_how_much_is_short()
    {
        // Two pieces of 80 3/8 with their cuts are 160 3/4; 119 are to be had.
        var result = CutPlanner.Plan(new([new("A", Length.FromInches(80)), new("B", Length.FromInches(80))], [TenFeet], [], CutAllowances.Default));
        Assert.Equal("the coils on hand are 3' 5 3/4\" short of the pieces and their cuts; accepted: more coils, or a standard length to buy", result.Problems[0].Text);
    }

    [Fact]
    public void Enough_rope_in_lengths_that_cannot_serve_is_proved_and_said()
    {
        var result = CutPlanner.Plan(new(
            [.. Enumerable.Range(1, 3).Select(n => new WaitingPiece($"P{n}", Length.FromInches(70)))],
            [TenFeet, TenFeet with { Id = "C2" }], [], CutAllowances.Default));
        Assert.Equal("the pieces cannot all be cut from the coils on hand; accepted: more coils, or a standard length to buy", result.Problems[0].Text);
    }

    [Fact]
    public void One_lot_that_cannot_serve_a_job_is_proved_and_said()
    {
        var result = CutPlanner.Plan(new(
            [new("A", Length.FromInches(100), "J"), new("B", Length.FromInches(100), "J")],
            [TenFeet, TenFeet with { Id = "C2", Lot = "lot 2" }], [], CutAllowances.Default));
        Assert.Null(result.Plan);
        Assert.StartsWith("the pieces cannot all be cut", result.Problems[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Lengths_out_of_all_range_are_refused_before_they_are_added_up()
    {
        var result = CutPlanner.Plan(new(
            [new("A", Length.FromNanometres(long.MaxValue)), new("B", Length.FromNanometres(long.MaxValue))], [TenFeet], [], CutAllowances.Default));
        Assert.Equal("pieces", Assert.Single(result.Problems).Path);
    }

    [Fact]
    public void No_time_is_refused()
    {
        var result = CutPlanner.Plan(new([new("A", Length.Inch)], [TenFeet], [], CutAllowances.Default), new(TimeSpan.Zero));
        Assert.Equal("the time for a plan must be over zero", Assert.Single(result.Problems).Text);
    }
}
