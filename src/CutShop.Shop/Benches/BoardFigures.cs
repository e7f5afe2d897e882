using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Benches;

/// <summary>What the owner sees of the shop at one moment.</summary>
/// <param name="Jobs">Jobs that are not ready, and those packed in the window, the earliest due first.</param>
/// <param name="Lots">Rope used in the window, by lot.</param>
/// <param name="Hours">Pieces cut in each hour of the last day, the oldest first.</param>
/// <param name="ReCuts">Pieces cut again in the window, the newest first.</param>
/// <param name="Damages">Posts spoiled in the window, the newest first.</param>
/// <param name="Stamp">Changes with every change in the shop.</param>
public sealed record BoardFigures(
    IReadOnlyList<BoardJob> Jobs,
    IReadOnlyList<BoardLot> Lots,
    IReadOnlyList<BoardHour> Hours,
    IReadOnlyList<BoardMishap> ReCuts,
    IReadOnlyList<BoardMishap> Damages,
    long Stamp)
{
    /// <summary>Scrap, kerf and trim of all rope used, in percent; null where none was used.</summary>
    public double? LossPercent => PercentOf(lot => lot.Lost);

    /// <summary>Scrap alone of all rope used, in percent; null where none was used.</summary>
    public double? ScrapPercent => PercentOf(lot => lot.Scrap);

    private double? PercentOf(Func<BoardLot, Length> part)
    {
        var used = Lots.Sum(lot => lot.Used.Nanometres);
        return used <= 0 ? null : 100.0 * Lots.Sum(lot => part(lot).Nanometres) / used;
    }
}

/// <summary>A job on the board.</summary>
/// <param name="Job">Its number.</param>
/// <param name="Due">When it is due, or null.</param>
/// <param name="Waiting">Pieces that wait.</param>
/// <param name="AtTheBench">Pieces at the bench.</param>
/// <param name="Cut">Pieces cut and not packed.</param>
/// <param name="Packed">Pieces packed.</param>
/// <param name="PostsWaiting">Posts that wait, those ordered again among them.</param>
/// <param name="PostsAtTheBench">Posts at the bench.</param>
/// <param name="Drilled">Posts drilled.</param>
public sealed record BoardJob(
    string Job, DateOnly? Due, long Waiting, long AtTheBench, long Cut, long Packed, long PostsWaiting, long PostsAtTheBench, long Drilled)
{
    /// <summary>True where its day is past and it is not ready.</summary>
    public bool IsLate { get; init; }

    /// <summary>True where all is cut, drilled and packed.</summary>
    public bool IsReady => Waiting + AtTheBench + Cut + PostsWaiting + PostsAtTheBench == 0;

    /// <summary>Pieces in all.</summary>
    public long Pieces => Waiting + AtTheBench + Cut + Packed;

    /// <summary>Posts in all.</summary>
    public long Posts => PostsWaiting + PostsAtTheBench + Drilled;
}

/// <summary>Rope used of a lot.</summary>
/// <param name="Rope">The rope.</param>
/// <param name="Lot">The lot.</param>
/// <param name="Pieces">In pieces that were taken.</param>
/// <param name="Lost">In kerf, trim and scrap.</param>
/// <param name="Scrap">In scrap alone.</param>
public sealed record BoardLot(RopeKind Rope, string Lot, Length Pieces, Length Lost, Length Scrap)
{
    /// <summary>Used in all.</summary>
    public Length Used => Pieces + Lost;
}

/// <summary>Pieces cut in an hour.</summary>
/// <param name="From">When the hour began, UTC.</param>
/// <param name="Pieces">How many.</param>
public sealed record BoardHour(DateTimeOffset From, long Pieces);

/// <summary>A piece that is cut again or a post that was spoiled.</summary>
/// <param name="At">When, UTC.</param>
/// <param name="Who">Who said so.</param>
/// <param name="Job">The job.</param>
/// <param name="What">The run or the post.</param>
/// <param name="Reason">Why.</param>
public sealed record BoardMishap(DateTimeOffset At, string Who, string Job, string What, string Reason);
