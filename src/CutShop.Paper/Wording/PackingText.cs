namespace CutShop.Paper;

// The words of a packing list.
public partial class PaperText
{
    /// <summary>What the sheet is.</summary>
    public virtual string PackingList => "Packing list";

    /// <summary>So many of all.</summary>
    public virtual string CountOf(int some, int all) => Say($"{some} of {all}");

    /// <summary>All lengths together.</summary>
    public virtual string TotalLength => "Length in all";

    /// <summary>A label.</summary>
    public virtual string PackedBy => "Packed by";

    /// <summary>Over the list of packed pieces.</summary>
    public virtual string PackedPieces => "In the parcel";

    /// <summary>Columns of the list of packed pieces.</summary>
    public virtual IReadOnlyList<string> PackingColumns => ["Run", "Code", "Rope", "Measured length", "Weight", "Lot"];

    /// <summary>Pieces that are not in the parcel.</summary>
    public virtual string MissingPieces(string runs) => $"Not in the parcel: {runs}.";

    /// <summary>Posts that are not drilled.</summary>
    public virtual string UndrilledPosts(string marks) => $"Posts not drilled: {marks}.";

    /// <summary>Posts that go along.</summary>
    public virtual string DrilledPosts(string marks) => $"Posts drilled: {marks}.";
}
