using CutShop.Takeoff.Result;

namespace CutShop.Shop.Site;

/// <summary>All pieces of a job as their labels show them on site.</summary>
/// <param name="Code">The pack's code.</param>
/// <param name="Takeoff">The job's takeoff.</param>
/// <param name="Pieces">Its pieces as they are now, in the takeoff's order.</param>
public sealed record SitePack(PieceCode Code, JobTakeoff Takeoff, IReadOnlyList<LinePiece> Pieces)
{
    /// <summary>The job's number.</summary>
    public string Job => Takeoff.Job.Number;
}
