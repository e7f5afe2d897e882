using System.Globalization;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Solids;
using CutShop.Takeoff.Tables;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Rules;

/// <summary>Something unwise at a post, and at every post like it.</summary>
/// <param name="Code">The warning's code.</param>
/// <param name="Row">The index of the row that it names.</param>
/// <param name="OfPost">True where its path is the post's, false where it is the row's.</param>
/// <param name="Path">What follows in the path.</param>
/// <param name="Says">The warning in words.</param>
internal sealed record PostFinding(string Code, int Row, bool OfPost, string Path, Sentence Says);

/// <summary>The rows of a line, as they come to its posts: what a post's checks need to know of each.</summary>
/// <param name="Row">The row.</param>
/// <param name="Rope">Its rope.</param>
/// <param name="Bit">The bit for it.</param>
internal readonly record struct RowAtPosts(Row Row, Rope Rope, Length Bit);

/// <summary>
/// What is unwise at a post, measured on its solid. Each rule is one function; what comes of it is kept for the posts that are like it.
/// </summary>
internal sealed class PostChecks
{
    private static readonly Length ThinWall = Length.FromSixtyFourths(48);
    private static readonly Length TightTrue = Length.FromSixtyFourths(4);
    private static readonly Length TightNatural = Length.FromSixtyFourths(12);
    private static readonly Length LooseOver = Length.FromSixtyFourths(16);
    private const double MostKink = 15;
    private const double MostRake = 20;
    private const double Rounding = 1e-6; // of a chord to whole nanometres, and of lengths added up

    private readonly IReadOnlyList<RowAtPosts> _rows;
    private readonly LikePosts _posts;
    private readonly ScrewCatalogue _screws;
    private readonly Post _post;
    private readonly int _station;
    private readonly bool _isInside;
    private readonly PostSolid _solid;
    private readonly (int From, int To)[] _boresOf; // of each row, among the solid's
    private readonly (int From, int To)[] _screwsOf;
    private readonly SolidWrap?[] _outsides;
    private readonly List<PostFinding> _findings = [];

    private PostChecks(Line line, IReadOnlyList<RowAtPosts> rows, LikePosts posts, int station, ScrewCatalogue screws)
    {
        (_rows, _posts, _screws, _station, _post) = (rows, posts, screws, station, line.Posts[station]);
        _isInside = station > 0 && station < line.Stations - 1;
        _solid = new(_post, isStart: station == 0 && !line.IsClosed);
        (_boresOf, _screwsOf, _outsides) = (new (int, int)[rows.Count], new (int, int)[rows.Count], new SolidWrap?[rows.Count]);
        for (var row = 0; row < rows.Count; row++)
            Put(row, isFirstOfRing: station == 0 && line.IsClosed);
    }

    /// <summary>What is unwise at a post, row by row.</summary>
    /// <param name="line">The line it stands in.</param>
    /// <param name="rows">The line's rows.</param>
    /// <param name="posts">The bores and screws at each of its posts.</param>
    /// <param name="station">The post's station.</param>
    /// <param name="screws">The shop's screws.</param>
    public static PostFinding[][] Of(Line line, IReadOnlyList<RowAtPosts> rows, LikePosts posts, int station, ScrewCatalogue screws)
    {
        var checks = new PostChecks(line, rows, posts, station, screws);
        var findings = new PostFinding[rows.Count][];
        for (var row = 0; row < rows.Count; row++)
        {
            checks._findings.Clear();
            checks.CheckRow(row);
            findings[row] = [.. checks._findings];
        }
        return findings;
    }

    /// <summary>Puts a row's bores, screws and turns in. In a ring the turns of both its ends lie on the first post.</summary>
    private void Put(int row, bool isFirstOfRing)
    {
        var (bore, screw) = (_solid.Bores.Count, _solid.Screws.Count);
        foreach (var one in _posts.BoresAt(row, _station))
            _solid.Add(one);
        foreach (var one in _posts.FixingsAt(row, _station))
            _solid.Add(one, _screws);
        if (isFirstOfRing)
        {
            foreach (var one in _posts.FixingsAtReturn(row))
                _solid.Add(one, _screws);
        }
        (_boresOf[row], _screwsOf[row]) = ((bore, _solid.Bores.Count), (screw, _solid.Screws.Count));
        var (at, treatment) = (_rows[row], _rows[row].Row.Treatments[_station]);
        if (treatment.IsInBore)
            return;
        var halfTurns = treatment.HalfTurns + (isFirstOfRing ? at.Row.Treatments[^1].HalfTurns : 0);
        var outside = SolidWrap.At(at.Row.Mark, at.Row.HeightAt(_post), halfTurns, at.Rope.Across);
        _solid.Add(outside);
        _outsides[row] = outside;
    }

    private void Find(string code, int row, bool ofPost, string path, string key, params IReadOnlyList<object?> values) =>
        _findings.Add(new(code, row, ofPost, path, TakeoffWords.Of(key, values)));

