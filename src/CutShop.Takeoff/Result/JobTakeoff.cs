using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Result;

/// <summary>What a job needs: every piece of rope, every bore, every screw, and what to think twice about.</summary>
/// <param name="Job">The job.</param>
/// <param name="Pieces">Pieces in the order of lines, rows, then along the line.</param>
/// <param name="Bores">Bores in the order of their pieces, then along each piece.</param>
/// <param name="Fixings">Screws in the order of their pieces, then along each piece.</param>
/// <param name="Warnings">What can be built but is unwise.</param>
public sealed record JobTakeoff(
    Job Job,
    IReadOnlyList<Piece> Pieces,
    IReadOnlyList<Bore> Bores,
    IReadOnlyList<Fixing> Fixings,
    IReadOnlyList<Warning> Warnings);

/// <summary>One continuous piece of rope: a run.</summary>
/// <param name="Run">The run's name, LINE-ROW-K, K from 1 along the line.</param>
/// <param name="Line">The mark of the line it is on.</param>
/// <param name="Row">The mark of the row it belongs to.</param>
/// <param name="Height">Height of the row at the posts, above ground.</param>
/// <param name="Rope">Its rope.</param>
/// <param name="First">The station of the line where it starts, from 0: the line's posts, and in a closed line the first post once more.</param>
/// <param name="Net">Length on the finished railing: arcs and what is at the posts.</param>
/// <param name="Cut">Length to cut: net with shrinkage and allowances, rounded up.</param>
/// <param name="WeightLb">Weight of the cut piece in pounds, or null where no published figure covers the rope.</param>
/// <param name="Sections">The sections it hangs in, in order.</param>
/// <param name="AtPosts">What it takes at each post, in order.</param>
public sealed record Piece(
    string Run,
    string Line,
    string Row,
    Length Height,
    Rope Rope,
    int First,
    Length Net,
    Length Cut,
    double? WeightLb,
    IReadOnlyList<PieceSection> Sections,
    IReadOnlyList<AtPost> AtPosts)
{
    /// <summary>About how much of the cut piece is over once natural rope has shrunk, to be cut off or to be lost in the hang; zero where none is.</summary>
    public Length Trim { get; init; }

    /// <summary>When natural rope is let shrink; null for rope that is true to size.</summary>
    public WettingManner? Manner { get; init; }

    /// <summary>True where it is cut from rope that was soaked and dried before.</summary>
    public bool IsPreshrunk => Manner == WettingManner.Preshrunk;

    /// <summary>About how much shorter it is once it was wet and is dry again; zero where it is true to size or was let shrink before.</summary>
    public Length Shrinks => Manner is null or WettingManner.Preshrunk ? Length.Zero : Cut - Net - Trim;

    /// <summary>True on a curve or a ring, whose posts are set out from a drawing.</summary>
    public bool IsSetOut { get; init; }

    /// <summary>True where it is cut for spans as they were measured on site, and not as the job has them.</summary>
    public bool IsAsMeasured { get; init; }

    /// <summary>The station of the line where it ends.</summary>
    public int Last => First + AtPosts.Count - 1;

    /// <summary>Height of the rope at a station of the line, above ground.</summary>
    public Length HeightAt(int station) => AtPosts[station - First].Height ?? Height;

    /// <summary>The post where it starts.</summary>
    public Post From => AtPosts[0].Post;

    /// <summary>The post where it ends.</summary>
    public Post To => AtPosts[^1].Post;
}

/// <summary>A piece's hang between two posts.</summary>
/// <param name="From">The first post.</param>
/// <param name="To">The second post.</param>
/// <param name="Clear">Level distance from post face to post face.</param>
/// <param name="GroundRise">The ground's rise from the first post to the second; negative downhill.</param>
/// <param name="Level">Level distance between the two supports.</param>
/// <param name="Rise">Height of the second support over the first; negative downhill.</param>
/// <param name="Chord">Straight distance between the supports.</param>
/// <param name="Sag">Vertical drop from the chord at mid-span.</param>
/// <param name="Arc">Length of the rope from support to support.</param>
/// <param name="ParameterIn">The catenary's parameter c in inches; null where the rope is straight.</param>
/// <param name="PullLb">Horizontal pull H = w c in pounds; null where the rope is straight or its weight is not known.</param>
public sealed record PieceSection(
    Post From,
    Post To,
    Length Clear,
    Length GroundRise,
    Length Level,
    Length Rise,
    Length Chord,
    Length Sag,
    Length Arc,
    double? ParameterIn,
    double? PullLb)
{
    /// <summary>Height of the rope at mid-span over the straight line between the ground at both posts; null in parts that are older than it.</summary>
    public Length? MidHeight { get; init; }

    /// <summary>The share of the rope between the nearest screws that may be lost before the section is straight; null in parts that are older than it.</summary>
    public double? TautShare { get; init; }

    /// <summary>The sag to hang natural rope with while it is dry and new; null where it is hung with its own.</summary>
    public Length? DrySag { get; init; }

    /// <summary>How much higher the rope's line is at the second post than at the first, over both post centres; negative downhill.</summary>
    public Length Climb { get; init; } = GroundRise;

    /// <summary>Rope length beyond the straight chord.</summary>
    public Length Slack => Arc - Chord;
}

