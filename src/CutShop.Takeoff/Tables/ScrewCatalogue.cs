namespace CutShop.Takeoff.Tables;

/// <summary>The screws a shop uses.</summary>
/// <param name="Screws">The screws, the lightest size first and each size from short to long.</param>
public sealed record ScrewCatalogue(IReadOnlyList<Screw> Screws);
