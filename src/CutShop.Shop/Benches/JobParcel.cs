using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Benches;

/// <summary>How far a job is to leaving the shop.</summary>
/// <param name="Job">The job's number.</param>
/// <param name="Due">When it is due, or null.</param>
/// <param name="IsCancelled">True where the job was cancelled: nothing of it leaves the shop.</param>
/// <param name="Pieces">Its pieces of rope, in the takeoff's order.</param>
/// <param name="Posts">Its posts that are drilled, along the lines.</param>
public sealed record JobParcel(string Job, DateOnly? Due, bool IsCancelled, IReadOnlyList<ParcelPiece> Pieces, IReadOnlyList<ParcelPost> Posts)
{
    /// <summary>True where every piece is cut and packed and every post is drilled.</summary>
    public bool IsReady => !IsCancelled && Pieces.All(piece => piece.IsPacked) && !Undrilled.Any();

    /// <summary>Pieces that are not packed.</summary>
    public IEnumerable<ParcelPiece> Missing => Pieces.Where(piece => !piece.IsPacked);

    /// <summary>Posts that are not drilled.</summary>
    public IEnumerable<ParcelPost> Undrilled => Posts.Where(post => post.State != TicketStates.Drilled);
}

/// <summary>A piece of rope of a job's parcel.</summary>
/// <param name="Run">Its run.</param>
/// <param name="Code">Its code.</param>
/// <param name="Cut">Length asked.</param>
/// <param name="State">waiting, at the bench, cut or packed.</param>
/// <param name="Measured">Length measured, or null before it is cut.</param>
/// <param name="Lot">The lot it was cut from, or null before it is cut.</param>
public sealed record ParcelPiece(string Run, PieceCode Code, Length Cut, string State, Length? Measured, string? Lot)
{
    /// <summary>True where it is in the parcel.</summary>
    public bool IsPacked => State == TicketStates.Packed;
}

/// <summary>A post of a job that is drilled.</summary>
/// <param name="Mark">Its mark.</param>
/// <param name="State">waiting, at the bench, drilled or re-ordered.</param>
public sealed record ParcelPost(string Mark, string State);

/// <summary>A job in the list of what is packed.</summary>
/// <param name="Job">The job's number.</param>
/// <param name="Due">When it is due, or null.</param>
/// <param name="Pieces">Pieces in all.</param>
/// <param name="Cut">Pieces that are cut and can be packed.</param>
/// <param name="Packed">Pieces that are packed.</param>
public sealed record ParcelListed(string Job, DateOnly? Due, long Pieces, long Cut, long Packed);
