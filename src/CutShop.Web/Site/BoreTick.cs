using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;

namespace CutShop.Web.Site;

/// <summary>The button that ticks a bore made on site, or takes the tick back.</summary>
/// <param name="Code">The code of the label.</param>
/// <param name="Job">The job's number: a phone may have several jobs.</param>
/// <param name="Bore">The bore.</param>
/// <param name="IsBored">Whether it is ticked.</param>
public sealed record BoreTick(PieceCode Code, string Job, BoreMark Bore, bool IsBored)
{
    /// <summary>What stands for the bore on a phone, on whichever page of the line it is ticked.</summary>
    public string Place => $"{Job}/{Bore.Post}/{Bore.Row}/{Bore.Number}";

    /// <summary>Where a post stands on its page.</summary>
    public static string Anchor(string post) => $"post-{Uri.EscapeDataString(post)}";
}
