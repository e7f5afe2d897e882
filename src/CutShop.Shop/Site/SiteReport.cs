using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Site;

/// <summary>A report from site as the desk sees it.</summary>
/// <param name="Id">The report.</param>
/// <param name="Job">The job's number.</param>
/// <param name="Run">The run of the piece.</param>
/// <param name="Code">The piece's code.</param>
/// <param name="Kind">too-short, too-long, damaged or missing.</param>
/// <param name="Note">What else the installer said; may be empty.</param>
/// <param name="Photo">The name of its photo, or null.</param>
/// <param name="TappedAt">When the installer sent it off, UTC.</param>
/// <param name="CameAt">When it came in, UTC.</param>
/// <param name="Ticket">The state of the piece's cut ticket.</param>
/// <param name="ReCut">The code of the piece cut in its place, or null.</param>
/// <param name="ClosedAt">When the desk closed it, UTC, or null.</param>
/// <param name="ClosedBy">Who closed it, or null.</param>
/// <param name="ClosingNote">What was said then, or null.</param>
public sealed record SiteReport(
    long Id,
    string Job,
    string Run,
    PieceCode Code,
    string Kind,
    string Note,
    string? Photo,
    DateTimeOffset TappedAt,
    DateTimeOffset CameAt,
    string Ticket,
    PieceCode? ReCut,
    DateTimeOffset? ClosedAt,
    string? ClosedBy,
    string? ClosingNote)
{
    /// <summary>True until the desk closes it.</summary>
    public bool IsOpen => ClosedAt is null;

    /// <summary>True where the piece is made, so that another can be cut in its place.</summary>
    public bool CanBeCutAgain => ReCut is null && TicketStates.IsMade(Ticket);
}
