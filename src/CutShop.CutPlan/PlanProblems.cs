using System.Globalization;
using CutShop.Takeoff.Lengths;

namespace CutShop.CutPlan;

/// <summary>Every message about a request that cannot be planned.</summary>
internal static class PlanProblems
{
    public static PlanProblem NotPositive(string path, Length value) =>
        new(path, value.ToString(), $"{path} is {value}; a length over zero is accepted");

    public static PlanProblem Negative(string path, Length value) =>
        new(path, value.ToString(), $"{path} is {value}; zero or more is accepted");

    public static PlanProblem Blank(string path) =>
        new(path, "", $"{path} has no name; a name that is not blank is accepted");

    public static PlanProblem Twice(string path, string name) =>
        new(path, name, $"'{name}' is there twice; each name is accepted once");

    public static PlanProblem TooMuch(string path) =>
        new(path, "", $"{path} add up to more than {Most}; less is accepted");

    public static PlanProblem NoTime(TimeSpan time) =>
        new("budget/time", time.TotalSeconds.ToString(CultureInfo.InvariantCulture) + " s", "the time for a plan must be over zero");

    public static PlanProblem FitsNothing(WaitingPiece piece, Length need, Length longest) => new(
        $"pieces/{piece.Code}", piece.Cut.ToString(),
        longest == Length.Zero
            ? $"piece {piece.Code} of {piece.Cut} has no coil: none is on hand and no standard length can be bought"
            : $"piece {piece.Code} of {piece.Cut} needs {need} with its cut, after the first trim; the longest coil that can be had is {longest}");

    public static PlanProblem LotIsShort(string job, string lot, Length shortage) => new(
        $"pieces of {job}", lot,
        $"{job} asks for one lot and was begun in lot {lot}, of which {shortage} is missing on hand; accepted: more of that lot, or a job that takes any lot");

    public static PlanProblem NotEnough(Length shortage) => new(
        "coils", shortage.ToString(),
        $"the coils on hand are {shortage} short of the pieces and their cuts; accepted: more coils, or a standard length to buy");

    public static PlanProblem CannotBeCut() => new(
        "coils", "", "no way of cutting serves every piece from the coils on hand; accepted: more coils, or a standard length to buy");

    public static PlanProblem NoneFound() => new(
        "budget/time", "", "no plan that cuts every piece was found in the time given, and none is proved impossible; accepted: more time, more coils, or a standard length to buy");

    /// <summary>Lengths of a request add up to less than this, so that sums never leave the range of a length.</summary>
    public static Length Most { get; } = Length.Metre * 100_000_000;
}
