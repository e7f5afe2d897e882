using CutShop.Paper.Sheets;
using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Paper.Tickets;

/// <summary>A piece of rope on a packing list.</summary>
/// <param name="Piece">The piece.</param>
/// <param name="Code">Its code.</param>
/// <param name="Measured">Its length as measured, or null before it is cut.</param>
/// <param name="Lot">The lot it was cut from; empty before it is cut.</param>
/// <param name="IsPacked">True where it is in the parcel.</param>
public sealed record PackedPiece(Piece Piece, PieceCode Code, Length? Measured, string Lot, bool IsPacked)
{
    /// <summary>The number of its parcel, from 1.</summary>
    public int Parcel { get; init; } = 1;

    /// <summary>Weight in pounds of the length measured, or null where it is not known.</summary>
    public double? WeightLb => Measured is { } measured && Piece.WeightLb is { } pounds ? pounds * (measured.Inches / Piece.Cut.Inches) : null;
}

/// <summary>A post on a packing list.</summary>
/// <param name="Mark">Its mark.</param>
/// <param name="IsDrilled">True where it is drilled.</param>
/// <param name="IsIn">True where it is in the parcel.</param>
public sealed record PackedPost(string Mark, bool IsDrilled, bool IsIn);

/// <summary>Screws of one kind on a packing list.</summary>
/// <param name="Screw">The screw.</param>
/// <param name="Needed">How many the job needs.</param>
/// <param name="Spare">How many are added.</param>
/// <param name="IsIn">True where they are in the parcel.</param>
public sealed record PackedScrews(ScrewName Screw, int Needed, int Spare, bool IsIn);

/// <summary>Hardware of one kind on a packing list.</summary>
/// <param name="What">What it is.</param>
/// <param name="Needed">How many the job needs.</param>
/// <param name="IsIn">True where they are in the parcel.</param>
public sealed record PackedHardware(Hardware What, int Needed, bool IsIn);

/// <summary>The list that goes with a job's parcel: every piece with its length, weight and lot, the posts to tick, and the screws that an installer needs. What is missing comes first.</summary>
public static class PackingList
{
    /// <summary>The list.</summary>
    /// <param name="job">The job.</param>
    /// <param name="pieces">Its pieces.</param>
    /// <param name="posts">Its posts.</param>
    /// <param name="screws">Its screws, each kind once.</param>
    /// <param name="hardware">Its hooks, thimbles and staples, each kind once.</param>
    /// <param name="sitePack">The address of its site pack, or null where it has none that can be printed.</param>
    /// <param name="settings">Units and words.</param>
    public static Sheet Of(Job job, IReadOnlyList<PackedPiece> pieces, IReadOnlyList<PackedPost> posts, IReadOnlyList<PackedScrews> screws, IReadOnlyList<PackedHardware> hardware, string? sitePack, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(posts);
        ArgumentNullException.ThrowIfNull(screws);
        ArgumentNullException.ThrowIfNull(hardware);
        ArgumentNullException.ThrowIfNull(settings);
        var text = settings.Text;
        var packed = pieces.Where(piece => piece.IsPacked).ToList();
        var missing = pieces.Where(piece => !piece.IsPacked).Select(piece => piece.Piece.Run).ToList();
        var undrilled = posts.Where(post => !post.IsDrilled).Select(post => post.Mark).ToList();
        var blocks = new List<Block> { new FieldsBlock(About(job, packed, pieces, settings)) };
        if (missing.Count > 0)
            blocks.Add(new NoteBlock(text["MissingPieces", string.Join(", ", missing)]));
        if (undrilled.Count > 0)
            blocks.Add(new NoteBlock(text["UndrilledPosts", string.Join(", ", undrilled)]));
        blocks.AddRange(Parcels(packed, settings));
        blocks.Add(new NoteBlock(text["RopeWeightAlone"]));
        if (posts.Count > undrilled.Count)
            blocks.Add(new NoteBlock(text["DrilledPosts", string.Join(", ", posts.Where(post => post.IsDrilled).Select(post => $"{Tick(post.IsIn)}\u00A0{post.Mark}"))]));
        if (screws.Count > 0)
            blocks.Add(new TableBlock(text["PackedScrews"], text.Parts("ParcelScrewColumns"), [.. screws.Select(kind => Row(kind, text))]));
        if (hardware.Count > 0)
        {
            blocks.Add(new TableBlock(
                text["Hardware"],
                text.Parts("ParcelHardwareColumns"),
                [.. hardware.Select(kind => (IReadOnlyList<string>)[text.HardwareName(kind.What, settings.Figures.Both), Figures.Count(kind.Needed), Tick(kind.IsIn)])]));
        }
        if (settings.IsForSalt && screws.Count + hardware.Count > 0)
            blocks.Add(new NoteBlock(text["ScrewsForSalt"]));
        if (sitePack is not null)
            blocks.Add(new DrawingBlock(SitePackCode.Of(sitePack, settings)));
        blocks.Add(new CautionsBlock(text["Cautions"], text.RailingCautions));
        return new(text["PackingList"], text["JobName", job.Number], text.Foot(job.Number, text["PackingList"]), blocks);
    }

