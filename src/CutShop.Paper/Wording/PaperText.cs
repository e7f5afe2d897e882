using CutShop.Takeoff;

namespace CutShop.Paper;

/// <summary>
/// Every word that CutShop prints on tickets, drawings and labels, in English. Another language is a class that overrides
/// them. Warnings and the reason for a bit come from the takeoff as they are.
/// </summary>
public partial class PaperText
{
    /// <summary>English.</summary>
    public static PaperText English { get; } = new();

    /// <summary>The language's tag, such as <c>en</c>.</summary>
    public virtual string Language => "en";

    /// <summary>The running foot's page count.</summary>
    public virtual string PageOf(int page, int pages) => Say($"page {page} of {pages}");

    /// <summary>In the head of a sheet's second and later pages.</summary>
    public virtual string Continued => "(continued)";

    /// <summary>A rope material.</summary>
    public virtual string Material(RopeMaterial material) => Rope.NameOf(material);

    /// <summary>A face of a post.</summary>
    public virtual string FaceName(Face face) => face.ToString();

    /// <summary>A screw; a null one means that none in the catalogue fits, and <paramref name="length"/> is what would.</summary>
    public virtual string ScrewName(ScrewName? screw, string length) => screw?.ToString() ?? $"none in the catalogue fits: needs {length}";

    /// <summary>A kind of bit.</summary>
    public virtual string BitKindName(BitKind kind) => kind switch
    {
        BitKind.ThreadedForstner => "threaded Forstner bit",
        BitKind.Spade => "spade bit",
        BitKind.HoleSaw => "hole saw",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, message: null),
    };

    /// <summary>Why a bit was chosen for a bore.</summary>
    public virtual string BitReason(BitChoice choice, Length bit)
    {
        ArgumentNullException.ThrowIfNull(choice);
        return choice.ReasonFor(bit);
    }

    /// <summary>What a piece does at a post.</summary>
    public virtual string AtPost(AtPost at) => at.Kind switch
    {
        AtPostKind.Stopped => "stopped bore",
        AtPostKind.Through => "through",
        AtPostKind.Corner => "corner bore",
        AtPostKind.Knot => "knot",
        AtPostKind.Wrap => Say($"wrap, {at.Treatment.Turns:0.#} turns"),
        _ => throw new ArgumentOutOfRangeException(nameof(at), at.Kind, message: null),
    };

    /// <summary>The kind of a bore.</summary>
    public virtual string BoreKind(AtPostKind kind) => kind switch
    {
        AtPostKind.Stopped => "stopped",
        AtPostKind.Through => "through",
        AtPostKind.Corner => "corner",
        AtPostKind.Knot => "through, for a knot",
        AtPostKind.Wrap => "wrap",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, message: null),
    };

    /// <summary>What a screw is for.</summary>
    public virtual string Purpose(FixingPurpose purpose) => purpose switch
    {
        FixingPurpose.End => "rope end",
        FixingPurpose.Line => "sets the sag",
        FixingPurpose.CornerFirst => "corner, first rope",
        FixingPurpose.CornerSecond => "corner, second rope",
        FixingPurpose.Wrap => "holds the turns",
        _ => throw new ArgumentOutOfRangeException(nameof(purpose), purpose, message: null),
    };

    /// <summary>A post's shape and size.</summary>
    public virtual string PostShape(PostShape shape) => shape == Takeoff.PostShape.Square ? "square" : "round";

    /// <summary>Text with numbers, the same in every culture.</summary>
    protected static string Say(FormattableString text) => FormattableString.Invariant(text);
}