/// <summary>What a piece does at a post.</summary>
public enum AtPostKind
{
    /// <summary>Ends half way into the post.</summary>
    Stopped,

    /// <summary>Goes right through.</summary>
    Through,

    /// <summary>Ends inside a corner post, where it meets the other run.</summary>
    Corner,

    /// <summary>Goes right through and ends in a stopper knot.</summary>
    Knot,

    /// <summary>Goes round.</summary>
    Wrap,

    /// <summary>Ends in the middle of a through bore, where another end meets it.</summary>
    Join,

    /// <summary>Passes the post and is held against it.</summary>
    Beside,

    /// <summary>Ends in an eye on a pin.</summary>
    Eye,
}

/// <summary>What a piece takes at a post.</summary>
/// <param name="Post">The post.</param>
/// <param name="Kind">What it does there.</param>
/// <param name="Treatment">The treatment it came from, with the turns of a wrap.</param>
/// <param name="Length">Rope taken up at the post.</param>
public sealed record AtPost(Post Post, AtPostKind Kind, Treatment Treatment, Length Length)
{
    /// <summary>Height of the rope there, above ground; null where it is the row's.</summary>
    public Length? Height { get; init; }
}

/// <summary>A bore in a post for one run of rope.</summary>
/// <param name="Post">The post.</param>
/// <param name="Row">The mark of the row of rope.</param>
/// <param name="Run">The run that it takes.</param>
/// <param name="Kind">Stopped, through, corner or knot.</param>
/// <param name="Rope">The rope it must pass.</param>
/// <param name="Bit">Diameter of the bit.</param>
/// <param name="BitChoice">Which kind of bit, and why.</param>
/// <param name="Height">Height of the bore's centre above ground.</param>
/// <param name="Wall">Wood left at each side of the bore.</param>
/// <param name="RakeDegrees">Slope of the bore along the line in degrees, positive uphill in the line's direction.</param>
/// <param name="Operations">Drillings in order.</param>
public sealed record Bore(
    Post Post,
    string Row,
    string Run,
    AtPostKind Kind,
    Rope Rope,
    Length Bit,
    BitChoice BitChoice,
    Length Height,
    Length Wall,
    double RakeDegrees,
    IReadOnlyList<BoreOperation> Operations)
{
    /// <summary>The bit that the rope asks for, before the rack is looked at.</summary>
    public Length Wanted { get; init; } = Bit;

    /// <summary>True where the bore is level whatever the slope.</summary>
    public bool IsLevel { get; init; }

    /// <summary>True where the hole is there already, so that nothing is drilled; <see cref="Bit"/> is its diameter then.</summary>
    public bool IsExisting { get; init; }

    /// <summary>Who bores it.</summary>
    public BoredBy BoredBy { get; init; }

    /// <summary>True where the shop makes it: it is not there already, and the installer does not bore it.</summary>
    public bool IsMadeInShop => !IsExisting && BoredBy == BoredBy.Shop;

    /// <summary>How far a corner's bore lies off the square to its face, in degrees.</summary>
    public double SkewDegrees { get; init; }

    /// <summary>How far the rope bends at each mouth of a straight bore through a corner, in degrees: half the turn.</summary>
    public double KinkDegrees { get; init; }

    /// <summary>The least rake that is told of: what rounds to a tenth of a degree.</summary>
    internal const double LeastRake = 0.05;

    /// <summary>
    /// Puts the bores of a closed row in order: its last station is its first post, and at a corner the arriving rope's bore comes first.
    /// </summary>
    /// <param name="bores">Bores; those of the row are the last of them, along the row.</param>
    /// <param name="from">Where the row's begin.</param>
    /// <param name="first">The mark of the line's first post.</param>
    internal static void ArrivingFirst(List<Bore> bores, int from, string first)
    {
        if (bores.Count < from + 2 || bores[^1].Post.Mark != first || bores[^1].Kind is not (AtPostKind.Corner or AtPostKind.Stopped))
            return;
        var last = bores[^1];
        bores.RemoveAt(bores.Count - 1);
        bores.Insert(from, last);
    }

    /// <summary>True where the bore is not level.</summary>
    public bool IsRaked => Math.Abs(RakeDegrees) >= LeastRake;
}

