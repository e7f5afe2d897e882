using CutShop.Takeoff.Lengths;

namespace CutShop.CutPlan;

/// <summary>A piece of rope that waits to be cut.</summary>
/// <param name="Code">Its code, unique among the pieces of a request.</param>
/// <param name="Cut">Its cut length, positive.</param>
/// <param name="OneLotJob">The job that wants one lot throughout, where it does; null where any lot will do.</param>
/// <param name="Due">The day it is due, or null where it is due now.</param>
/// <param name="BegunLot">The lot that the one-lot job was begun in, the same for all its pieces; null where nothing of it is cut.</param>
public sealed record WaitingPiece(string Code, Length Cut, string? OneLotJob = null, DateOnly? Due = null, string? BegunLot = null);

/// <summary>A coil on hand.</summary>
/// <param name="Id">Its tag, unique among the coils of a request.</param>
/// <param name="Lot">Its maker's lot; colour differs by lot.</param>
/// <param name="Left">The rope left on it, positive.</param>
/// <param name="IsOffcut">True for a length from the rack, false for a full coil that nobody has cut from.</param>
public sealed record Coil(string Id, string Lot, Length Left, bool IsOffcut);

/// <summary>What cutting takes beside the pieces, and what is worth keeping. None may be negative.</summary>
/// <param name="Kerf">Lost at each cut.</param>
/// <param name="Squaring">Lost to square the end at each cut.</param>
/// <param name="FirstTrim">Taken off a coil's ragged end before its first piece.</param>
/// <param name="Keep">The shortest length that goes to the rack; a shorter one is scrap.</param>
public sealed record CutAllowances(Length Kerf, Length Squaring, Length FirstTrim, Length Keep)
{
    /// <summary>1/8 in of kerf and 1/4 in of squaring a cut, 1 in off a coil's end, offcuts kept from 36 in (common practice).</summary>
    public static CutAllowances Default { get; } =
        new(Length.FromSixtyFourths(8), Length.FromSixtyFourths(16), Length.Inch, Length.FromInches(36));

    /// <summary>What each piece uses up beside its own length: every piece ends in a cut, the last of a coil too.</summary>
    public Length PerPiece => Kerf + Squaring;
}

/// <summary>Pieces of one rope to be cut, and what they may be cut from. Natural rope and synthetic are never one request.</summary>
/// <param name="Pieces">The pieces that wait.</param>
/// <param name="Coils">The coils on hand.</param>
/// <param name="StandardLengths">Lengths that a new coil can be bought in; empty where none can be bought.</param>
/// <param name="Allowances">What cutting takes.</param>
/// <param name="DueBy">The last day of the window: pieces due later are left waiting. Null plans every piece.</param>
public sealed record CutRequest(
    IReadOnlyList<WaitingPiece> Pieces,
    IReadOnlyList<Coil> Coils,
    IReadOnlyList<Length> StandardLengths,
    CutAllowances Allowances,
    DateOnly? DueBy = null);

/// <summary>How much time a plan may take.</summary>
/// <param name="Time">The longest time, positive; a plan that is proved best ends sooner.</param>
/// <param name="UseSolver">False to do without the solver package.</param>
public sealed record PlanBudget(TimeSpan Time, bool UseSolver = true)
{
    /// <summary>Five seconds.</summary>
    public static PlanBudget Default { get; } = new(TimeSpan.FromSeconds(5));
}
