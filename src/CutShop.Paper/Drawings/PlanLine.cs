using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>One line of a plan: its posts as they stand turned, the bores in them, and the rope from hold to hold.</summary>
/// <param name="Path">Where its posts stand.</param>
/// <param name="Works">What is done at its posts, in order.</param>
/// <param name="Pieces">Its pieces.</param>
/// <param name="Bold">The piece whose run is drawn bold, or null.</param>
internal sealed record PlanLine(LinePath Path, IReadOnlyList<PostWork> Works, IReadOnlyList<Piece> Pieces, Piece? Bold)
{
    private const double MarkSize = 2.8;
    private const double SmallestPost = 1.6;
    private const double SmallestBore = 0.4;
    private const int MostPosts = 2_000;
    private const double ArcStep = 2;

    private Line Line => Path.Line;

    /// <summary>Adds the line with the upper left corner of its box at <paramref name="corner"/>.</summary>
    public void Draw(List<Shape> shapes, Point corner, DrawingScale scale)
    {
        var places = Path.Posts.Select(p => corner.Moved(scale.Mm(p.X), scale.Mm(p.Y))).ToArray();
        DrawArc(shapes, places, scale);
        // In each row the rope may take another way past the posts; where two take the same it is drawn once.
        foreach (var way in Pieces.Where(piece => piece.Run != Bold?.Run).Select(piece => WayOf(piece, places, scale)).DistinctBy(way => string.Join(' ', way)))
            shapes.Add(new Polyline(way, Pen.Rope));
        if (Bold is not null)
            shapes.Add(new Polyline(WayOf(Bold, places, scale), Pen.ThisRope));

        var last = new Point(double.MinValue, double.MinValue);
        for (var i = 0; i < Works.Count; i++)
        {
            var isEnd = i == 0 || i == Works.Count - 1;
            var isEndOfRun = Bold is not null && (i == Bold.First || i == Bold.Last);
            if (places.Length <= MostPosts || isEnd || isEndOfRun || Line.At(i).Turn is not null)
                DrawPost(shapes, i, places[i], scale);
            var must = isEnd || isEndOfRun || (Line.At(i).Turn is not null && Line.Curve is null);
            if (must || (Distance(places[i], last) > 13 && Distance(places[i], places[^1]) > 13))
            {
                Mark(shapes, i, places[i], scale, isEndOfRun);
                last = places[i];
            }
        }
    }

    /// <summary>The arc that a curve's posts stand on.</summary>
    private void DrawArc(List<Shape> shapes, Point[] places, DrawingScale scale)
    {
        if (Line.Curve is not { } curve)
            return;
        var (radius, side) = (scale.Mm(curve.RadiusInches), curve.Turns == TurnSide.Left ? -1 : 1);
        var (first, second) = (places[0], places[1]);
        var half = Distance(first, second) / 2;
        var along = new Point((second.X - first.X) / 2 / half, (second.Y - first.Y) / 2 / half);
        var centre = first.Toward(along, half).Toward(new(-along.Y * side, along.X * side), Math.Sqrt(Math.Max((radius * radius) - (half * half), 0)));
        var whole = curve.TurnDegrees(Line.Sections.Count) * Line.Sections.Count;
        var steps = (int)Math.Ceiling(whole / ArcStep);
        shapes.Add(new Polyline(
            [
                .. Enumerable.Range(0, steps + 1).Select(k => PostWays.Turned(new(first.X - centre.X, first.Y - centre.Y), side * whole * k / steps))
                    .Select(spoke => centre.Moved(spoke.X, spoke.Y)),
            ],
            Pen.Axis));
    }

    /// <summary>A piece's way from hold to hold. A long straight stretch needs its ends and corners only.</summary>
    private IReadOnlyList<Point> WayOf(Piece piece, Point[] places, DrawingScale scale)
    {
        var isSmall = places.Length > MostPosts;
        return [.. Enumerable.Range(piece.First, piece.AtPosts.Count).SelectMany(i => isSmall ? IsBend(i, piece) ? [places[i]] : [] : HoldsOf(piece, i, places[i], scale))];
    }

    private bool IsBend(int i, Piece piece) => i == piece.First || i == piece.Last || Line.At(i).Turn is not null;

    /// <summary>Where a piece comes to a station and where it leaves it.</summary>
    private IEnumerable<Point> HoldsOf(Piece piece, int i, Point centre, DrawingScale scale)
    {
        var (at, work) = (piece.AtPosts[i - piece.First], WorkAt(i));
        var half = scale.Mm(at.Post.Across.Inches) / 2;
        switch (at.Kind)
        {
            case AtPostKind.Wrap:
                return [centre];
            case AtPostKind.Beside:
                return [centre.Toward(Past(at, i), half + (scale.Mm(piece.Rope.Across.Inches) / 2))];
            case AtPostKind.Eye:
                return [centre.Toward(i == piece.First ? Turned(i, PostWays.Departing(at.Post)) : Turned(i, PostWays.Reverse(PostWays.Arriving(at.Post))), half + scale.Mm(at.Treatment.Eye!.Reach.Inches))];
            default:
                var skew = at.Kind == AtPostKind.Corner ? at.Post.SkewDegrees : 0;
                var isOnBisector = at.Kind != AtPostKind.Corner && at.Post is { Turn: not null, Corner: CornerKind.Through };
                var come = i == piece.First ? (Point[])[] : [Mouth(work.Before!)];
                var leave = i == piece.Last ? (Point[])[] : [Mouth(work.After!)];
                return [.. come, centre, .. leave];

                Point Mouth(string toward) =>
                    centre.Toward(Turned(i, PostWays.Outward(work, new(FaceSight.Toward, toward), skew > 0, isOnBisector)), half / Math.Cos(skew * Math.PI / 180));
        }
    }