/// <summary>One drilling from one face.</summary>
/// <param name="Face">The face drilled into.</param>
/// <param name="Depth">Depth from that face.</param>
/// <param name="Mark">Height of the centre mark on that face, above ground.</param>
/// <param name="Collar">Where to set the stop collar, from the bit's cutting edge.</param>
public readonly record struct BoreOperation(Face Face, Length Depth, Length Mark, Length Collar);

/// <summary>A face of a post, named by the neighbour it looks to.</summary>
/// <param name="Sight">Whether it looks toward the neighbour, away from it, or is to the side.</param>
/// <param name="Neighbour">The neighbour's mark.</param>
public readonly record struct Face(FaceSight Sight, string Neighbour)
{
    /// <summary>The face in words.</summary>
    public Sentence InWords => Sight switch
    {
        FaceSight.Toward => TakeoffWords.Of("FaceToward", Neighbour),
        FaceSight.AwayFrom => TakeoffWords.Of("FaceAwayFrom", Neighbour),
        FaceSight.Side => TakeoffWords.Of("FaceSide", Neighbour),
        FaceSight.Around => TakeoffWords.Of("FaceAround"),
        _ => throw new InvalidOperationException($"No sight is numbered {(int)Sight}."),
    };

    /// <summary>The face in English, such as <c>toward A2</c>, as outputs write it.</summary>
    public override string ToString() => InWords.ToString();
}

/// <summary>How a face lies to the neighbour that names it.</summary>
public enum FaceSight
{
    /// <summary>It looks to the neighbour.</summary>
    Toward,

    /// <summary>It looks the other way.</summary>
    AwayFrom,

    /// <summary>It is to the left of someone at the post who faces the neighbour.</summary>
    Side,

    /// <summary>All round, for a wrap.</summary>
    Around,
}

/// <summary>Which kind of bit to take.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="OnRack">True where the shop's rack has this kind in this diameter.</param>
public sealed record BitChoice(BitKind Kind, bool OnRack)
{
    /// <summary>Why this kind, in words, for a bit of a diameter.</summary>
    public Sentence ReasonFor(Length bit) => this switch
    {
        { OnRack: false } => TakeoffWords.Of("NoBit", LengthText.Inches(bit)),
        { Kind: BitKind.ThreadedForstner } => TakeoffWords.Of("ForstnerIsBest"),
        { Kind: BitKind.Spade } => TakeoffWords.Of("SpadeWillDo"),
        { Kind: BitKind.HoleSaw } => TakeoffWords.Of("HoleSawLeavesSlug"),
        _ => throw new InvalidOperationException($"No kind of bit is numbered {(int)Kind}."),
    };
}

/// <summary>What a screw is for.</summary>
public enum FixingPurpose
{
    /// <summary>Holds a rope's end in a stopped bore.</summary>
    End,

    /// <summary>Holds the rope's sag where it goes through a post.</summary>
    Line,

    /// <summary>Holds the run that arrives at a bored corner.</summary>
    CornerFirst,

    /// <summary>Holds the run that leaves a bored corner, through the first rope.</summary>
    CornerSecond,

    /// <summary>Holds turns round a post.</summary>
    Wrap,

    /// <summary>Holds two ends that meet in a through bore.</summary>
    Join,

    /// <summary>Holds a rope against a post that it passes: a staple or an eye bolt.</summary>
    Beside,

    /// <summary>Carries an eye: a hook or a bolt.</summary>
    Eye,
}

/// <summary>Screws of one purpose at one post.</summary>
/// <param name="Post">The post.</param>
/// <param name="Row">The mark of the row of rope.</param>
/// <param name="RowHeight">Height of the row at this post, above ground.</param>
/// <param name="Run">The run that is fixed.</param>
/// <param name="Driven">Which screws they are, and the holes they need.</param>
/// <param name="Face">The face they are driven from.</param>
/// <param name="Height">Height above ground at which they cross the post's middle.</param>
/// <param name="Mark">Height above ground of their mark on that face.</param>
public sealed record Fixing(Post Post, string Row, Length RowHeight, string Run, DrivenScrews Driven, Face Face, Length Height, Length Mark)
{
    /// <summary>The slope of their holes along the line in degrees, positive uphill in the line's direction.</summary>
    public double RakeDegrees { get; init; }

    /// <summary>True where their holes are not level.</summary>
    public bool IsRaked => Math.Abs(RakeDegrees) >= Bore.LeastRake;

    /// <summary>True where it is not screws that hold the rope, but a staple, an eye bolt or a hook.</summary>
    public bool IsHardware => Purpose is FixingPurpose.Beside or FixingPurpose.Eye;

    /// <summary>What they are for.</summary>
    public FixingPurpose Purpose => Driven.Purpose;

