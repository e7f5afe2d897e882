using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;

namespace CutShop.Paper.Drawings;

/// <summary>
/// Which ways holes lie in a post, seen from above with the post's own sides upright: a post in a straight line has the line come from the
/// left. Positive angles are to the right, with the clock.
/// </summary>
internal static class PostWays
{
    private static readonly Point Along = new(1, 0);

    private static readonly Length RuleMark = Length.FromSixtyFourths(4);

    /// <summary>The way in which the line comes to the post.</summary>
    public static Point Arriving(Post post) => Way(post.StandsTurnedBy);

    /// <summary>The way in which it leaves the post.</summary>
    public static Point Departing(Post post) => Way(post.StandsTurnedBy - (post.Turn is { } turn ? (double)turn.Degrees * (turn.Side == TurnSide.Left ? 1 : -1) : 0));

    /// <summary>The way from the post's centre out to a face along a hole, which is square to the face unless it is skewed.</summary>
    /// <param name="work">The post.</param>
    /// <param name="face">A face of it.</param>
    /// <param name="bore">The bore that the hole is or lies in line with; null for none.</param>
    public static Point Outward(PostWork work, Face face, Bore? bore) => Outward(work, face, bore is { SkewDegrees: > 0 }, bore is { KinkDegrees: > 0 });

    /// <summary>The same for a hole that is skewed or not, or that lies on the bisector of a corner.</summary>
    public static Point Outward(PostWork work, Face face, bool isSkewed, bool isOnBisector)
    {
        var isNext = face.Neighbour == work.After;
        var facing = isNext ? Departing(work.Post) : Reverse(Arriving(work.Post));
        // A straight bore through a corner lies along the bisector, on which the post stands.
        if (isOnBisector)
            facing = isNext ? Along : Reverse(Along);
        else if (work.Post.Shape == PostShape.Square && !isSkewed)
            facing = Square(facing);
        return face.Sight switch
        {
            FaceSight.Toward => facing,
            FaceSight.AwayFrom => Reverse(facing),
            FaceSight.Side => new(facing.Y, -facing.X),
            _ => throw new InvalidOperationException($"A hole has no face {face.Sight}."),
        };
    }

    /// <summary>
    /// How far a hole lies off the square to its face, in degrees: positive where its bit points to the right of who looks at the face with
    /// the post's arrow up. A screw in line with the bore has the same at the opposite face.
    /// </summary>
    public static double SkewOf(PostWork work, Face face, Bore? bore)
    {
        if (bore is not { SkewDegrees: > 0 } || face.Sight is FaceSight.Side or FaceSight.Around)
            return 0;
        var outward = Outward(work, face, bore);
        var square = Square(outward);
        return Math.Sign(square.X * outward.Y - square.Y * outward.X) * bore.SkewDegrees;
    }

    /// <summary>The bore that a screw lies in line with or crosses; at a corner the arriving rope's bore comes first. Null where there is none.</summary>
    public static Bore? BoreOf(PostWork work, Fixing fixing)
    {
        var bores = work.Bores.Where(bore => bore.Row == fixing.Row);
        return fixing.Purpose == FixingPurpose.CornerSecond ? bores.LastOrDefault() : bores.FirstOrDefault();
    }

    /// <summary>Where a bore is drilled from, and how deep; of a hole that is there, where and how deep it would have been.</summary>
    public static IEnumerable<(Face Face, Length Depth)> MouthsOf(PostWork work, Bore bore)
    {
        if (!bore.IsExisting)
            return bore.Operations.Select(operation => (operation.Face, operation.Depth));
        var slope = Math.Tan(bore.RakeDegrees * Math.PI / 180);
        var end = (work.After ?? work.Before)!;
        return bore.Kind switch
        {
            AtPostKind.Stopped => [(Toward(end), BoreRules.StoppedDepth(bore.Post.Across))],
            AtPostKind.Corner => [(Toward((ReferenceEquals(bore, work.Bores.First(other => other.Row == bore.Row)) ? work.Before : work.After)!), BoreRules.StoppedDepth(bore.Post.Across, bore.SkewDegrees))],
            _ => ((Face[])[Toward(work.Before ?? end), work.Before is null || work.After is null ? Toward(end) with { Sight = FaceSight.AwayFrom } : Toward(work.After)])
                .Select(face => (face, BoreRules.ThroughDepth(bore.Post.Across, slope))),
        };

        static Face Toward(string neighbour) => new(FaceSight.Toward, neighbour);
    }

    /// <summary>The height of a hole's mark on a face above the ground.</summary>
    public static Length MarkOn(PostWork work, Face face, Bore bore, Length height)
    {
        var looksAlong = face.Sight == FaceSight.Side ? 0 : (face.Neighbour == work.After) == (face.Sight == FaceSight.Toward) ? 1 : -1;
        return FaceMark.Height(height, RopeAtPost.ToCentre(bore.Post.Across, bore.SkewDegrees) * 2, bore.RakeDegrees, looksAlong);
    }

    /// <summary>
    /// The centres of a fixing's holes on their face: how far to the right of its middle, for who looks at it with the arrow up, and how high
    /// above the ground. Two screws of a join stand a quarter of the post from either face that the rope goes through, as high as the bore is
    /// there, to the nearest 1/16 in of a shop rule; a skewed hole comes out (W / 2) tan s beside the middle. Source: plane geometry.
    /// </summary>
    public static IReadOnlyList<(Length Right, Length Mark)> HolesOf(PostWork work, Fixing fixing)
    {
        var bore = BoreOf(work, fixing);
        if (fixing.Purpose != FixingPurpose.Join || bore is null)
            return [(BesideTheMiddle(work, fixing.Face, bore), fixing.Mark)];
        var (aside, isAfter) = (work.Post.Across / 4, fixing.Face.Neighbour == work.After);
        // Left of who looks at the side is the neighbour that names it.
        var rise = FaceMark.Height(Length.Zero, work.Post.Across / 2, bore.RakeDegrees, isAfter ? 1 : -1).RoundTo(RuleMark);
        return [(-aside, fixing.Mark + rise), (aside, fixing.Mark - rise)];
    }

    /// <summary>How far to the right of a face's middle a hole through the post's centre comes out: (W / 2) tan s to the left of the way its bit points.</summary>
    public static Length BesideTheMiddle(PostWork work, Face face, Bore? bore) =>
        SkewOf(work, face, bore) is var skew && skew == 0 ? Length.Zero : Length.RoundedFromInches(-Math.Tan(skew * Math.PI / 180) * work.Post.Across.Inches / 2);

    /// <summary>The opposite way.</summary>
    public static Point Reverse(Point way) => new(-way.X, -way.Y);

    /// <summary>A way turned to the right by so many degrees.</summary>
    public static Point Turned(Point way, double degrees)
    {
        var (cos, sin) = (Math.Cos(degrees * Math.PI / 180), Math.Sin(degrees * Math.PI / 180));
        return new(way.X * cos - way.Y * sin, way.X * sin + way.Y * cos);
    }

    /// <summary>The nearest of the four ways that are square to a post's faces.</summary>
    private static Point Square(Point way) => Math.Abs(way.X) >= Math.Abs(way.Y) ? new(Math.Sign(way.X), 0) : new(0, Math.Sign(way.Y));

    /// <summary>A way so many degrees to the right of the post's own.</summary>
    private static Point Way(double degrees) => new(Math.Round(Math.Cos(degrees * Math.PI / 180), 9), Math.Round(Math.Sin(degrees * Math.PI / 180), 9));
}
