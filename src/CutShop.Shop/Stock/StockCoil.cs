using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Stock;

/// <summary>A coil that came in.</summary>
/// <param name="Kind">Its rope.</param>
/// <param name="Lot">The maker's lot: colour differs by lot.</param>
/// <param name="Length">Its length.</param>
/// <param name="Place">Where it hangs.</param>
/// <param name="WhenFull">What it held when it was full, where it was opened before it came in; null for a full coil.</param>
public sealed record CoilReceived(RopeKind Kind, string Lot, Length Length, string Place, Length? WhenFull = null);

/// <summary>A coil or an offcut in the shop.</summary>
/// <param name="Id">Its row.</param>
/// <param name="Mark">The mark on its tag.</param>
/// <param name="Kind">Its rope.</param>
/// <param name="Lot">Its lot; an offcut keeps its coil's.</param>
/// <param name="Place">Where it hangs.</param>
/// <param name="From">The mark of the coil an offcut came from, or null.</param>
/// <param name="Whole">Its length when it was full, or when it was cut off its coil.</param>
/// <param name="Left">What is left of it.</param>
/// <param name="Shrunk">What it lost since when it was soaked and dried.</param>
/// <param name="State">in stock, used up or retired.</param>
/// <param name="CameAt">When it came in, UTC.</param>
public sealed record StockCoil(
    long Id, string Mark, RopeKind Kind, string Lot, string Place, string? From, Length Whole, Length Left, Length Shrunk, string State, DateTimeOffset CameAt)
{
    /// <summary>True for a bought coil from which nothing was cut.</summary>
    public bool IsUntouched => From is null && Left + Shrunk == Whole;
}

/// <summary>Words of the shop's own lists, as they were used of ropes.</summary>
/// <param name="Constructions">Constructions, three-strand among them.</param>
/// <param name="Colours">Colours.</param>
public sealed record RopeWordsUsed(IReadOnlyList<string> Constructions, IReadOnlyList<string> Colours);

/// <summary>How a change of stock went.</summary>
/// <param name="Mark">The coil's mark; empty where there is none.</param>
/// <param name="Problem">Why nothing was changed, or null.</param>
public sealed record StockAnswer(string Mark, Sentence? Problem)
{
    /// <summary>True where the change is stored.</summary>
    public bool IsDone => Problem is null;
}
