using CutShop.Shop.Store;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Site;

/// <summary>A piece of a line with its code and its mark.</summary>
/// <param name="Piece">The piece.</param>
/// <param name="Code">Its code.</param>
/// <param name="State">Whether it is installed.</param>
/// <param name="IsCut">True where the shop has cut it.</param>
/// <param name="Reported">What is reported of it and not settled yet, each kind once.</param>
public sealed record LinePiece(Piece Piece, PieceCode Code, InstalledState State, bool IsCut, IReadOnlyList<SiteReportKind> Reported);