    private static List<Field> About(Job job, List<PackedPiece> packed, IReadOnlyList<PackedPiece> all, PaperSettings settings)
    {
        var text = settings.Text;
        var length = packed.Aggregate(Length.Zero, (sum, piece) => sum + piece.Measured!.Value);
        return
        [
            new(text["Job"], job.Number),
            new(text["Customer"], job.Customer),
            new(text["Due"], CutTicket.DueOf(job.Due, text)),
            new(text["Pieces"], text["CountOf", packed.Count, all.Count]),
            new(text["TotalLength"], settings.Figures.LongBoth(length)),
            new(text["Weight"], text.Pounds(WeightOf(packed))),
            new(text["PackedBy"], null),
            new(text["CheckedBy"], null),
        ];
    }

    /// <summary>What is in each parcel; where there is one, it needs no number.</summary>
    private static IEnumerable<TableBlock> Parcels(List<PackedPiece> packed, PaperSettings settings)
    {
        var text = settings.Text;
        var parcels = packed.GroupBy(piece => piece.Parcel).OrderBy(parcel => parcel.Key).ToList();
        return parcels.Count <= 1
            ? [Table(text["PackedPieces"], packed)]
            : parcels.Select((parcel, i) => Table(text["PackedParcel", i + 1, parcels.Count, text.WeightToLift(WeightOf([.. parcel]))], parcel));

        TableBlock Table(string caption, IEnumerable<PackedPiece> pieces) => new(caption, text.Parts("PackingColumns"), [.. pieces.Select(piece => Row(piece, settings))]);
    }

    private static double? WeightOf(IReadOnlyList<PackedPiece> pieces) => pieces.All(piece => piece.WeightLb is not null) ? pieces.Sum(piece => piece.WeightLb) : null;

    private static string[] Row(PackedScrews screws, PaperText text) =>
    [
        text.ScrewName(screws.Screw, length: ""),
        Figures.Count(screws.Needed),
        Figures.Count(screws.Spare),
        Figures.Count(screws.Needed + screws.Spare),
        Tick(screws.IsIn),
    ];

    /// <summary>What is ticked at the bench, and else a place to tick it by hand.</summary>
    private static string Tick(bool isIn) => isIn ? "☑" : WrappedPosts.Box;

    private static string[] Row(PackedPiece piece, PaperSettings settings) =>
    [
        piece.Piece.Run,
        piece.Code.ToString(),
        RopeWords.Of(piece.Piece.Rope, settings),
        settings.Figures.LongStacked(piece.Measured!.Value),
        settings.Text.WeightToLift(piece.WeightLb),
        piece.Lot,
    ];
}
