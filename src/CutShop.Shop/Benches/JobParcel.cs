using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Benches;

/// <summary>How close a job is to leaving the shop, with all that an installer needs of it.</summary>
/// <param name="Job">The job's number.</param>
/// <param name="Customer">Whose it is.</param>
/// <param name="Due">When it is due, or null.</param>
/// <param name="IsCancelled">True where the job was cancelled: nothing of it leaves the shop.</param>
/// <param name="ClosedAt">When somebody closed it, UTC, or null.</param>
/// <param name="Pieces">Its pieces of rope, in the takeoff's order.</param>
/// <param name="Posts">Its posts that are drilled, along the lines.</param>
/// <param name="Screws">The screws that hold its rope, each kind once.</param>
/// <param name="Hardware">The hooks, thimbles and staples that hold it, each kind once.</param>
/// <param name="ScrewsNotChosen">Screws for which the catalogue had none that fits: somebody has to choose them.</param>
public sealed record JobParcel(
    string Job,
    string Customer,
    DateOnly? Due,
    bool IsCancelled,
    DateTimeOffset? ClosedAt,
    IReadOnlyList<ParcelPiece> Pieces,
    IReadOnlyList<ParcelPost> Posts,
    IReadOnlyList<ParcelScrews> Screws,
    IReadOnlyList<ParcelHardware> Hardware,
    int ScrewsNotChosen)
{
    /// <summary>How many parcels were begun; what is put in goes into the last of them.</summary>
    public int Parcels { get; init; } = 1;

    /// <summary>The most that the rope of one parcel weighs, in pounds; null where the shop has set no limit.</summary>
    public int? MostLb { get; init; }

    /// <summary>Pieces in one of the parcels.</summary>
    public IEnumerable<ParcelPiece> In(int parcel) => Pieces.Where(piece => piece.IsPacked && piece.Parcel == parcel);

    /// <summary>What the rope in one of the parcels weighs, in pounds: posts, screws and hardware are not counted. Null where a piece's weight is not known.</summary>
    public double? WeightOf(int parcel) => In(parcel).Aggregate((double?)0, (sum, piece) => sum + piece.WeightLb);

    /// <summary>True where a piece brings the last parcel over the shop's limit. A parcel of one piece is never too heavy: the piece cannot be split.</summary>
    public bool IsTooHeavyWith(ParcelPiece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return In(Parcels).Any() && WeightOf(Parcels) + piece.WeightLb > MostLb;
    }

    /// <summary>True where every piece is in it.</summary>
    public bool HasAllRope => Pieces.All(piece => piece.IsPacked);

    /// <summary>True where nothing is missing: pieces, posts and screws.</summary>
    public bool IsComplete => HasAllRope && !PostsOut.Any() && !ScrewsOut.Any() && !HardwareOut.Any();

    /// <summary>True where it leaves the shop as it is: somebody closed it, and no change of the job has added rope since.</summary>
    public bool IsReady => !IsCancelled && ClosedAt is not null && HasAllRope;

    /// <summary>Pieces that are not packed.</summary>
    public IEnumerable<ParcelPiece> Missing => Pieces.Where(piece => !piece.IsPacked);

    /// <summary>Posts that are not in it, drilled or not.</summary>
    public IEnumerable<ParcelPost> PostsOut => Posts.Where(post => !post.IsIn);

    /// <summary>Kinds of screws that are not in it.</summary>
    public IEnumerable<ParcelScrews> ScrewsOut => Screws.Where(screws => !screws.IsIn);

    /// <summary>Kinds of hardware that are not in it.</summary>
    public IEnumerable<ParcelHardware> HardwareOut => Hardware.Where(hardware => !hardware.IsIn);
}