    /// <summary>The side on which a rope passes a post: the outside of a turn, and the left of the way where the line goes straight on.</summary>
    private Point Past(AtPost at, int i)
    {
        var isRight = at.Post.Turn is { } side && side.Side == TurnSide.Left == (at.Treatment.Side == WrapSide.Outside);
        var heading = PostWays.Turned(new(1, 0), Path.Headings[i] - (at.Post.Turn is { } turn ? (double)turn.Degrees / 2 * (turn.Side == TurnSide.Left ? 1 : -1) : 0));
        return isRight ? new(-heading.Y, heading.X) : new(heading.Y, -heading.X);
    }

    private PostWork WorkAt(int station) => Works[station % Works.Count];

    /// <summary>A way in a post's own position as it lies on the plan.</summary>
    private Point Turned(int i, Point way) => PostWays.Turned(way, Path.Headings[i] - Line.At(i).StandsTurnedBy);

    private void DrawPost(List<Shape> shapes, int i, Point at, DrawingScale scale)
    {
        var post = Line.At(i);
        var half = Math.Max(scale.Mm(post.Across.Inches), SmallestPost) / 2;
        if (post.Shape == PostShape.Round)
        {
            shapes.Add(new Disc(at, half, Pen.Outline, Fill.Wood));
        }
        else
        {
            var along = Turned(i, new(1, 0));
            var across = new Point(-along.Y, along.X);
            shapes.Add(new Polygon(
                [
                    at.Toward(along, half).Toward(across, half),
                    at.Toward(along, half).Toward(across, -half),
                    at.Toward(along, -half).Toward(across, -half),
                    at.Toward(along, -half).Toward(across, half),
                ],
                Pen.Outline,
                Fill.Wood));
        }
        DrawBores(shapes, i, at, scale);
    }

    /// <summary>The bores of all rows where paper can show them; one over another is drawn once.</summary>
    private void DrawBores(List<Shape> shapes, int i, Point at, DrawingScale scale)
    {
        var work = WorkAt(i);
        foreach (var (bore, face, depth) in work.Bores.Where(bore => scale.Mm(bore.Bit.Inches) >= SmallestBore)
            .SelectMany(bore => PostWays.MouthsOf(work, bore).Select(mouth => (Bore: bore, mouth.Face, mouth.Depth)))
            .DistinctBy(hole => (hole.Face, hole.Bore.Bit, hole.Depth, hole.Bore.IsExisting)))
        {
            var outward = Turned(i, PostWays.Outward(work, face, bore));
            var side = new Point(-outward.Y, outward.X);
            var mouth = scale.Mm(work.Post.Across.Inches) / 2 / Math.Cos(bore.SkewDegrees * Math.PI / 180);
            var end = mouth - scale.Mm(depth.Inches * Math.Cos(bore.RakeDegrees * Math.PI / 180));
            foreach (var edge in new[] { -1, 1 })
            {
                var right = edge * scale.Mm(bore.Bit.Inches) / 2;
                shapes.Add(new Stroke(at.Toward(outward, mouth).Toward(side, right), at.Toward(outward, end).Toward(side, right), Pen.Thin));
            }
            if (bore.Kind is AtPostKind.Stopped or AtPostKind.Corner)
                shapes.Add(new Stroke(at.Toward(outward, end).Toward(side, -scale.Mm(bore.Bit.Inches) / 2), at.Toward(outward, end).Toward(side, scale.Mm(bore.Bit.Inches) / 2), Pen.Thin));
        }
    }

    /// <summary>Writes a post's mark to the left of the way, and to the right of it after a left turn, where the line itself is not.</summary>
    private void Mark(List<Shape> shapes, int i, Point at, DrawingScale scale, bool bold)
    {
        var post = Line.At(i);
        var away = Math.Max(scale.Mm(post.Across.Inches) / 2, SmallestPost / 2) + 2.2;
        var side = post.Turn is { Side: TurnSide.Left } ? 1 : -1;
        var degrees = Path.Headings[i] + (post.Turn is { } t ? (double)t.Degrees * (t.Side == TurnSide.Left ? -0.5 : 0.5) : 0) + side * 90;
        var radians = degrees * Math.PI / 180;
        var (dx, dy) = (Math.Cos(radians), Math.Sin(radians));
        var anchor = dx > 0.5 ? TextAnchor.Start : dx < -0.5 ? TextAnchor.End : TextAnchor.Middle;
        var place = at.Moved(dx * away, dy * away + MarkSize * 0.36 + (Math.Abs(dy) > 0.5 ? Math.Sign(dy) * MarkSize * 0.36 : 0));
        shapes.Add(new DrawnText(place, post.Mark.Length <= 12 ? post.Mark : post.Mark[..11] + "…", MarkSize, anchor, bold));
    }

    private static double Distance(Point a, Point b) => double.Hypot(a.X - b.X, a.Y - b.Y);
}
