namespace CutShop.Takeoff.Result;

/// <summary>All that is done with one piece of rope: how it is cut, where it hangs and what fixes it.</summary>
/// <param name="Piece">The piece.</param>
/// <param name="Fixings">Its screws, along the piece.</param>
public sealed record PieceWork(Piece Piece, IReadOnlyList<Fixing> Fixings)
{
    /// <summary>The work of every piece of a job, in the takeoff's order.</summary>
    public static IEnumerable<PieceWork> Of(JobTakeoff takeoff)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        var fixings = takeoff.Fixings.ToLookup(fixing => fixing.Run);
        return takeoff.Pieces.Select(piece => new PieceWork(piece, [.. fixings[piece.Run]]));
    }
}
