using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Solids;

/// <summary>
/// A post as a solid: its timber, and in it bores, screws and the holes for them, and outside the turns of ropes. Everything that asks
/// where in a post something is, what meets what, and how much wood is left, asks here; drawings cut their sections from it.
/// </summary>
/// <remarks>
/// <para>Inches in double precision. The origin is the post's middle at the ground; X goes along the line, square to a face of a square post,
/// Y to the left, Z up. At a corner the line comes in under <see cref="ArrivesAt"/> and goes out under <see cref="LeavesAt"/>: a square post
/// stands turned so that its faces share the turn.</para>
/// <para>Screws that hold turns have no body: where round the post they are driven in is the installer's choice. Hardware has none either.</para>
/// </remarks>
public sealed class PostSolid
{
    /// <summary>Half the angle of a flat head's cone: 82 degrees (from memory).</summary>
    private static readonly double TangentOfCone = Math.Tan(41 * Math.PI / 180);

    /// <summary>A screw of a join lies a quarter of the post from its face.</summary>
    private const int PartOfJoin = 4;

    private readonly List<SolidBore> _bores = [];
    private readonly List<SolidScrew> _screws = [];
    private readonly List<SolidWrap> _wraps = [];
    private readonly double _half;

    /// <summary>A post with nothing in it yet.</summary>
    /// <param name="post">The post.</param>
    /// <param name="isStart">True for the first post of an open line: its stopped bores look on along the line, those of the last post back.</param>
    public PostSolid(Post post, bool isStart)
    {
        ArgumentNullException.ThrowIfNull(post);
        (Post, IsStart, _half) = (post, isStart, post.Across.Inches / 2);
        if (post is { EndsRuns: true, Turn: { } turn })
        {
            var turned = (turn.Side == TurnSide.Left ? 1 : -1) * (post.HasSquareCorner ? Math.PI / 2 : turn.Radians);
            ArrivesAt = post.HasSquareCorner ? 0 : -post.StandsTurnedBy * Math.PI / 180;
            LeavesAt = ArrivesAt + turned;
        }
    }

    /// <summary>The post: its shape, width and height, and how far it is buried, where that is known.</summary>
    public Post Post { get; }

    /// <summary>True for the first post of an open line.</summary>
    public bool IsStart { get; }

    /// <summary>The direction of the section that comes in, in radians to the left of X: 0, but at a corner whose bores end.</summary>
    public double ArrivesAt { get; }

    /// <summary>The direction of the section that goes out.</summary>
    public double LeavesAt { get; }

    /// <summary>The height of the post's lower end: below the ground by its buried part; null where nobody said how long that is.</summary>
    public double? Foot => -Post.Buried?.Inches;

    /// <summary>The bores, as they were put in.</summary>
    public IReadOnlyList<SolidBore> Bores => _bores;

    /// <summary>The screws, as they were put in.</summary>
    public IReadOnlyList<SolidScrew> Screws => _screws;

    /// <summary>What rows cover on the outside, as they were put in.</summary>
    public IReadOnlyList<SolidWrap> Wraps => _wraps;

    /// <summary>A post with all that its work has in it; what ropes cover on its outside is not in a post's work.</summary>
    /// <param name="work">What is done at the post.</param>
    /// <param name="screws">The shop's screws, which know how thick each is.</param>
    public static PostSolid Of(PostWork work, ScrewCatalogue screws)
    {
        ArgumentNullException.ThrowIfNull(work);
        var solid = new PostSolid(work.Post, work.Before is null);
        foreach (var bore in work.Bores)
            solid.Add(bore);
        foreach (var fixing in work.Fixings)
            solid.Add(fixing, screws);
        return solid;
    }

    /// <summary>Puts a bore in. Of the two bores of a row in a corner the first is that of the rope that arrives.</summary>
    public void Add(Bore bore)
    {
        ArgumentNullException.ThrowIfNull(bore);
        var isCorner = bore.Kind == AtPostKind.Corner;
        var isFirst = !isCorner || !HasBoreOf(bore.Row);
        var bearing = !isFirst || (bore.Kind == AtPostKind.Stopped && IsStart) ? Bearing.Leaving : Bearing.Arriving;
        var axis = Axis(bearing, isCorner, bore.Height, bore.RakeDegrees);
        var (mouth, cut) = axis.Mouth(_half);
        var (radius, rope) = (bore.Bit.Inches / 2, bore.Rope.Across.Inches / 2);
        if (bore.Kind is AtPostKind.Through or AtPostKind.Knot)
        {
            var body = new Cylinder(mouth, axis.FarMouth(_half), radius, cut, -cut);
            _bores.Add(new(bore.Row, bore.Kind, body, body.Of(rope), IsFirst: true));
            return;
        }
        // A bore that was there already goes to the middle too.
        var depth = bore.Operations.Count > 0 ? bore.Operations[0].Depth.Inches : axis.ToMouth(_half);
        var stopped = Stopped(depth);
        _bores.Add(new(bore.Row, bore.Kind, stopped, Stopped(isFirst ? depth : depth - rope).Of(rope), isFirst));

        Cylinder Stopped(double deep) => new(mouth, mouth - (axis.Outward * deep), radius, cut, -axis.Outward);
    }