    /// <summary>The screw chosen, or null where none in the catalogue fits.</summary>
    public ScrewName? Screw => Driven.Screw;

    /// <summary>How many.</summary>
    public int Count => Driven.Count;

    /// <summary>The screw's length; where none fits, the shortest reach that would.</summary>
    public Length Length => Driven.Length;

    /// <summary>Diameter of the pilot hole for the thread; zero where none is needed.</summary>
    public Length Pilot => Driven.Pilot;

    /// <summary>Diameter of the hole for the plain shank; zero where none is needed.</summary>
    public Length ShankHole => Driven.ShankHole;

    /// <summary>Diameter of the counterbore for a lag screw's head, or of the countersink for a flat head; zero where no screw fits.</summary>
    public Length Counterbore => Driven.Counterbore;

    /// <summary>Depth of the counterbore; zero where the head is only countersunk flush.</summary>
    public Length CounterboreDepth => Driven.CounterboreDepth;

    /// <summary>True where the head is flat and goes into a countersink, a cone; a hex head goes into a counterbore, a flat-bottomed hole.</summary>
    public bool IsCountersunk => Screw?.Kind == ScrewKind.DeckScrew;

    /// <summary>
    /// Depth of the pilot from the face of the post: as far as the screw's point comes once its head is sunk (common practice, no source). A
    /// lag screw is measured under its head, which a counterbore sinks; a deck screw over all.
    /// </summary>
    public Length PilotDepth => Length + CounterboreDepth;

    /// <summary>
    /// Depth of the hole for the plain shank from the face of the post, up to the next 1/16 in; zero where none is needed. A deck screw is
    /// plain for a third of its length (thread about two thirds: National Design Specification, from memory); a lag screw where its thread,
    /// half its length and 1/2 in but no more than 6 in, leaves off (ASME B18.2.1).
    /// </summary>
    public Length ShankDepth
    {
        get
        {
            if (ShankHole == Length.Zero)
                return Length.Zero;
            var plain = IsCountersunk ? Length / 3 : Length - Length.Min((Length / 2) + Length.FromSixtyFourths(32), Length.FromInches(6));
            return plain.IsPositive ? (plain + CounterboreDepth).RoundUpTo(Length.FromSixtyFourths(4)) : Length.Zero;
        }
    }
}

/// <summary>Screws of one kind, whichever post they are driven into, and the holes they need.</summary>
/// <param name="Purpose">What they are for.</param>
/// <param name="Screw">The screw chosen, or null where none in the catalogue fits.</param>
/// <param name="Count">How many.</param>
/// <param name="Length">The screw's length; where none fits, the shortest reach that would.</param>
/// <param name="Pilot">Diameter of the pilot hole for the thread; zero where none is needed.</param>
/// <param name="ShankHole">Diameter of the hole for the plain shank; zero where none is needed.</param>
/// <param name="Counterbore">Diameter of the counterbore for a lag screw's head, or of the countersink for a flat head; zero where no screw fits.</param>
/// <param name="CounterboreDepth">Depth of the counterbore; zero where the head is only countersunk flush.</param>
public sealed record DrivenScrews(
    FixingPurpose Purpose, ScrewName? Screw, int Count, Length Length, Length Pilot, Length ShankHole, Length Counterbore, Length CounterboreDepth);

/// <summary>Something that can be built but is unwise.</summary>
/// <param name="Code">What kind of warning, in a word or two with hyphens.</param>
/// <param name="Where">Where on the site, by marks: <c>A1/top</c>, <c>A1-A2/top</c>.</param>
/// <param name="Path">Where in the job file.</param>
/// <param name="Says">The warning in words, with its figures.</param>
/// <param name="Number">Its place among the job's warnings, from 0.</param>
/// <param name="Post">The mark of the one post that it concerns, or null.</param>
public sealed record Warning(string Code, string Where, string Path, Sentence Says, int Number, string? Post = null)
{
    private const int MostPlaces = 6;

    /// <summary>The warning in English.</summary>
    public string Text => Says.ToString();

    /// <summary>Each warning once, in the order it first comes, with its <see cref="Places"/>.</summary>
    public static IReadOnlyList<(Sentence Says, Sentence Where)> Alike(IEnumerable<Warning> warnings) =>
        [.. warnings.GroupBy(warning => warning.Says).Select(same => (same.Key, Places(same)))];

    /// <summary>The places of warnings that are alike, on one line: the first six by their marks, the rest by their count.</summary>
    public static Sentence Places(IEnumerable<Warning> alike)
    {
        var marks = alike.Select(warning => warning.Where).ToList();
        var first = string.Join(", ", marks.Take(MostPlaces));
        return marks.Count <= MostPlaces ? Sentence.Plain(first) : TakeoffWords.Of("PlacesAndMore", first, marks.Count - MostPlaces);
    }
}
