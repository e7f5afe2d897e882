using CutShop.Paper.Words;
using CutShop.Takeoff.Rules;

namespace CutShop.Paper.Drawings;

/// <summary>A curve or a ring from above, to scale, with its string, its fixed points and the two tapes of one post.</summary>
public static class SetOutPlan
{
    private const double Tallest = 80;
    private const double Margin = 14;
    private const double Head = 9;
    private const double MarkSize = 2.8;
    private const double Dot = 0.9;
    private const double Peg = 1.4;
    private const double RoomOfMark = 9;
    private const double ToMark = 3.2;

    /// <summary>The plan.</summary>
    /// <param name="setOut">How a line is set out.</param>
    /// <param name="settings">Words.</param>
    /// <param name="page">What it is drawn for; null for paper.</param>
    public static Drawing Of(SetOut setOut, PaperSettings settings, DrawingPage? page = null)
    {
        ArgumentNullException.ThrowIfNull(setOut);
        ArgumentNullException.ThrowIfNull(settings);
        var text = settings.Text;
        page ??= DrawingPage.Paper;
        var head = page.HasTitle ? Head : 0;
        var all = setOut.Posts.Select(post => post.At).Concat(setOut.Points.Select(point => point.At)).ToList();
        var (left, top) = (all.Min(at => at.X), all.Max(at => at.Y));
        var (width, height) = (all.Max(at => at.X) - left, top - all.Min(at => at.Y));
        var byWidth = DrawingScale.Fitting(Math.Max(width, 1), page.Width - (2 * Margin), 20);
        var byHeight = DrawingScale.Fitting(Math.Max(height, 1), Tallest, 20);
        var scale = byWidth.OneTo > byHeight.OneTo ? byWidth : byHeight;

        var posts = setOut.Posts.Select(post => On(post.At)).ToList();
        var shapes = new List<Shape>();
        if (page.HasTitle)
            shapes.Add(new DrawnText(new(0, 5), text["SetOutPlanTitle", setOut.Line.Mark, scale.OneTo], 3.4, Bold: true));
        shapes.Add(new Polyline(setOut.Line.IsClosed ? [.. posts, posts[0]] : [.. posts], Pen.Rope));
        shapes.Add(new Stroke(posts[0], posts[setOut.Far], Pen.Axis));
        if (Example(setOut) is { First: { } first, Second: { } second } post)
        {
            shapes.Add(new Stroke(On(setOut.Points[first.Point].At), On(post.At), Pen.Thin));
            shapes.Add(new Stroke(On(setOut.Points[second.Point].At), On(post.At), Pen.Thin));
        }
        shapes.AddRange(posts.Select(at => new Disc(at, Dot, Pen.Outline, Fill.Wood)));
        shapes.AddRange(Marks(setOut, posts, new(all.Average(at => On(at).X), all.Average(at => On(at).Y))));
        foreach (var peg in setOut.Points.Where(point => point.Post is null))
        {
            shapes.Add(new Disc(On(peg.At), Peg, Pen.Outline, Fill.Ink));
            shapes.Add(new DrawnText(On(peg.At).Moved(0, -Peg - 1), peg.Name, MarkSize, TextAnchor.Middle, Bold: true));
        }
        return new(
            text["SetOutPlanTitle", setOut.Line.Mark, scale.OneTo],
            text["SetOutPlanDescription", setOut.Line.Mark, string.Join(", ", setOut.Points.Select(point => point.Name))],
            page.Width,
            head + (2 * Margin) + scale.Mm(height),
            shapes);

        Point On(GroundPoint at) => new(Margin + scale.Mm(at.X - left), head + Margin + scale.Mm(top - at.Y));
    }

    /// <summary>A post's mark stands square to the line, on the side away from the middle of all; where posts are close, some have none.</summary>
    private static IEnumerable<DrawnText> Marks(SetOut setOut, List<Point> posts, Point middle)
    {
        var last = new Point(double.MinValue, double.MinValue);
        for (var i = 0; i < posts.Count; i++)
        {
            var isFixed = setOut.Posts[i].CrossDegrees is null || i == 0 || i == setOut.Far || i == posts.Count - 1;
            if (!isFixed && (Between(posts[i], last) < RoomOfMark || Between(posts[i], posts[setOut.Far]) < RoomOfMark || Between(posts[i], posts[^1]) < RoomOfMark))
                continue;
            last = posts[i];
            var (before, after) = setOut.Line.IsClosed
                ? (posts[(i + posts.Count - 1) % posts.Count], posts[(i + 1) % posts.Count])
                : (posts[Math.Max(i - 1, 0)], posts[Math.Min(i + 1, posts.Count - 1)]);
            var length = Math.Max(Between(before, after), 1e-6);
            var (x, y) = (-(after.Y - before.Y) / length, (after.X - before.X) / length);
            if (((posts[i].X - middle.X) * x) + ((posts[i].Y - middle.Y) * y) < 0)
                (x, y) = (-x, -y);
            var anchor = x > 0.5 ? TextAnchor.Start : x < -0.5 ? TextAnchor.End : TextAnchor.Middle;
            yield return new(posts[i].Moved(x * ToMark, (y * ToMark) + (MarkSize * 0.36)), setOut.Posts[i].Post.Mark, MarkSize, anchor, setOut.Posts[i].CrossDegrees is null);
        }
    }

    /// <summary>A post that is no fixed point itself, whose tapes are drawn.</summary>
    private static SetOutPost? Example(SetOut setOut)
    {
        var posts = setOut.Posts.Where(post => post.CrossDegrees is not null).ToList();
        return posts.Count == 0 ? null : posts[posts.Count / 3];
    }

    private static double Between(Point a, Point b) => double.Hypot(b.X - a.X, b.Y - a.Y);
}
