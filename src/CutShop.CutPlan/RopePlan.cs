using CutShop.Takeoff.Lengths;

namespace CutShop.CutPlan;

/// <summary>What a coil in a plan is.</summary>
public enum CoilKind
{
    /// <summary>A length from the rack.</summary>
    Offcut,

    /// <summary>A full coil on hand, untouched until now.</summary>
    Full,

    /// <summary>A coil to buy.</summary>
    ToBuy,
}

/// <summary>A piece in its place on a coil. Marks are read on a tape laid from the coil's free end.</summary>
/// <param name="Code">The piece's code.</param>
/// <param name="Cut">Its cut length.</param>
/// <param name="From">The mark where it starts.</param>
/// <param name="To">The mark where it ends; kerf and squaring follow.</param>
public sealed record CutPiece(string Code, Length Cut, Length From, Length To);

/// <summary>What is cut from one coil.</summary>
/// <param name="Coil">The coil's tag, or <c>buy 1</c>, <c>buy 2</c> for coils to buy.</param>
/// <param name="Lot">Its lot; empty for a coil to buy.</param>
/// <param name="Kind">Offcut, full coil or coil to buy.</param>
/// <param name="Start">Rope on it before the first cut.</param>
/// <param name="Pieces">Its pieces in cutting order, longest first.</param>
/// <param name="Left">Rope left after the last cut.</param>
/// <param name="IsKept">True where what is left goes to the rack; false where it is scrap or nothing.</param>
public sealed record CoilCuts(
    string Coil, string Lot, CoilKind Kind, Length Start, IReadOnlyList<CutPiece> Pieces, Length Left, bool IsKept)
{
    /// <summary>What is left and goes to the rack; zero where none does.</summary>
    public Length Offcut => IsKept ? Left : Length.Zero;

    /// <summary>What is left and is scrap; zero where none is.</summary>
    public Length Scrap => IsKept ? Length.Zero : Left;
}

/// <summary>What found a plan.</summary>
public enum PlanMethod
{
    /// <summary>Our own search, exact where the proof says so.</summary>
    OwnSearch,

    /// <summary>The solver package made it better.</summary>
    Solver,

    /// <summary>A quick rule: longest piece first, into the tightest coil.</summary>
    QuickRule,
}

/// <summary>A plan for one rope that cuts every piece that is due.</summary>
/// <param name="Coils">Coils to cut from, offcuts first, then full coils, then coils to buy.</param>
/// <param name="NotDue">Pieces left waiting, because they are due after the window.</param>
/// <param name="Aims">How it does by each aim.</param>
/// <param name="OffcutsUsedUp">Offcuts from the rack of which nothing goes back to it.</param>
/// <param name="Proof">What is proved.</param>
/// <param name="Method">What found it.</param>
/// <param name="SolverAbsent">True where a solver was wanted and the package could not be used on this machine.</param>
/// <param name="Time">Time taken.</param>
public sealed record RopePlan(
    IReadOnlyList<CoilCuts> Coils,
    IReadOnlyList<WaitingPiece> NotDue,
    PlanAims Aims,
    int OffcutsUsedUp,
    PlanProof Proof,
    PlanMethod Method,
    bool SolverAbsent,
    TimeSpan Time)
{
    /// <summary>Lengths to buy, one a coil.</summary>
    public IEnumerable<Length> ToBuy => Coils.Where(coil => coil.Kind == CoilKind.ToBuy).Select(coil => coil.Start);
}

/// <summary>What is wrong with a request.</summary>
/// <param name="Path">Where: <c>pieces/JOB-A-1</c>, <c>coils/C7</c>, <c>allowances/kerf</c>.</param>
/// <param name="Value">The value found.</param>
/// <param name="Text">What is wrong and what is accepted.</param>
public sealed record PlanProblem(string Path, string Value, string Text);

/// <summary>A plan, or what stands in its way. Where there are problems nothing is planned and every piece still waits.</summary>
/// <param name="Plan">The plan, or null.</param>
/// <param name="Problems">All problems found; empty where there is a plan.</param>
public sealed record CutPlanResult(RopePlan? Plan, IReadOnlyList<PlanProblem> Problems);

/// <summary>How a plan is coming along.</summary>
/// <param name="Spent">Time spent.</param>
/// <param name="Best">The best plan so far.</param>
/// <param name="Proof">What is proved of it so far.</param>
public sealed record PlanProgress(TimeSpan Spent, PlanAims Best, PlanProof Proof);
