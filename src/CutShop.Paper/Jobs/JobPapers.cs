using CutShop.Paper.Tickets;
using CutShop.Paper.Words;
using CutShop.Shop.Jobs;

namespace CutShop.Paper.Jobs;

/// <summary>The paper of jobs that the shop has stored.</summary>
public static class JobPapers
{
    /// <summary>All paper of a stored job.</summary>
    public static JobPaper Of(StoredJob job, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(job);
        var places = job.Pieces.Where(piece => piece.Place is not null).ToDictionary(piece => piece.Run, piece => PlaceOf(piece)!);
        return new(job.Takeoff, job.Codes, places, settings with { IsForSalt = job.IsForSalt }) { IsCancelled = job.CancelledAt is not null, IsReleased = job.ReleasedAt is not null };
    }

    /// <summary>Where a piece is cut, or null before a plan has placed it.</summary>
    public static CutPlace? PlaceOf(StoredPiece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return piece.Place is { } place ? new($"{place.Coil}, lot {place.Lot}", place.Position, place.From, place.To) : null;
    }
}
