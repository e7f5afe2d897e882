namespace CutShop.Shop.Site;

/// <summary>An installer's tap that marks a piece.</summary>
/// <param name="Wanted">The state that it is to have.</param>
/// <param name="Seen">The state that the installer's page showed.</param>
/// <param name="At">When it was tapped, UTC; null stands for now.</param>
/// <param name="IsSure">True where the installer was asked whether it really hangs, and said so.</param>
public sealed record InstalledTap(InstalledState Wanted, InstalledState Seen, DateTimeOffset? At, bool IsSure = false);
