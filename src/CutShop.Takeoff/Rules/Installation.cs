using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;

namespace CutShop.Takeoff.Rules;

/// <summary>
/// The order of work of hanging rope on site. The order itself is ours (common practice, no source); that the second rope of a
/// bored corner comes after the first, and where the screws sit, follows from the takeoff.
/// </summary>
public static class Installation
{
    /// <summary>
    /// Pieces in the order in which they are hung: rows from the lowest up, so that nobody works through ropes that hang
    /// already; in a row along the line, so that at a bored corner the first rope comes before the second.
    /// </summary>
    /// <param name="pieces">Pieces of one line, or what carries them.</param>
    /// <param name="pieceOf">The piece that one of them carries.</param>
    public static IEnumerable<T> InOrder<T>(IEnumerable<T> pieces, Func<T, Piece> pieceOf) =>
        pieces.OrderBy(one => pieceOf(one).Height).ThenBy(one => pieceOf(one).Row, StringComparer.Ordinal).ThenBy(one => pieceOf(one).First);

    /// <summary>
    /// The steps of hanging a piece. The end that cannot be made longer or shorter is fixed first, so that a wrap or a knot
    /// at the other takes up any difference on site; where both are alike, it is the one that comes first along the line.
    /// </summary>
    /// <param name="takeoff">The job's takeoff.</param>
    /// <param name="piece">A piece of it.</param>
    public static IReadOnlyList<InstallStep> StepsOf(JobTakeoff takeoff, Piece piece)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        ArgumentNullException.ThrowIfNull(piece);
        var fixingAt = FixingsAlong(takeoff, piece);
        var isReversed = TakesUp(piece.AtPosts[0]) > TakesUp(piece.AtPosts[^1]);
        var posts = isReversed ? [.. piece.AtPosts.Reverse()] : piece.AtPosts;
        Fixing?[] fixings = isReversed ? [.. fixingAt.Reverse()] : fixingAt;
        var sections = isReversed ? [.. piece.Sections.Reverse()] : piece.Sections;

        var steps = new List<InstallStep>();
        if (piece.Manner is not null)
            steps.Add(new SoakStep());
        steps.Add(new LayOutStep(posts[0].Post, posts[^1].Post, TakesUp(posts[^1]) > TakesUp(posts[0])));
        if (FirstRopeOf(takeoff, piece) is { } first)
            steps.Add(new FirstRopeStep(piece.From, first.Run));
        steps.Add(End(0, posts[1], isStart: true));
        for (var i = 1; i < posts.Count; i++)
        {
            if (i == 1 || posts[i - 1].Kind is AtPostKind.Wrap or AtPostKind.Beside)
                Thread(i);
            steps.Add(new SagStep(sections[i - 1]));
            if (i == posts.Count - 1 && piece.Manner == WettingManner.Trimmed)
                steps.Add(new TrimStep());
            steps.Add(
                i == posts.Count - 1 ? End(i, posts[i - 1], isStart: false)
                : posts[i].Kind == AtPostKind.Wrap ? new WrapStep(posts[i], fixings[i]!, WayRound(posts[i], isReversed))
                : new LineScrewStep(posts[i].Post, fixings[i]!));
        }
        return steps;

        void Thread(int from)
        {
            var through = posts.Skip(from).TakeWhile(at => at.Kind is AtPostKind.Through or AtPostKind.Knot).Select(at => at.Post).ToList();
            if (through.Count > 0)
                steps.Add(new ThreadStep(through));
        }

        EndStep End(int index, AtPost inner, bool isStart) =>
            new(posts[index], inner.Post, isStart, fixings[index], posts[index].Kind == AtPostKind.Wrap ? WayRound(posts[index], isReversed) : null)
            {
                Splice = !isStart && EyeSplice.OneIsMadeOnSite(piece) ? EyeSplice.At(piece, posts[index]) : null,
            };
    }

    /// <summary>What fixes a piece at each of its stations; a ring comes to its first post twice.</summary>
    private static Fixing?[] FixingsAlong(JobTakeoff takeoff, Piece piece)
    {
        var left = takeoff.Fixings.Where(fixing => fixing.Run == piece.Run).ToList();
        return [.. piece.AtPosts.Select(at =>
        {
            var fixing = left.Find(one => one.Post.Mark == at.Post.Mark);
            if (fixing is not null)
                left.Remove(fixing);
            return fixing;
        })];
    }

    /// <summary>The rope that must be in before a piece that starts as a corner's second rope, or null.</summary>
    public static Piece? FirstRopeOf(JobTakeoff takeoff, Piece piece)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        ArgumentNullException.ThrowIfNull(piece);
        return piece.AtPosts[0].Kind != AtPostKind.Corner
            ? null
            : takeoff.Pieces.FirstOrDefault(other => other.Line == piece.Line && other.Row == piece.Row && other.Last == piece.First);
    }

    /// <summary>
    /// Which way a rope goes round a post. At a corner it follows from the side on which it goes by. Elsewhere the rope goes
    /// by on the right of someone who walks along the line, the same at every post, so that all turns look alike.
    /// </summary>
    private static WrapWay WayRound(AtPost at, bool isReversed)
    {
        var isOnTheRight = at.Post.Turn is not { } turn || (turn.Side == TurnSide.Left) == (at.Treatment.Side == WrapSide.Outside);
        // Someone who passes a post with the post on the left goes round it against the clock; whoever comes back goes the other way.
        return isOnTheRight != isReversed ? WrapWay.CounterClockwise : WrapWay.Clockwise;
    }

    /// <summary>How well an end takes up a difference: not at all in a bore, some in a wrap's tail or an eye's splice, most in a knot's tail.</summary>
    private static int TakesUp(AtPost end) => end.Kind switch
    {
        AtPostKind.Knot => 2,
        AtPostKind.Wrap or AtPostKind.Eye => 1,
        _ => 0,
    };
}