/// <summary>A piece of rope of a job's parcel.</summary>
/// <param name="Run">Its run.</param>
/// <param name="Code">Its code.</param>
/// <param name="Cut">Length asked.</param>
/// <param name="State">waiting, at the bench, cut or packed.</param>
/// <param name="Measured">Length measured, or null before it is cut.</param>
/// <param name="Lot">The lot it was cut from, or null before it is cut.</param>
/// <param name="Parcel">The number of the parcel it is in, from 1, or null.</param>
public sealed record ParcelPiece(string Run, PieceCode Code, Length Cut, string State, Length? Measured, string? Lot, long? Parcel)
{
    /// <summary>Its weight in pounds, by the length that was measured once it is cut; null where it is not known.</summary>
    public double? WeightLb { get; init; }

    /// <summary>True where it is in the parcel.</summary>
    public bool IsPacked => State == TicketStates.Packed;
}

/// <summary>A post of a job that is drilled.</summary>
/// <param name="Id">The post.</param>
/// <param name="Ticket">Its drill ticket.</param>
/// <param name="Mark">Its mark.</param>
/// <param name="State">waiting, at the bench, drilled or re-ordered.</param>
/// <param name="DrilledAt">When it was drilled, or null.</param>
/// <param name="InParcelAt">When it was put into the parcel, or null.</param>
public sealed record ParcelPost(long Id, long Ticket, string Mark, string State, DateTimeOffset? DrilledAt, DateTimeOffset? InParcelAt)
{
    /// <summary>True where it is drilled.</summary>
    public bool IsDrilled => State == TicketStates.Drilled;

    /// <summary>True where it is in the parcel as it is: put in after it was last drilled.</summary>
    public bool IsIn => IsDrilled && InParcelAt >= DrilledAt;
}

/// <summary>Screws of one kind that hold a job's rope.</summary>
/// <param name="Screw">The screw.</param>
/// <param name="Needed">How many the job needs.</param>
/// <param name="Spare">How many are added.</param>
/// <param name="IsIn">True where they are in the parcel.</param>
public sealed record ParcelScrews(ScrewName Screw, int Needed, int Spare, bool IsIn)
{
    /// <summary>How many go into the parcel.</summary>
    public int All => Needed + Spare;

    /// <summary>What the kind is stored and sent by: what it is called, and its length in nanometres.</summary>
    public string Kind => KindOf(Screw);

    /// <summary>How many are added to some: a share, one at least, and none where the shop adds none. Common practice, no source.</summary>
    /// <param name="needed">How many are needed.</param>
    /// <param name="percent">The share that the shop has set, in percent.</param>
    public static int SpareOf(int needed, int percent) => percent == 0 ? 0 : Math.Max(1, (int)Math.Ceiling(needed * percent / 100m));

    internal static string KindOf(ScrewName screw) => FormattableString.Invariant($"{(screw.Kind == ScrewKind.LagScrew ? "lag" : "deck")} {screw.Size} {screw.Length.Nanometres}");
}

/// <summary>Hardware of one kind that holds a job's rope.</summary>
/// <param name="What">What it is.</param>
/// <param name="Needed">How many the job needs.</param>
/// <param name="IsIn">True where they are in the parcel.</param>
public sealed record ParcelHardware(Hardware What, int Needed, bool IsIn)
{
    /// <summary>What the kind is stored and sent by: what it is, and its size and reach in nanometres.</summary>
    public string Kind => KindOf(What);

    internal static string KindOf(Hardware hardware) => FormattableString.Invariant($"{Codes[hardware.Kind]} {hardware.Size.Nanometres} {hardware.Reach.Nanometres}");

    private static readonly Dictionary<HardwareKind, string> Codes = new()
    {
        [HardwareKind.Hook] = "hook",
        [HardwareKind.Thimble] = "thimble",
        [HardwareKind.Holder] = "holder",
    };
}

/// <summary>A job in the list of what is packed.</summary>
/// <param name="Job">The job's number.</param>
/// <param name="Due">When it is due, or null.</param>
/// <param name="Pieces">Pieces in all.</param>
/// <param name="Cut">Pieces that are cut and can be packed.</param>
/// <param name="Packed">Pieces that are packed.</param>
public sealed record ParcelListed(string Job, DateOnly? Due, long Pieces, long Cut, long Packed);
