using CutShop.CutPlan;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Stock;

/// <summary>A cut plan in the shop.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Kind">The rope it is for.</param>
/// <param name="State">draft, accepted or replaced.</param>
/// <param name="MadeAt">When it was made, UTC.</param>
/// <param name="MadeBy">Who made it.</param>
/// <param name="Proof">What is proved of it, in words.</param>
/// <param name="Allowances">What cutting takes.</param>
/// <param name="Coils">What is cut from each coil; pieces by their code without dashes.</param>
/// <param name="Pieces">What each piece is, by its code without dashes.</param>
public sealed record StoredPlan(
    long Id,
    RopeKind Kind,
    string State,
    DateTimeOffset MadeAt,
    string MadeBy,
    string Proof,
    CutAllowances Allowances,
    IReadOnlyList<CoilCuts> Coils,
    IReadOnlyDictionary<string, PlannedPiece> Pieces)
{
    /// <summary>Scrap in all.</summary>
    public Length Scrap => Coils.Aggregate(Length.Zero, (sum, coil) => sum + coil.Scrap);

    /// <summary>Rope in the pieces in all.</summary>
    public Length Rope => Coils.SelectMany(coil => coil.Pieces).Aggregate(Length.Zero, (sum, piece) => sum + piece.Cut);
}

/// <summary>A piece as a plan speaks of it.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Job">Its job's number.</param>
/// <param name="Run">Its run.</param>
/// <param name="Due">When its job is due.</param>
/// <param name="State">Its ticket's state.</param>
public sealed record PlannedPiece(PieceCode Code, string Job, string Run, DateOnly? Due, string State)
{
    /// <summary>True where it is no longer to be cut.</summary>
    public bool IsCancelled => State == TicketStates.Cancelled;

    /// <summary>True where it waits and is no longer to be cut from the coil of this accepted plan, as after its job was cancelled and taken up again.</summary>
    public bool IsTakenOut { get; init; }
}

/// <summary>A line in the list of plans.</summary>
/// <param name="Id">The plan's number.</param>
/// <param name="Kind">The rope.</param>
/// <param name="State">draft, accepted or replaced.</param>
/// <param name="MadeAt">When it was made, UTC.</param>
/// <param name="Pieces">Pieces in it.</param>
/// <param name="Proof">What is proved of it.</param>
public sealed record PlanListed(long Id, RopeKind Kind, string State, DateTimeOffset MadeAt, long Pieces, string Proof);

/// <summary>Pieces of one rope that wait to be cut.</summary>
/// <param name="Kind">The rope that they are cut from.</param>
/// <param name="Pieces">How many pieces wait.</param>
/// <param name="Planned">How many of them have a coil by an accepted plan.</param>
/// <param name="Rope">Their cut lengths together.</param>
/// <param name="FirstDue">The earliest day one is due, or null.</param>
public sealed record RopeWaiting(RopeKind Kind, long Pieces, long Planned, Length Rope, DateOnly? FirstDue)
{
    /// <summary>The rope of their kind in stock.</summary>
    /// <param name="coils">All coils in stock.</param>
    public Length InStock(IEnumerable<StockCoil> coils) =>
        coils.Where(coil => coil.Kind == Kind).Aggregate(Length.Zero, (sum, coil) => sum + coil.Left);
}

/// <summary>A coil to buy.</summary>
/// <param name="Kind">Its rope.</param>
/// <param name="Coil">The length it is bought in.</param>
/// <param name="Pieces">Pieces that wait for it.</param>
/// <param name="RopeShort">Their cut lengths together: what the stock is short.</param>
/// <param name="NeededBy">The earliest day one of them is due, or null.</param>
/// <param name="PlanId">The plan that asks for it.</param>
public sealed record CoilToBuy(RopeKind Kind, Length Coil, long Pieces, Length RopeShort, DateOnly? NeededBy, long PlanId);

/// <summary>How making or accepting a plan went.</summary>
/// <param name="PlanId">The plan; zero where there is none.</param>
/// <param name="Problems">Why there is no plan, or what changed since it was made; empty where it is done.</param>
public sealed record PlanAnswer(long PlanId, IReadOnlyList<Sentence> Problems)
{
    /// <summary>True where it is done.</summary>
    public bool IsDone => Problems.Count == 0;
}
