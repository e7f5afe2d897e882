using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Site;

/// <summary>A piece as its label shows it on site: nothing of who ordered it and what it costs.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Label">Whether the label counts.</param>
/// <param name="Job">The job's number.</param>
/// <param name="Run">Its run.</param>
/// <param name="Cut">Its cut length.</param>
/// <param name="Ticket">The state of its cut ticket.</param>
/// <param name="State">Whether it is installed.</param>
/// <param name="IsCutAgain">True where another was cut in its place.</param>
/// <param name="IsJobCancelled">True where its job was cancelled.</param>
/// <param name="WasCut">True where it was cut, whatever became of it.</param>
public sealed record SitePiece(
    PieceCode Code, LabelState Label, string Job, string Run, Length Cut, string Ticket, InstalledState State, bool IsCutAgain, bool IsJobCancelled, bool WasCut)
{
    /// <summary>True where the shop has cut it and it is wanted.</summary>
    public bool IsCut => TicketStates.IsMade(Ticket);

    /// <summary>What is reported of it and not settled yet, each kind once.</summary>
    public IReadOnlyList<SiteReportKind> Reported { get; init; } = [];

    /// <summary>The spans measured of it on site, by the section's index.</summary>
    public IReadOnlyDictionary<int, Length> Measured { get; init; } = new Dictionary<int, Length>();

    /// <summary>True where its line has posts that are bored where they stand.</summary>
    public bool HasPostsForSite { get; init; }

    /// <summary>Of its job, what is shown with it: the lines, and the pieces that hang beside it; null unless the label is good.</summary>
    public JobTakeoff? Takeoff { get; init; }

    /// <summary>The piece; null unless the label is good.</summary>
    public Piece? Piece { get; init; }
}
