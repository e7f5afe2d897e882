using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Rules;

/// <summary>
/// How the posts of a curve or a ring are set out with two tapes: each by its level distances from two fixed points, and again by how far it is
/// along a string and off it. Source: plane trigonometry. How the fixed points are chosen is ours, no source: two posts, the first and the one
/// farthest from it, where every other post is then within reach of a tape and its two tapes cross at 30 degrees or more; else pegs on a straight
/// line, set back where the curve is flat.
/// </summary>
/// <param name="Line">The line.</param>
/// <param name="Chord">The string's length: from the first post to the one farthest from it.</param>
/// <param name="Far">The index of that post.</param>
/// <param name="Points">The fixed points, in order along one straight line.</param>
/// <param name="Posts">The posts, in order.</param>
public sealed record SetOut(Line Line, Length Chord, int Far, IReadOnlyList<FixedPoint> Points, IReadOnlyList<SetOutPost> Posts)
{
    private const double LeastCross = 30;
    private const double SetBack = 0.25;
    private const double Same = 1e-6;

    /// <summary>The longest tape that is reckoned with: 100 ft. Ours, no source.</summary>
    public static Length LongestTape { get; } = Length.Foot * 100;

    /// <summary>The most from one peg to the next: half the tape, so that more than one pair is in reach. Ours, no source.</summary>
    private static readonly double MostBetween = LongestTape.Inches / 2;

    /// <summary>How far along both strings the bisector is measured from a post's centre: 24 in, or less where a section is shorter.</summary>
    private static readonly Length UsualArm = Length.FromInches(24);

    /// <summary>True where the fixed points are posts of the line itself.</summary>
    public bool IsByPosts => Points.All(point => point.Post is not null);

    /// <summary>How the posts of a line are set out; null for a line that is neither a curve nor a ring.</summary>
    public static SetOut? Of(Job job, Line line)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(line);
        if (!line.IsSetOut)
            return null;
        var places = PostPlaces.Of(job, line).Centres;
        var centres = places.Take(line.Posts.Count).ToArray();
        var far = FarthestOf(centres);
        var length = centres[0].To(centres[far]);
        var ground = new BaseLine(centres[0], centres[far], length);
        var best = Choices(ground, centres, length).Select(points => Choice.Of(points, centres)).Aggregate((one, next) => one.IsGood || one.Beats(next) ? one : next);
        return new(
            line,
            Length.RoundedFromInches(length),
            far,
            [.. best.Points.Select((at, i) => new FixedPoint(i + 1, PostAt(at), at, Length.RoundedFromInches(ground.Along(at)), Length.RoundedFromInches(ground.Off(at))))],
            [.. centres.Select((at, i) => PostOf(line, places, i, ground, best.Tapes[i]))]);