    private void CheckRow(int row)
    {
        var (at, treatment) = (_rows[row], _rows[row].Row.Treatments[_station]);
        if (!CommonRope.Suits(_post.Across, at.Rope.Diameter))
            Find("rope-for-post", row, ofPost: true, ".across", "UncommonRope", LengthText.Brief(at.Rope.Diameter), LengthText.Brief(_post.Across), CommonRope.SizesFor(_post.Across));
        if (treatment.Kind == TreatmentKind.Wrap && treatment.HalfTurns % 2 == 1 && _isInside)
            Find("half-turn-inside", row, ofPost: false, ".at", "HalfTurnInside", treatment.Turns.ToString("0.#", CultureInfo.InvariantCulture));
        if (treatment.IsInBore)
        {
            CheckWood(row);
            CheckWoodBetween(row);
            CheckHole(row);
            CheckSlopes(row);
        }
        else if (_outsides[row] is { Turns: > 0 } wrap)
        {
            CheckWrap(row, wrap);
        }
        CheckScrews(row);
    }

    /// <summary>A wall of at least 3/4 in, and one bit diameter to the top (common practice, no source).</summary>
    private void CheckWood(int row)
    {
        var (beside, above) = ((Length?)null, (Length?)null);
        for (var i = _boresOf[row].From; i < _boresOf[row].To; i++)
        {
            var wood = _solid.WoodRound(_solid.Bores[i]);
            beside = beside is { } least ? Length.Min(least, wood.Beside) : wood.Beside;
            above = above is { } lowest ? Length.Min(lowest, wood.Above) : wood.Above;
        }
        var bit = HoleOf(row);
        if (beside < ThinWall)
            Find("thin-wall", row, ofPost: true, ".across", "ThinWall", LengthText.Brief(bit), LengthText.Inches(beside.Value, 16), LengthText.Brief(ThinWall));
        if (above < Length.Zero)
            Find("near-top", row, ofPost: false, ".height", "OutOfTop", LengthText.Brief(bit));
        else if (above < bit)
            Find("near-top", row, ofPost: false, ".height", "LittleWoodAbove", LengthText.Inches(above.Value, 16), LengthText.Brief(bit));
    }

    /// <summary>
    /// One bit diameter to the next bored row down (common practice, no source). Of the two the warning names the one that comes later in the
    /// file.
    /// </summary>
    private void CheckWoodBetween(int row)
    {
        if (NextBoreDown(row) is not { } lower)
            return;
        var least = Length.Max(HoleOf(row), HoleOf(lower));
        var wood = double.PositiveInfinity;
        for (var i = _boresOf[row].From; i < _boresOf[row].To; i++)
        {
            for (var j = _boresOf[lower].From; j < _boresOf[lower].To; j++)
                wood = Math.Min(wood, Gap.Between(_solid.Bores[i].Body, _solid.Bores[j].Body, least.Inches + Rounding));
        }
        if (wood > least.Inches + (Rounding / 2) || Length.RoundedFromInches(wood) is var left && left >= least)
            return;
        var (named, other) = (Math.Max(row, lower), _rows[Math.Min(row, lower)].Row.Mark);
        if (left.IsPositive)
            Find("bores-close", named, ofPost: false, ".height", "LittleWoodBetween", LengthText.Inches(left, 16), other);
        else
            Find("bores-close", named, ofPost: false, ".height", "BoresMeet", other);
    }

    private void CheckHole(int row)
    {
        var rope = _rows[row].Rope;
        if (_rows[row].Row.HoleIn(_post) is not { } hole)
            return;
        var play = hole.Across - rope.Across;
        var least = rope.IsNatural && rope.Measured is null ? TightNatural : TightTrue;
        if (play < least)
            Find("tight-hole", row, ofPost: true, ".holes", "TightHole", LengthText.Inches(hole.Across, 64), LengthText.Inches(play, 64), LengthText.Brief(least));
        else if (play > least + LooseOver)
            Find("loose-hole", row, ofPost: true, ".holes", "LooseHole", LengthText.Inches(hole.Across, 64), LengthText.Inches(play, 64), LengthText.Brief(least + LooseOver));
    }

    private void CheckSlopes(int row)
    {
        foreach (var bore in _posts.BoresAt(row, _station))
        {
            if (bore.KinkDegrees > MostKink + Rounding)
                Find("kink", row, ofPost: true, ".turn", "Kink", bore.KinkDegrees.ToString("0.#", CultureInfo.InvariantCulture));
            if (Math.Abs(bore.RakeDegrees) > MostRake + Rounding)
                Find("steep-bore", row, ofPost: true, "", "SteepBore", Math.Abs(bore.RakeDegrees).ToString("0.#", CultureInfo.InvariantCulture));
        }
    }

