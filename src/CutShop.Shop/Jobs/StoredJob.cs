using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Jobs;

/// <summary>A stored job with its takeoff and the codes of its pieces.</summary>
/// <param name="Takeoff">The takeoff.</param>
/// <param name="Pieces">What the shop knows of each piece, in the takeoff's order.</param>
/// <param name="TakenInAt">When it was taken in, UTC.</param>
public sealed record StoredJob(JobTakeoff Takeoff, IReadOnlyList<StoredPiece> Pieces, DateTimeOffset TakenInAt)
{
    /// <summary>When it was released to the shop, UTC; null while it is only received.</summary>
    public DateTimeOffset? ReleasedAt { get; init; }

    /// <summary>When it was cancelled, UTC, or null.</summary>
    public DateTimeOffset? CancelledAt { get; init; }

    /// <summary>Why it was cancelled, as it was typed; empty where it is not.</summary>
    public string CancelReason { get; init; } = "";

    /// <summary>Pieces that a change took out, the surplus ones among them.</summary>
    public IReadOnlyList<StoredPiece> Dropped { get; init; } = [];

    /// <summary>True where what holds its rope must stand salt air, as the shop has set.</summary>
    public bool IsForSalt { get; init; }

    /// <summary>Its posts that are bored on site, with what is ticked of them.</summary>
    public IReadOnlyList<SitePost> SitePosts { get; init; } = [];

    /// <summary>The job's number.</summary>
    public string Number => Takeoff.Job.Number;

    /// <summary>The codes of the pieces, in the takeoff's order.</summary>
    public IReadOnlyList<PieceCode> Codes => [.. Pieces.Select(piece => piece.Code)];
}

/// <summary>What the cut ticket of one piece says.</summary>
/// <param name="Head">What its job is called by.</param>
/// <param name="Stored">The piece as the shop knows it.</param>
/// <param name="Work">Its work; null where a change took it out before parts were stored.</param>
public sealed record PieceTicket(JobHead Head, StoredPiece Stored, PieceWork? Work);

/// <summary>A piece of rope in the shop.</summary>
/// <param name="Run">Its run.</param>
/// <param name="Code">Its code.</param>
/// <param name="Cut">Its cut length.</param>
/// <param name="State">Its cut ticket: waiting, at the bench, cut, packed, cancelled or surplus.</param>
/// <param name="Place">Where the accepted cut plan puts it, or where it was cut; null before there is a plan.</param>
public sealed record StoredPiece(string Run, PieceCode Code, Length Cut, string State, PiecePlace? Place)
{
    /// <summary>True where an installer has marked it as installed.</summary>
    public bool IsInstalled { get; init; }
}

/// <summary>A piece's place on a coil.</summary>
/// <param name="Coil">The coil's mark.</param>
/// <param name="Lot">The coil's lot.</param>
/// <param name="Position">Its place among the cuts of the coil, from 1.</param>
/// <param name="From">Tape mark where it starts, from the coil's free end.</param>
/// <param name="To">Tape mark where it ends.</param>
public sealed record PiecePlace(string Coil, string Lot, int Position, Length From, Length To)
{
    /// <summary>The number of that cut plan.</summary>
    public long Plan { get; init; }
}
