namespace CutShop.Paper.Installing;

/// <summary>A step of hanging a piece, in words.</summary>
/// <param name="Text">What is done.</param>
/// <param name="Screws">The screws that are driven now, with size, place, pilot and counterbore; null where none are.</param>
public sealed record InstallLine(string Text, string? Screws);
