using CutShop.Takeoff.Lengths;

namespace CutShop.Paper.Tickets;

/// <summary>Where a cut plan puts a piece: which coil, which place on it, and where its marks are on the coil's length.</summary>
/// <param name="Coil">The coil's name.</param>
/// <param name="Place">The piece's place among those cut from the coil, from 1.</param>
/// <param name="TapeFrom">Where the piece starts, measured from the coil's free end.</param>
/// <param name="TapeTo">Where it ends.</param>
public sealed record CutPlace(string Coil, int Place, Length TapeFrom, Length TapeTo);
