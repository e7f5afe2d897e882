namespace CutShop.Shop.Site;

/// <summary>The answer to a tap that marks a piece.</summary>
/// <param name="Outcome">How it went.</param>
/// <param name="State">The piece's state now, or as it was when the same tap came before.</param>
/// <param name="ChangedAt">When it was last changed on site, UTC, or null.</param>
public sealed record InstalledAnswer(SiteOutcome Outcome, InstalledState State, DateTimeOffset? ChangedAt = null);
