using CutShop.Takeoff.Result;

namespace CutShop.Shop.Site;

/// <summary>A piece of a line with its code and its mark.</summary>
/// <param name="Piece">The piece.</param>
/// <param name="Code">Its code.</param>
/// <param name="State">Whether it is installed.</param>
public sealed record LinePiece(Piece Piece, PieceCode Code, InstalledState State);
