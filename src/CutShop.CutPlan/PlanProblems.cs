using System.Globalization;
using CutShop.Takeoff.Lengths;

namespace CutShop.CutPlan;

/// <summary>Every message about a request that cannot be planned.</summary>
internal static class PlanProblems
{
    public static PlanProblem NotPositive(string path, Length value) =>
        new(path, value.ToString(), CutPlanWords.Say("NotPositive", path, value));

    public static PlanProblem Negative(string path, Length value) =>
        new(path, value.ToString(), CutPlanWords.Say("Negative", path, value));

    public static PlanProblem Blank(string path) =>
        new(path, "", CutPlanWords.Say("Blank", path));

    public static PlanProblem Twice(string path, string name) =>
        new(path, name, CutPlanWords.Say("Twice", name));

    public static PlanProblem TooMuch(string path) =>
        new(path, "", CutPlanWords.Say("TooMuch", path, Most));

    public static PlanProblem NoTime(TimeSpan time) =>
        new("budget/time", time.TotalSeconds.ToString(CultureInfo.InvariantCulture) + " s", CutPlanWords.Say("NoTime"));

    public static PlanProblem FitsNothing(WaitingPiece piece, Length need, Length longest) => new(
        $"pieces/{piece.Code}", piece.Cut.ToString(),
        longest == Length.Zero
            ? CutPlanWords.Say("NoCoil", piece.Code, piece.Cut)
            : CutPlanWords.Say("CoilsTooShort", piece.Code, piece.Cut, need, longest));

    public static PlanProblem LotIsShort(string job, string lot, Length shortage) => new(
        $"pieces of {job}", lot,
        CutPlanWords.Say("LotIsShort", job, lot, shortage));

    public static PlanProblem NotEnough(Length shortage) => new(
        "coils", shortage.ToString(),
        CutPlanWords.Say("NotEnough", shortage));

    public static PlanProblem CannotBeCut() => new(
        "coils", "", CutPlanWords.Say("CannotBeCut"));

    public static PlanProblem NoneFound() => new(
        "budget/time", "", CutPlanWords.Say("NoneFound"));

    /// <summary>Lengths of a request add up to less than this, so that sums never leave the range of a length.</summary>
    public static Length Most { get; } = Length.Metre * 100_000_000;
}
