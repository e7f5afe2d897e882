using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>
/// Holds pieces, as worked out from a job's file, against what was ticketed, so that paper and pages made later can never say
/// something else than the ticket did.
/// </summary>
internal static class TicketedLengths
{
    /// <summary>Refuses pieces that differ.</summary>
    /// <param name="job">The job's number.</param>
    /// <param name="ticketed">Run and cut length of the stored pieces.</param>
    /// <param name="workedOut">The takeoff's pieces, in the same order.</param>
    /// <exception cref="InvalidDataException">A piece is missing, or has another run or length.</exception>
    public static void Check(string job, IEnumerable<(string Run, Length Cut)> ticketed, IEnumerable<Piece> workedOut)
    {
        if (!ticketed.SequenceEqual(workedOut.Select(piece => (piece.Run, piece.Cut))))
            throw new InvalidDataException($"Job {job} was ticketed with other lengths than this program works out. Its tickets stand; do not print it again with this program.");
    }
}