        string? PostAt(GroundPoint at) => Array.FindIndex(centres, centre => centre.To(at) < Same) is var i and >= 0 ? line.Posts[i].Mark : null;
    }

    /// <summary>The first of the posts that are farthest from the first.</summary>
    private static int FarthestOf(GroundPoint[] centres)
    {
        var far = 1;
        for (var i = 2; i < centres.Length; i++)
        {
            if (centres[0].To(centres[i]) > centres[0].To(centres[far]) + Same)
                far = i;
        }
        return far;
    }

    /// <summary>Fixed points, the simplest first: the string's two ends, two pegs set back from it, then rows of pegs.</summary>
    private static IEnumerable<GroundPoint[]> Choices(BaseLine ground, GroundPoint[] centres, double length)
    {
        var (along, off) = (centres.Select(ground.Along).ToArray(), centres.Select(ground.Off).ToArray());
        var (from, to, right, left) = (along.Min(), along.Max(), off.Min(), off.Max());
        yield return Row(0, length, 0, 1);
        yield return Row(from, to, Back(to - from), 1);
        if (length <= MostBetween)
            yield break;
        var (spaces, between) = ((int)Math.Ceiling(length / MostBetween), (int)Math.Ceiling((to - from) / MostBetween));
        yield return Row(0, length, 0, spaces);
        yield return Row(from, to, Back((to - from) / between), between);

        // On the hollow side, away from where most of the posts are off the string.
        double Back(double space) => -right > left ? left + (space * SetBack) : right - (space * SetBack);

        GroundPoint[] Row(double first, double last, double aside, int parts) =>
            [.. Enumerable.Range(0, parts + 1).Select(i => ground.At(first + ((last - first) * i / parts), aside))];
    }

    /// <summary>Of the fixed points in reach of a place, the two whose tapes cross best; null where no two are.</summary>
    private static Crossing? BestTapes(GroundPoint[] points, GroundPoint at)
    {
        var most = LongestTape.Inches;
        var near = Enumerable.Range(0, points.Length).Where(i => points[i].To(at) <= most).ToArray();
        Crossing? best = null;
        foreach (var first in near)
        {
            foreach (var second in near.Where(i => i > first))
            {
                if (Crossing.Of(first, points[first], second, points[second], at) is var crossing && (best is null || crossing.Sine > best.Sine + 1e-9))
                    best = crossing;
            }
        }
        return best;
    }

    private static SetOutPost PostOf(Line line, IReadOnlyList<GroundPoint> places, int i, BaseLine ground, Crossing? tapes)
    {
        var post = line.Posts[i];
        var next = i + 1 < places.Count ? Length.RoundedFromInches(places[i].To(places[i + 1])) : (Length?)null;
        // In a ring the section before the first post is the last one.
        var before = i > 0 ? places[i - 1].To(places[i]) : line.IsClosed ? places[^2].To(places[^1]) : 0;
        SightedBore? bore = null;
        if (post.Turn is { } turn && (line.IsClosed || (i > 0 && i < line.Posts.Count - 1)))
        {
            var shorter = Length.FromInches((long)Math.Floor(Math.Min(before, next!.Value.Inches)));
            var arm = Length.Min(UsualArm, shorter);
            bore = new(turn, !post.EndsRuns, arm, Length.RoundedFromInches(arm.Inches * Math.Sin(turn.Radians / 2)));
        }
        return new(
            post,
            places[i],
            tapes is null ? null : new(tapes.First, Length.RoundedFromInches(tapes.FromFirst)),
            tapes is null ? null : new(tapes.Second, Length.RoundedFromInches(tapes.FromSecond)),
            tapes is { FromFirst: > Same, FromSecond: > Same } ? tapes.Cross : null,
            Length.RoundedFromInches(ground.Along(places[i])),
            Length.RoundedFromInches(ground.Off(places[i])),
            next,
            bore);
    }

    /// <summary>The straight line from one place toward another.</summary>
    private readonly record struct BaseLine(GroundPoint From, GroundPoint To, double Length)
    {
        public double Along(GroundPoint at) => (((at.X - From.X) * (To.X - From.X)) + ((at.Y - From.Y) * (To.Y - From.Y))) / Length;

        /// <summary>How far a place is to the left of the line.</summary>
        public double Off(GroundPoint at) => (((at.Y - From.Y) * (To.X - From.X)) - ((at.X - From.X) * (To.Y - From.Y))) / Length;

        public GroundPoint At(double along, double off) => new(
            From.X + (((along * (To.X - From.X)) - (off * (To.Y - From.Y))) / Length),
            From.Y + (((along * (To.Y - From.Y)) + (off * (To.X - From.X))) / Length));
    }

    /// <summary>Fixed points with the best two tapes of each post.</summary>
    private sealed record Choice(GroundPoint[] Points, Crossing?[] Tapes)
    {
        private int Missed { get; } = Tapes.Count(tapes => tapes is null);

        private double Worst { get; } = Tapes.Min(tapes => tapes?.Cross ?? 90);

        public bool IsGood => Missed == 0 && Worst >= LeastCross;

        public static Choice Of(GroundPoint[] points, GroundPoint[] centres) => new(points, [.. centres.Select(centre => BestTapes(points, centre))]);

        public bool Beats(Choice other) => Missed < other.Missed || (Missed == other.Missed && Worst >= other.Worst);
    }

    /// <summary>Two tapes that meet at a place.</summary>
    private sealed record Crossing(int First, double FromFirst, int Second, double FromSecond, double Sine)
    {
        /// <summary>The angle at which they cross, in degrees up to 90: that between their lines.</summary>
        public double Cross => Math.Asin(Math.Min(Sine, 1)) * 180 / Math.PI;

        public static Crossing Of(int first, GroundPoint one, int second, GroundPoint other, GroundPoint at)
        {
            var (a, b) = (one.To(at), other.To(at));
            var twiceTheArea = Math.Abs(((one.X - at.X) * (other.Y - at.Y)) - ((one.Y - at.Y) * (other.X - at.X)));
            // A post that is a fixed point itself needs no tapes to cross.
            return new(first, a, second, b, a < Same || b < Same ? 1 : twiceTheArea / (a * b));
        }
    }
}

/// <summary>A point that posts are measured from.</summary>
/// <param name="Number">Its number, from 1, along the straight line that all fixed points are on.</param>
/// <param name="Post">The mark of the post whose centre it is; null for a peg.</param>
/// <param name="At">Where it is.</param>
/// <param name="Along">How far it is along the string; negative before the first post.</param>
/// <param name="Off">How far it is to the left of the string; negative to the right.</param>
public sealed record FixedPoint(int Number, string? Post, GroundPoint At, Length Along, Length Off)
{
    /// <summary>What it is called: the post's mark, or P and its number.</summary>
    public string Name => Post ?? FormattableString.Invariant($"P{Number}");
}

/// <summary>A tape from a fixed point.</summary>
/// <param name="Point">The fixed point, from 0.</param>
/// <param name="Length">The level distance.</param>
public readonly record struct TapeFrom(int Point, Length Length);

/// <summary>Where a post is set.</summary>
/// <param name="Post">The post.</param>
/// <param name="At">Where its centre is.</param>
/// <param name="First">The tape from the first of its two fixed points; null where no two are within the reach of a tape.</param>
/// <param name="Second">The tape from the second.</param>
/// <param name="CrossDegrees">At what angle the tapes cross, up to 90 degrees; null at a fixed point, and where no tape reaches.</param>
/// <param name="Along">How far it is along the string from the first post; negative before it.</param>
/// <param name="Off">How far it is to the left of the string, as seen from the first post; negative to the right.</param>
/// <param name="ToNext">From its centre to that of the next post, to check by; null at the end of an open line.</param>
/// <param name="Bore">How the direction of its bore is found where the line turns; null where it lies along the section.</param>
public sealed record SetOutPost(
    Post Post, GroundPoint At, TapeFrom? First, TapeFrom? Second, double? CrossDegrees, Length Along, Length Off, Length? ToNext, SightedBore? Bore);

/// <summary>
/// The direction of a bore where the line turns: the same length is measured from the post's centre along the strings to both neighbours, and a
/// string between these two marks is parallel to the bisector. Source: plane geometry, an isosceles triangle.
/// </summary>
/// <param name="Turn">The turn.</param>
/// <param name="IsBisector">True where one straight bore lies along the bisector; false where a bore lies along each section.</param>
/// <param name="Arm">The length along both strings.</param>
/// <param name="FromCentre">How far from the post's centre the string between the marks passes: arm × sin(t / 2).</param>
public sealed record SightedBore(Turn Turn, bool IsBisector, Length Arm, Length FromCentre);
