using CutShop.Takeoff;

namespace CutShop.Paper;

/// <content>Words on quotes.</content>
public partial class PaperText
{
    /// <summary>Who quotes.</summary>
    public virtual string Supplier => "From";

    /// <summary>A quote's name.</summary>
    public virtual string QuoteName(long id) => Say($"Quote {id}");

    /// <summary>A label.</summary>
    public virtual string QuoteMade => "Made";

    /// <summary>A label.</summary>
    public virtual string QuoteStands => "Stands until";

    /// <summary>A label.</summary>
    public virtual string Total => "Total";

    /// <summary>Under the total.</summary>
    public virtual string TaxIncluded(string tax, string share) => $"of it {tax} tax ({share})";

    /// <summary>Over the lines of a quote.</summary>
    public virtual string QuotedLines => "What is charged";

    /// <summary>Columns of the lines of a quote.</summary>
    public virtual IReadOnlyList<string> QuotedColumns => ["For", "Quantity", "Price", "Amount"];

    /// <summary>The sum before tax.</summary>
    public virtual string NetSum => "Sum";

    /// <summary>The line of tax.</summary>
    public virtual string TaxLine(string share) => $"Tax, {share} of the sum";

    /// <summary>Over what the price includes.</summary>
    public virtual string Included => "What is included";

    /// <summary>What the price includes.</summary>
    /// <param name="pieces">How many pieces.</param>
    /// <param name="bores">How many bores.</param>
    /// <param name="bored">How many posts have one.</param>
    /// <param name="posts">The posts that were reckoned with, each kind by <see cref="PostsAlike"/>.</param>
    public virtual IReadOnlyList<string> IncludedIn(int pieces, int bores, int bored, string posts) =>
    [
        Say($"{pieces} piece{(pieces == 1 ? "" : "s")} of rope, cut to length with allowances, ends sealed or bound, each with its label."),
        Say($"{bores} bore{(bores == 1 ? "" : "s")} in {bored} post{(bored == 1 ? "" : "s")}. The posts themselves are not included: {posts}."),
        "Cut tickets, drill tickets and a drawing of how it stands. Setting the posts and hanging the rope are not included.",
    ];

    /// <summary>Posts of one kind, in what a price includes.</summary>
    /// <param name="count">How many.</param>
    /// <param name="shape">Their shape.</param>
    /// <param name="across">Their width or diameter.</param>
    /// <param name="height">Their height above ground.</param>
    public virtual string PostsAlike(int count, PostShape shape, string across, string height) =>
        Say($"{count} {PostShape(shape)}, {across} across and {height} above ground");

    /// <summary>Posts of further kinds, in what a price includes.</summary>
    public virtual string OtherPosts(int count) => Say($"{count} of other sizes");

    /// <summary>Cautions of a quote.</summary>
    public virtual IReadOnlyList<string> QuoteCautions =>
    [
        .. RailingCautions,
        "Lengths are worked out from the posts and spacings on this quote and its drawings. Measure them again before accepting.",
        "Rope hangs, stretches and, where it is natural, shrinks: what is hung is adjusted on the site.",
    ];
}
