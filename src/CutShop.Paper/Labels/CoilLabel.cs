using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Paper.Labels;

/// <summary>What the label of a coil or an offcut says: what is the same for as long as it hangs.</summary>
/// <param name="Address">The address in the code.</param>
/// <param name="Mark">The coil's mark.</param>
/// <param name="Rope">Its rope.</param>
/// <param name="Construction">How it is laid, such as three-strand.</param>
/// <param name="Lot">Its lot.</param>
/// <param name="Whole">Its length when it was full, or when it was cut off its coil.</param>
/// <param name="From">The mark of the coil that an offcut was cut off, or null.</param>
public sealed record CoilLabel(string Address, string Mark, Rope Rope, string Construction, string Lot, Length Whole, string? From);
