using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;

namespace CutShop.Paper.Labels;

/// <summary>What the label of a coil or an offcut says: what is the same for as long as it hangs.</summary>
/// <param name="Address">The address in the code.</param>
/// <param name="Mark">The coil's mark.</param>
/// <param name="Kind">Its rope.</param>
/// <param name="Lot">Its lot.</param>
/// <param name="Whole">Its length when it was full, or when it was cut off its coil; of a preshrunk coil what was left of that.</param>
/// <param name="From">The mark of the coil that an offcut was cut off, or null.</param>
public sealed record CoilLabel(string Address, string Mark, RopeKind Kind, string Lot, Length Whole, string? From);