    /// <summary>Puts screws in, with the holes for them. Those that hold turns, hardware, and screws that no catalogue has are left out.</summary>
    /// <param name="fixing">Screws of one purpose.</param>
    /// <param name="screws">The shop's screws; one that is not among them is as thick as its holes.</param>
    public void Add(Fixing fixing, ScrewCatalogue screws)
    {
        ArgumentNullException.ThrowIfNull(fixing);
        if (fixing.Screw is null || fixing.IsHardware || fixing.Purpose == FixingPurpose.Wrap)
            return;
        var thick = ThicknessOf(fixing, screws);
        if (fixing.Purpose is not (FixingPurpose.Line or FixingPurpose.Join))
        {
            AddScrew(fixing, InEnd(fixing.Purpose, fixing.Height, fixing.RakeDegrees, fixing.PilotDepth, thick));
            return;
        }
        var along = fixing.Purpose == FixingPurpose.Join ? _half - (Post.Across.Inches / PartOfJoin) : 0;
        AddScrew(fixing, InSide(fixing, thick, -along));
        if (fixing.Purpose == FixingPurpose.Join)
            AddScrew(fixing, InSide(fixing, thick, along));
    }

    /// <summary>Puts in what a row covers on the outside.</summary>
    public void Add(SolidWrap wrap) => _wraps.Add(wrap);

    /// <summary>The wood round a bore.</summary>
    public BoreWood WoodRound(SolidBore bore)
    {
        ArgumentNullException.ThrowIfNull(bore);
        var (body, mouth) = (bore.Body, bore.Body.FromCut);
        double beside, beyond;
        if (Post.Shape == PostShape.Square)
        {
            var (right, left) = body.Extent(new(-mouth.Y, mouth.X, 0));
            beside = _half - Math.Max(left, -right);
            beyond = bore.IsThrough ? 0 : (_half + body.Extent(mouth).Least) / -body.Along.Dot(mouth);
        }
        else
        {
            beside = _half - body.Radius;
            beyond = (_half + body.To.Dot(mouth)) / -body.Along.Dot(mouth);
        }
        return new(
            Length.RoundedFromInches(beside),
            Length.RoundedFromInches(Post.Height.Inches - bore.Heights.High),
            Length.RoundedFromInches(bore.Heights.Low),
            bore.IsThrough ? null : Length.RoundedFromInches(beyond));
    }

    /// <summary>True for a point inside the post's outline, from its top to its foot.</summary>
    public bool IsInside(Point3 point)
    {
        var isIn = Post.Shape == PostShape.Square
            ? Math.Abs(point.X) <= _half && Math.Abs(point.Y) <= _half
            : (point.X * point.X) + (point.Y * point.Y) <= _half * _half;
        return isIn && point.Z <= Post.Height.Inches && point.Z >= (Foot ?? double.NegativeInfinity);
    }

    /// <summary>A screw along a bore from its far side, as a rope's end is held.</summary>
    /// <param name="purpose">End, or the first or second of a corner.</param>
    /// <param name="height">Its height at the post's middle.</param>
    /// <param name="rakeDegrees">Its slope along the line.</param>
    /// <param name="reach">How far its point comes from the face.</param>
    /// <param name="thick">Its diameter.</param>
    internal Cylinder InEnd(FixingPurpose purpose, Length height, double rakeDegrees, Length reach, double thick)
    {
        var isCorner = purpose is FixingPurpose.CornerFirst or FixingPurpose.CornerSecond;
        var bearing = purpose == FixingPurpose.CornerSecond || (!isCorner && IsStart) ? Bearing.Leaving : Bearing.Arriving;
        var axis = Axis(bearing, isCorner, height, rakeDegrees);
        var from = axis.FarMouth(_half);
        return new(from, from + (axis.Outward * reach.Inches), thick / 2);
    }

    private bool HasBoreOf(string row)
    {
        foreach (var bore in _bores)
        {
            if (bore.Row == row)
                return true;
        }
        return false;
    }

    /// <summary>A screw from the left, level and square to the line.</summary>
    private Cylinder InSide(Fixing fixing, double thick, double along)
    {
        var face = Post.Shape == PostShape.Square ? _half : Math.Sqrt((_half * _half) - (along * along));
        var from = new Point3(along, face, fixing.Height.Inches);
        return new(from, from - new Point3(0, fixing.PilotDepth.Inches, 0), thick / 2);
    }

    private void AddScrew(Fixing fixing, in Cylinder body)
    {
        var sunk = fixing.IsCountersunk ? ((fixing.Counterbore.Inches / 2) - body.Radius) / TangentOfCone : fixing.CounterboreDepth.Inches;
        var beforeRope = fixing.ShankHole.IsPositive ? RopeOf(fixing)?.On(body.From, body.To)?.In ?? body.Depth : 0;
        _screws.Add(new(
            fixing.Row,
            fixing.Purpose,
            body,
            new(sunk, fixing.Counterbore.Inches / 2),
            new(body.Depth, fixing.Pilot.Inches / 2),
            new(beforeRope, fixing.ShankHole.Inches / 2)));
    }

    private Cylinder? RopeOf(Fixing fixing)
    {
        foreach (var bore in _bores)
        {
            if (bore.Row == fixing.Row && bore.IsFirst == (fixing.Purpose != FixingPurpose.CornerSecond))
                return bore.Rope;
        }
        return null;
    }

    private static double ThicknessOf(Fixing fixing, ScrewCatalogue screws)
    {
        ArgumentNullException.ThrowIfNull(screws);
        foreach (var screw in screws.Screws)
        {
            if (screw.Length == fixing.Screw!.Length && screw.Kind == fixing.Screw.Kind && screw.Size == fixing.Screw.Size)
                return screw.Shank.Inches;
        }
        return Length.Max(fixing.Pilot, fixing.ShankHole).Inches;
    }

    private BoreAxis Axis(Bearing bearing, bool isCorner, Length height, double rakeDegrees) => new(
        isCorner ? (bearing == Bearing.Leaving ? LeavesAt : ArrivesAt) : 0,
        bearing,
        height.Inches,
        rakeDegrees == 0 ? 0 : Math.Tan(rakeDegrees * Math.PI / 180),
        Post.Shape == PostShape.Round);
}
