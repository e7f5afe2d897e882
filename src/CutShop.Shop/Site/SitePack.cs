using CutShop.Takeoff.Result;

namespace CutShop.Shop.Site;

/// <summary>All pieces of a job as their labels show them on site.</summary>
/// <param name="Code">The pack's code.</param>
/// <param name="Takeoff">The job's takeoff.</param>
/// <param name="Pieces">Its pieces as they are now, in the takeoff's order.</param>
/// <param name="Drilled">The marks of posts that the shop has drilled.</param>
public sealed record SitePack(PieceCode Code, JobTakeoff Takeoff, IReadOnlyList<LinePiece> Pieces, IReadOnlySet<string> Drilled)
{
    /// <summary>The job's number.</summary>
    public string Job => Takeoff.Job.Number;
}
