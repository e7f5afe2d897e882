using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Site;

/// <summary>All pieces of a job as their labels show them on site.</summary>
/// <param name="Code">The pack's code.</param>
/// <param name="Takeoff">The job's takeoff.</param>
/// <param name="Pieces">Its pieces as they are now, in the takeoff's order.</param>
/// <param name="Drilled">The marks of posts that the shop has drilled.</param>
public sealed record SitePack(PieceCode Code, JobTakeoff Takeoff, IReadOnlyList<LinePiece> Pieces, IReadOnlySet<string> Drilled)
{
    /// <summary>Its posts that are bored on site, with what is ticked of them.</summary>
    public required IReadOnlyList<SitePost> SitePosts { get; init; }

    /// <summary>The marks of its lines in which posts are bored where they stand, or have all their holes.</summary>
    public required IReadOnlySet<string> LinesForSite { get; init; }

    /// <summary>The job's number.</summary>
    public string Job => Takeoff.Job.Number;
}
