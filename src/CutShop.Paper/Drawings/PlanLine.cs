using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>Draws one line of a plan.</summary>
internal static class PlanLine
{
    private const double MarkSize = 2.8;
    private const double SmallestPost = 1.6;
    private const int MostPosts = 2_000;

    /// <summary>Adds a line whose box has its upper left corner at <paramref name="corner"/>.</summary>
    public static void Draw(List<Shape> shapes, LinePath path, Point corner, DrawingScale scale, Piece? bold)
    {
        var places = path.Posts.Select(p => corner.Moved(scale.Mm(p.X), scale.Mm(p.Y))).ToArray();
        // A long straight stretch needs its ends and corners only.
        shapes.Add(new Polyline([.. places.Where((_, i) => IsBend(path.Line, i))], Pen.Rope));
        if (bold is not null)
            shapes.Add(new Polyline([.. places[bold.First..(bold.Last + 1)]], Pen.ThisRope));

        var last = new Point(double.MinValue, double.MinValue);
        for (var i = 0; i < places.Length; i++)
        {
            var isEnd = i == 0 || i == places.Length - 1;
            var isEndOfRun = bold is not null && (i == bold.First || i == bold.Last);
            if (places.Length <= MostPosts || isEnd || isEndOfRun || path.Line.At(i).Turn is not null)
                DrawPost(shapes, path, i, places[i], scale);
            var must = isEnd || isEndOfRun || path.Line.At(i).Turn is not null;
            if (must || (Distance(places[i], last) > 13 && Distance(places[i], places[^1]) > 13))
            {
                Mark(shapes, path, i, places[i], scale, isEndOfRun);
                last = places[i];
            }
        }
    }

    private static bool IsBend(Line line, int i) => i == 0 || i == line.Stations - 1 || line.At(i).Turn is not null;

    private static void DrawPost(List<Shape> shapes, LinePath path, int i, Point at, DrawingScale scale)
    {
        var post = path.Line.At(i);
        var half = Math.Max(scale.Mm(post.Across.Inches), SmallestPost) / 2;
        if (post.Shape == PostShape.Round)
        {
            shapes.Add(new Disc(at, half, Pen.Outline, Fill.Wood));
            return;
        }
        var turn = (path.Headings[i] - post.StandsTurnedBy) * Math.PI / 180;
        var (along, across) = (new Point(Math.Cos(turn), Math.Sin(turn)), new Point(-Math.Sin(turn), Math.Cos(turn)));
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

    /// <summary>Writes a post's mark to the left of the way, and to the right of it after a left turn, where the line itself is not.</summary>
    private static void Mark(List<Shape> shapes, LinePath path, int i, Point at, DrawingScale scale, bool bold)
    {
        var away = Math.Max(scale.Mm(path.Line.At(i).Across.Inches) / 2, SmallestPost / 2) + 2.2;
        var turn = path.Line.At(i).Turn;
        var side = turn is { Side: TurnSide.Left } ? 1 : -1;
        var degrees = path.Headings[i] + (turn is { } t ? (double)t.Degrees * (t.Side == TurnSide.Left ? -0.5 : 0.5) : 0) + side * 90;
        var radians = degrees * Math.PI / 180;
        var (dx, dy) = (Math.Cos(radians), Math.Sin(radians));
        var anchor = dx > 0.5 ? TextAnchor.Start : dx < -0.5 ? TextAnchor.End : TextAnchor.Middle;
        var place = at.Moved(dx * away, dy * away + MarkSize * 0.36 + (Math.Abs(dy) > 0.5 ? Math.Sign(dy) * MarkSize * 0.36 : 0));
        var mark = path.Line.At(i).Mark;
        shapes.Add(new DrawnText(place, mark.Length <= 12 ? mark : mark[..11] + "…", MarkSize, anchor, bold));
    }

    private static double Distance(Point a, Point b) => Math.Sqrt((a.X - b.X) * (a.X - b.X) + (a.Y - b.Y) * (a.Y - b.Y));
}
