namespace CutShop.Shop.Store;

/// <summary>Who the shop is, for the head of its quotes.</summary>
/// <param name="Name">The shop's name; empty until it is set.</param>
/// <param name="Address">Where and how it is reached, a line each; empty until it is set.</param>
public sealed record Letterhead(string Name, string Address);
