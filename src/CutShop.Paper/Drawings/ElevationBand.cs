using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;
using CutShop.Takeoff.Tables;

namespace CutShop.Paper.Drawings;

/// <summary>Draws one band of an elevation.</summary>
internal sealed class ElevationBand(
    Line line,
    LineGround ground,
    DrawingScale scale,
    Band band,
    IReadOnlyList<Piece> pieces,
    BoreSlope slopeOfBores,
    PaperSettings settings,
    string? boldRun,
    DrawingPage page)
{
    private const double LeftRoom = 26;
    private const double MarkSize = 3.6;
    private const double SmallSize = 2.5;
    private const double Tick = 0.8;
    private const double LeastWords = 1.2;
    private const double ClearLine = 3.6;

    /// <summary>How far above a chord words reach, in their own size.</summary>
    private const double WordsAbove = 1.3;

    private readonly List<Shape> _shapes = [];
    private readonly double _top = Enumerable.Range(band.First, band.Last - band.First + 1)
        .Max(i => ground.Ground[i] + line.At(i).Height.Inches);

    private readonly double _closestRows = scale.Mm(line.Rows.Select(row => row.Height.Inches).Order()
        .Aggregate((Last: double.NegativeInfinity, Least: double.PositiveInfinity), (x, height) => (height, Math.Min(x.Least, height - x.Last)))
        .Least);

    private PaperText Text => settings.Text;

    private double HeadRoom => Enumerable.Range(band.First, band.Last - band.First + 1).Any(i => line.At(i).Turn is not null) ? 17 : 13;

    private double FootRoom => 14
        + (line.Sections.Skip(band.First).Take(band.Last - band.First).Any(section => section.Rise != Length.Zero) ? 4 : 0)
        + (ClearRows * ClearLine);

    /// <summary>The most rows of a section whose clear width was taped at their own height.</summary>
    private int ClearRows => line.Sections.Skip(band.First).Take(band.Last - band.First).Max(section => section.ClearAt?.Count ?? 0);

    private double GroundRoom => HeadRoom + scale.Mm(ground.HeightOf(line, band.First, band.Last));

    public Drawing Draw(string title)
    {
        if (page.HasTitle)
            _shapes.Add(new DrawnText(new(0, 5), title, 3.4, Bold: true));
        DrawGround();
        for (var i = band.First; i <= band.Last; i++)
            DrawPost(i);
        foreach (var piece in pieces)
            DrawPiece(piece);
        LabelRows();
        for (var i = band.First; i < band.Last; i++)
            DrawWidth(i);
        return new(
            title,
            Text["ElevationDescription", line.At(band.First).Mark, line.At(band.Last).Mark, band.Last - band.First + 1, line.Rows.Count],
            page.Width,
            GroundRoom + FootRoom,
            _shapes);
    }

    private double X(double along) =>
        LeftRoom + scale.Mm(along - ground.Along[band.First] + line.At(band.First).Across.Inches / 2);

    private double Y(double up) => HeadRoom + scale.Mm(_top - up);

    private void DrawGround()
    {
        var points = new List<Point> { new(X(ground.Along[band.First]) - 8, Y(ground.Ground[band.First])) };
        for (var i = band.First; i <= band.Last; i++)
            points.Add(new(X(ground.Along[i]), Y(ground.Ground[i])));
        points.Add(new(X(ground.Along[band.Last]) + 8, Y(ground.Ground[band.Last])));
        _shapes.Add(new Polyline(points, Pen.Ground));
    }

    private void DrawPost(int i)
    {
        var post = line.At(i);
        var (width, height) = (scale.Mm(post.Across.Inches), scale.Mm(post.Height.Inches));
        var (x, top) = (X(ground.Along[i]), Y(ground.Ground[i] + post.Height.Inches));
        _shapes.Add(new Box(x - width / 2, top, width, height, Pen.Outline, Fill.Wood));
        if (post.Shape == PostShape.Round)
            _shapes.Add(new Stroke(new(x, top - 1.5), new(x, top + height + 1.5), Pen.Axis));
        _shapes.Add(new DrawnText(new(x, top - 2.2), Shortened(post.Mark, 14), MarkSize, TextAnchor.Middle, Bold: true));
        if (post.Turn is not { } turn)
            return;
        // Not wider than the way to the next post, which may turn too.
        var words = Text.TurnOf(turn.Degrees, turn.Side == TurnSide.Left);
        var room = new[] { i - 1, i + 1 }.Where(k => k >= band.First && k <= band.Last).Min(k => Math.Abs(X(ground.Along[k]) - x));
        Say(new(new(x, top - 6.6), words, Math.Min(SmallSize, (room - 1) / Dimension.GuessWidth(words, 1)), TextAnchor.Middle));
    }

    private void DrawPiece(Piece piece)
    {
        var pen = piece.Run == boldRun ? Pen.ThisRope : Pen.Rope;
        var width = RopeWidth(piece);
        for (var i = Math.Max(piece.First, band.First); i < Math.Min(piece.Last, band.Last); i++)
            DrawSection(piece, i, pen, width);
        for (var i = Math.Max(piece.First, band.First); i <= Math.Min(piece.Last, band.Last); i++)
        {
            var at = new Point(X(ground.Along[i]), Y(ground.Ground[i] + piece.HeightAt(i).Inches));
            ElevationAtPost.Draw(_shapes, piece, i, BoreAt(piece, i), at, scale, pen, width);
            if (piece.AtPosts[i - piece.First] is { Kind: AtPostKind.Eye } eye)
                NameEye(piece, eye, at, i == piece.First ? 1 : -1);
            else if (i > band.First && piece.HeightAt(i) != piece.Height)
                NameHeight(piece, i, at);
        }
    }

    private void DrawSection(Piece piece, int i, Pen pen, double width)
    {
        // A chord of so many misses the rope by about sag / Steps²: less than its line is wide.
        const int Steps = 16;
        var section = piece.Sections[i - piece.First];
        var rope = new HangingRope(
            section.Level.Inches, section.Rise.Inches, section.Sag.Inches, section.Arc.Inches, section.ParameterIn ?? double.PositiveInfinity);
        var (before, after) = (ToHold(piece, i), ToHold(piece, i + 1));
        var centres = ground.Along[i + 1] - ground.Along[i];
        // A line that turns is drawn unrolled, so what its holds lie off the straight is shared between both.
        var setback = before + after == 0 ? 0 : before / (before + after) * (centres - section.Level.Inches);
        var slope = section.Rise.Inches / section.Level.Inches;
        // A raked bore climbs on its way to its mouth, a level one does not.
        var climbs = BoreAt(piece, i) is { IsLevel: false } ? section.Climb.Inches / centres * section.From.Across.Inches / 2 : 0;
        var (x0, y0) = (ground.Along[i] + setback, ground.Ground[i] + piece.HeightAt(i).Inches + climbs);
        double Up(double x) => y0 + slope * x - rope.DropAt(x);

        Point At(double x) => new(X(x0 + x), Y(Up(x)));

        // Of an eye the rope begins at its throat.
        var (first, last) = (EyeAt(piece, i), EyeAt(piece, i + 1));
        var (from, to) = (first?.Throat.Inches ?? 0, rope.Level - (last?.Throat.Inches ?? 0));
        _shapes.Add(new Polyline([.. Enumerable.Range(0, Steps + 1).Select(k => At(from + ((to - from) * k / Steps)))], pen, width));
        if (first is not null)
            ElevationAtPost.DrawEye(_shapes, first, At(0), At(from), -scale.Mm(first.Reach.Inches), scale, pen, width);
        if (last is not null)
            ElevationAtPost.DrawEye(_shapes, last, At(rope.Level), At(to), scale.Mm(last.Reach.Inches), scale, pen, width);
        var middle = rope.Level / 2;
        DrawSag(
            At(0),
            At(rope.Level),
            new(X(x0 + middle), Y(y0 + slope * middle)),
            new(X(x0 + middle), Y(Up(middle))),
            piece,
            i);
    }

    /// <summary>
    /// The bore that a piece has at a station: its slope, how wide it is, and whether it is there already; null where the rope goes into
    /// none. A raked bore follows its section, and inside a run the mean of both.
    /// </summary>
    private BoreFromSide? BoreAt(Piece piece, int i)
    {
        var at = piece.AtPosts[i - piece.First];
        if (at.Kind is AtPostKind.Wrap or AtPostKind.Beside or AtPostKind.Eye)
            return null;
        var row = line.Rows.First(row => row.Mark == piece.Row);
        var hole = row.HoleIn(at.Post);
        // Where a run is joined, the bore goes on into the next piece; in a ring the last section comes before the first.
        var (before, after) = (SlopeOf(piece.Row, i - 1), SlopeOf(piece.Row, i));
        var slope = row.IsLevelIn(at.Post, slopeOfBores) ? 0
            : at.Kind is AtPostKind.Through or AtPostKind.Join ? ((before ?? after!.Value) + (after ?? before!.Value)) / 2
            : (i == piece.First ? after : before) ?? 0;
        return new(slope, hole?.Across ?? RopeBit.DiameterFor(piece.Rope), hole is not null, row.IsLevelIn(at.Post, slopeOfBores));
    }

    /// <summary>The slope of a row's line in a section from post centre to post centre; null past the line's ends, and where a piece is not at hand.</summary>
    private double? SlopeOf(string row, int section)
    {
        var i = line.IsClosed ? (section + line.Sections.Count) % line.Sections.Count : section;
        return pieces.FirstOrDefault(piece => piece.Row == row && piece.First <= i && i < piece.Last) is { } there
            ? there.Sections[i - there.First].Climb.Inches / (ground.Along[i + 1] - ground.Along[i])
            : null;
    }

    private static Eye? EyeAt(Piece piece, int i) => piece.AtPosts[i - piece.First] is { Kind: AtPostKind.Eye } at ? at.Treatment.Eye : null;

    /// <summary>From a post's centre to where a piece is held there, in inches.</summary>
    private static double ToHold(Piece piece, int i)
    {
        var at = piece.AtPosts[i - piece.First];
        var half = at.Post.Across.Inches / 2;
        return at.Kind switch
        {
            AtPostKind.Wrap or AtPostKind.Beside => 0,
            AtPostKind.Eye => half + at.Treatment.Eye!.Reach.Inches,
            AtPostKind.Corner => half / Math.Cos(at.Post.SkewDegrees * Math.PI / 180),
            _ => half,
        };
    }

    /// <summary>Writes over an eye what it hangs on, and how it is spliced, where the row has room.</summary>
    private void NameEye(Piece piece, AtPost at, Point centre, int leaves)
    {
        var eye = at.Treatment.Eye!;
        var words = Text["EyeOnPin", settings.Figures.Lead(eye.Pin), eye.TucksIn(piece.Rope.IsNatural)];
        var edge = centre.Moved(leaves * (scale.Mm(at.Post.Across.Inches) / 2 + 1), -scale.Mm((eye.Round + piece.Rope.Across + piece.Rope.Across).Inches) / 2 - 1);
        Say(new(edge, words, Math.Min(SmallSize, _closestRows * 0.3), leaves > 0 ? TextAnchor.Start : TextAnchor.End));
    }

    /// <summary>Writes a row's own height at a post over the rope there.</summary>
    private void NameHeight(Piece piece, int i, Point at)
    {
        var half = scale.Mm(piece.AtPosts[i - piece.First].Post.Across.Inches) / 2;
        var isLast = i == band.Last;
        Say(new(at.Moved(isLast ? half + 1 : -half - 1, -RopeWidth(piece) / 2 - 1.6), settings.Figures.Lead(piece.HeightAt(i)), Math.Min(SmallSize, _closestRows * 0.3), isLast ? TextAnchor.Start : TextAnchor.End));
    }

    private void DrawSag(Point start, Point end, Point chord, Point rope, Piece piece, int i)
    {
        var section = piece.Sections[i - piece.First];
        var isStraight = section.Sag == Length.Zero;
        var words = isStraight ? Text["Straight"] : Text["Sag", settings.Figures.Lead(section.Sag)];
        if (!isStraight)
        {
            _shapes.Add(new Stroke(start, end, Pen.Axis));
            _shapes.Add(new Stroke(chord, rope, Pen.Thin));
            foreach (var tick in new[] { chord, rope })
                _shapes.Add(new Stroke(tick.Moved(-Tick, Tick), tick.Moved(Tick, -Tick), Pen.Outline));
        }
        // Words stand along the chord, so that on a slope too there is as much room over them as at the middle.
        var slope = Math.Atan2(end.Y - start.Y, end.X - start.X);
        var width = end.X - start.X;
        var (place, size, anchor) = RoomAbove(piece, i) is var above && above >= LeastWords * WordsAbove
            ? OverTheChord(chord, Math.Min(SagSize(words, width), above / WordsAbove))
            : UnderTheRope(rope, piece, Math.Min(SagSize(words, width / 2), RoomBelow(piece, i) / WordsAbove));
        Say(new(place, words, size, anchor, TurnDegrees: slope * 180 / Math.PI));

        (Point Place, double Size, TextAnchor Anchor) OverTheChord(Point at, double letters) =>
            (at.Moved(0, -(isStraight ? RopeWidth(piece) / 2 + 0.5 : letters * 0.48) / Math.Cos(slope)), letters, TextAnchor.Middle);
    }

    /// <summary>Where the next row's rope hangs across a chord: under the rope, beside the line of the sag.</summary>
    private (Point Place, double Size, TextAnchor Anchor) UnderTheRope(Point rope, Piece piece, double size) =>
        (rope.Moved(Tick + 0.4, RopeWidth(piece) / 2 + 0.4 + size * 0.75), size, TextAnchor.Start);

    /// <summary>From a rope's chord to the rope that hangs down toward it from the next row, at the middle; less than nothing where they cross.</summary>
    private double RoomAbove(Piece piece, int i) => Others(piece, i)
        .Where(other => other.Height > piece.Height)
        .Select(other => scale.Mm((other.Height - piece.Height - other.Sections[i - other.First].Sag).Inches) - Math.Max(RopeWidth(other) / 2, Tick))
        .Append(double.PositiveInfinity)
        .Min();

    /// <summary>From a rope's lowest place to the next rope below it, or to the ground.</summary>
    private double RoomBelow(Piece piece, int i)
    {
        var height = piece.Height - piece.Sections[i - piece.First].Sag;
        return Others(piece, i)
            .Where(other => other.Height < piece.Height)
            .Select(other => scale.Mm((height - other.Height + other.Sections[i - other.First].Sag).Inches) - RopeWidth(other) / 2)
            .Append(scale.Mm(height.Inches))
            .Min() - RopeWidth(piece) / 2;
    }

    private IEnumerable<Piece> Others(Piece piece, int i) => pieces.Where(other => other.First <= i && i < other.Last && other.Row != piece.Row);

    private double RopeWidth(Piece piece) => Math.Max(scale.Mm(piece.Rope.Across.Inches), 0.5);

    /// <summary>Letters that fit between two posts, and between two rows where rows are close.</summary>
    private double SagSize(string words, double room) =>
        Math.Min(Math.Min(SmallSize, (room - 1) / Dimension.GuessWidth(words, 1)), _closestRows * 0.8);

    private void LabelRows()
    {
        const double TwoLines = 7.2;
        var edge = X(ground.Along[band.First]) - scale.Mm(line.At(band.First).Across.Inches) / 2;
        var post = line.At(band.First);
        var rows = line.Rows.OrderByDescending(row => row.HeightAt(post)).ToList();
        var ropes = rows.Select(row => Y(ground.Ground[band.First] + row.HeightAt(post).Inches)).ToList();
        var places = Spread.Apart(ropes, TwoLines, HeadRoom, GroundRoom + FootRoom - 4);
        var apart = rows.Count < 2 ? TwoLines : (places[^1] - places[0]) / (rows.Count - 1);
        for (var i = 0; i < rows.Count; i++)
        {
            LabelRow(rows[i], rows[i].HeightAt(post), places[i], apart < TwoLines - 0.01 ? Math.Min(SmallSize, apart * 0.8) : null);
            _shapes.Add(new Polyline([new(edge - 7.5, places[i]), new(edge - 5, places[i]), new(edge - 1, ropes[i])], Pen.Thin));
        }
    }

    /// <summary>A row's mark over its height, or beside it in small letters where rows are many.</summary>
    private void LabelRow(Row row, Length up, double y, double? crowded)
    {
        var height = settings.Figures.Lead(up);
        if (crowded is { } size)
        {
            Say(new(new(0, y + size * 0.35), $"{Shortened(row.Mark, 4)} {height}", Math.Min(size, Math.Max(1.9, page.SmallestLetters))));
            return;
        }
        _shapes.Add(new DrawnText(new(0, y - 0.4), Shortened(row.Mark, 11), Math.Max(RowSize(row.Mark), page.SmallestLetters), Bold: true));
        _shapes.Add(new DrawnText(new(0, y + 2.8), height, SmallSize));
    }

    private static double RowSize(string mark) => Math.Min(3, 18 / Dimension.GuessBoldWidth(Shortened(mark, 11), 1));

    private void DrawWidth(int i)
    {
        var section = line.Sections[i];
        var (before, after) = (line.At(i), line.At(i + 1));
        var isClear = section.Spacing == SpacingKind.Clear;
        var y = GroundRoom + 3;
        var left = X(ground.Along[i] + (isClear ? before.Across.Inches / 2 : 0));
        var right = X(ground.Along[i + 1] - (isClear ? after.Across.Inches / 2 : 0));
        var figure = settings.Figures.Lead(section.Width);
        var words = isClear ? Text["Clear", figure] : Text["Centres", figure];
        var room = right - left - 2;
        var size = Math.Min(Dimension.TextSize, room / Math.Max(Dimension.GuessWidth(words, 1), 1));
        foreach (var x in new[] { left, right })
        {
            _shapes.Add(new Stroke(new(x, y), new(x, y + 7), Pen.Thin));
            _shapes.Add(new Stroke(new(x - 0.9, y + 6.9), new(x + 0.9, y + 5.1), Pen.Outline));
        }
        _shapes.Add(new Stroke(new(left, y + 6), new(right, y + 6), Pen.Thin));
        Say(new(new((left + right) / 2, y + 5), words, size, TextAnchor.Middle));
        var small = Math.Min(SmallSize, size);
        Say(new(new((left + right) / 2, y + 9.6), settings.Figures.Other(section.Width), small, TextAnchor.Middle));
        var under = y + 13.2;
        foreach (var (row, clear) in section.ClearAt ?? new Dictionary<string, Length>())
        {
            var taped = Text["ClearOfRow", Shortened(row, 11), settings.Figures.Both(clear)];
            Say(new(new((left + right) / 2, under), taped, Math.Min(small, room / Dimension.GuessWidth(taped, 1)), TextAnchor.Middle));
            under += ClearLine;
        }
        if (section.Rise == Length.Zero)
            return;
        var rise = settings.Figures.Both(section.Rise.Abs());
        var steep = section.Rise.IsNegative ? Text["Fall", rise] : Text["Rise", rise];
        Say(new(new((left + right) / 2, under), steep, Math.Min(small, room / Dimension.GuessWidth(steep, 1)), TextAnchor.Middle));
    }

    /// <summary>Adds words, where there is room for letters that can be read on the page.</summary>
    private void Say(DrawnText words)
    {
        const double Smallest = 0.5;
        var size = Math.Max(words.Size, Smallest);
        if (size >= page.SmallestLetters)
            _shapes.Add(words with { Size = size });
    }

    private static string Shortened(string mark, int most) => mark.Length <= most ? mark : mark[..(most - 1)] + "…";
}

/// <summary>A bore as it is seen from the side.</summary>
/// <param name="Slope">Its slope along the line.</param>
/// <param name="Across">Its diameter.</param>
/// <param name="IsThere">True where it is there already.</param>
/// <param name="IsLevel">True where it is level whatever the slope.</param>
internal readonly record struct BoreFromSide(double Slope, Length Across, bool IsThere, bool IsLevel);
