using CutShop.Shop.Tickets;

namespace CutShop.Shop.Site;

/// <summary>An installer's tap that ticks a bore made on site, or takes the tick back.</summary>
/// <param name="Bore">The bore.</param>
/// <param name="Wanted">True where it is to be ticked.</param>
/// <param name="Seen">True where the installer's page showed it ticked.</param>
/// <param name="At">When it was tapped, UTC; null stands for now.</param>
public sealed record BoreTap(BoreMark Bore, bool Wanted, bool Seen, DateTimeOffset? At)
{
    /// <summary>The word of a tick, or of none, as forms send it.</summary>
    public static string Word(bool isBored) => isBored ? BoredOnSite.Bored : BoredOnSite.NotBored;

    /// <summary>What a word stands for, or null.</summary>
    public static bool? Read(string? word) => word switch
    {
        BoredOnSite.Bored => true,
        BoredOnSite.NotBored => false,
        _ => null,
    };
}

/// <summary>The answer to a tap that ticks a bore.</summary>
/// <param name="Outcome">How it went.</param>
/// <param name="IsBored">Whether it is ticked now, or was when the same tap came before.</param>
/// <param name="ChangedAt">When that was last changed on site, UTC, or null.</param>
public sealed record BoreAnswer(SiteOutcome Outcome, bool IsBored, DateTimeOffset? ChangedAt = null);