    /// <summary>Turns lie between the ground and the top, and not where another row has its bore, its turns or its rope.</summary>
    private void CheckWrap(int row, SolidWrap wrap)
    {
        var turns = wrap.Turns.ToString("0.#", CultureInfo.InvariantCulture);
        if (!wrap.Low.IsPositive)
            Find("wrap-in-ground", row, ofPost: false, ".height", "WrapInGround", turns, Figure(wrap.High - wrap.Low));
        if (wrap.High > _post.Height)
            Find("near-top", row, ofPost: false, ".height", "WrapOverTop", turns, Figure(wrap.High - wrap.Low));
        for (var other = 0; other < _rows.Count; other++)
        {
            if (other == row || !Covers(other))
                continue;
            Find("wraps-overlap", row, ofPost: false, ".height", "WrapsOverlap", turns, Figure(wrap.Low), Figure(wrap.High), _rows[other].Row.Mark);
            return;
        }

        bool Covers(int other)
        {
            // Of two wraps the later in the file has the warning.
            if (_outsides[other] is { } outside)
                return (outside.Turns == 0 || other < row) && wrap.Overlaps(outside.Low, outside.High);
            for (var i = _boresOf[other].From; i < _boresOf[other].To; i++)
            {
                var (low, high) = _solid.Bores[i].Heights;
                if (wrap.Overlaps(Length.RoundedFromInches(low), Length.RoundedFromInches(high)))
                    return true;
            }
            return false;
        }

        static string Figure(Length length) => LengthText.Inches(length, 16);
    }

    /// <summary>Each screw bites its rope by half a diameter, and keeps away from screws and bores that it has nothing to do with.</summary>
    private void CheckScrews(int row)
    {
        for (var i = _screwsOf[row].From; i < _screwsOf[row].To; i++)
        {
            var screw = _solid.Screws[i];
            if (BiteOf(screw, row) < (_rows[row].Rope.Across.Inches / 2) - Rounding)
                Find("screw-misses-rope", row, ofPost: false, "", "ScrewMissesRope", LengthText.Brief(_rows[row].Rope.Across / 2));
            if (ClashOf(screw, row, i) is { } clash)
                Find("screw-clash", row, ofPost: false, "", clash.Key, LengthText.Brief(ScrewWood.Least), clash.Row);
        }
    }

    private double BiteOf(SolidScrew screw, int row)
    {
        for (var i = _boresOf[row].From; i < _boresOf[row].To; i++)
        {
            if (_solid.Bores[i].IsFirst == (screw.Purpose != FixingPurpose.CornerSecond))
                return screw.BiteIn(_solid.Bores[i].Rope);
        }
        return 0;
    }

    /// <summary>
    /// What a screw comes too near to: the second rope of its own corner, for which the first screw must leave room; the bore of another
    /// row; or a screw that is named before it.
    /// </summary>
    private (string Key, string Row)? ClashOf(SolidScrew screw, int row, int index)
    {
        var (low, high) = Heights(screw);
        for (var other = 0; other < _rows.Count; other++)
        {
            for (var i = _boresOf[other].From; i < _boresOf[other].To; i++)
            {
                var bore = _solid.Bores[i];
                if (other != row)
                {
                    if (bore.Heights.Low - high < ScrewWood.LeastInches && low - bore.Heights.High < ScrewWood.LeastInches
                        && screw.GapTo(bore.Body, ScrewWood.LeastInches) < ScrewWood.LeastInches - Rounding)
                        return ("ScrewNearBore", bore.Row);
                }
                else if (screw.Purpose == FixingPurpose.CornerFirst && !bore.IsFirst && screw.GapTo(bore.Rope, Rounding) <= 0)
                {
                    return ("ScrewInRope", bore.Row);
                }
            }
        }
        for (var i = 0; i < index; i++)
        {
            var (otherLow, otherHigh) = Heights(_solid.Screws[i]);
            if (otherLow - high < ScrewWood.LeastInches && low - otherHigh < ScrewWood.LeastInches
                && screw.GapTo(_solid.Screws[i], ScrewWood.LeastInches) < ScrewWood.LeastInches - Rounding)
                return ("ScrewNearScrew", _solid.Screws[i].Row);
        }
        return null;

        static (double Low, double High) Heights(SolidScrew screw)
        {
            var radius = Math.Max(screw.Body.Radius, screw.Sinking.Radius);
            return (Math.Min(screw.Body.From.Z, screw.Body.To.Z) - radius, Math.Max(screw.Body.From.Z, screw.Body.To.Z) + radius);
        }
    }

    /// <summary>Diameter of a row's hole: one that is there, or the bit's.</summary>
    private Length HoleOf(int row) => _rows[row].Row.HoleIn(_post)?.Across ?? _rows[row].Bit;

    /// <summary>The bored row that is next below at this post; of rows at one height the later in the file is above.</summary>
    private int? NextBoreDown(int row)
    {
        var (here, next) = ((_rows[row].Row.HeightAt(_post), row), default((Length Height, int Row)?));
        for (var other = 0; other < _rows.Count; other++)
        {
            if (other == row || !_rows[other].Row.Treatments[_station].IsInBore)
                continue;
            var there = (_rows[other].Row.HeightAt(_post), other);
            if (there.CompareTo(here) < 0 && (next is not { } best || there.CompareTo(best) > 0))
                next = there;
        }
        return next?.Row;
    }
}
