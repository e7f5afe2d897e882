using System.Runtime.InteropServices;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;

namespace CutShop.Takeoff.Rules;

/// <summary>One row's part of a line's takeoff.</summary>
/// <param name="Pieces">Its pieces along the line.</param>
/// <param name="Bores">Its bores along the line; in a ring those of the first post first.</param>
/// <param name="Fixings">Its screws along the line.</param>
internal sealed record RowWork(List<Piece> Pieces, List<Bore> Bores, List<Fixing> Fixings);

/// <summary>
/// What each row has at each post of a line. Two posts are equal, by their station, where everything at them is: of such posts one is worked
/// out for all.
/// </summary>
internal sealed class LikePosts : IEqualityComparer<int>
{
    private readonly Line _line;
    private readonly IReadOnlyList<RowWork> _rows;
    private readonly int[][] _bores; // by row, where each post's begin
    private readonly int[][] _fixings;

    public LikePosts(Line line, IReadOnlyList<RowWork> rows)
    {
        (_line, _rows) = (line, rows);
        _bores = [.. rows.Select(row => Starts(line, row.Bores, bore => bore.Post))];
        _fixings = [.. rows.Select(row => Starts(line, row.Fixings, fixing => fixing.Post))];
    }

    /// <summary>A row's bores at a post.</summary>
    public ReadOnlySpan<Bore> BoresAt(int row, int post) =>
        CollectionsMarshal.AsSpan(_rows[row].Bores)[_bores[row][post].._bores[row][post + 1]];

    /// <summary>A row's screws at a post; those at the end of a ring are not among them.</summary>
    public ReadOnlySpan<Fixing> FixingsAt(int row, int post) =>
        CollectionsMarshal.AsSpan(_rows[row].Fixings)[_fixings[row][post].._fixings[row][post + 1]];

    /// <summary>A row's screws where it comes back to the first post of a ring.</summary>
    public ReadOnlySpan<Fixing> FixingsAtReturn(int row) =>
        CollectionsMarshal.AsSpan(_rows[row].Fixings)[_fixings[row][^1]..];

    /// <inheritdoc/>
    public bool Equals(int x, int y)
    {
        var (one, other) = (_line.Posts[x], _line.Posts[y]);
        if (IsOuter(x) || IsOuter(y))
            return x == y;
        if (one.Across != other.Across || one.Height != other.Height || one.Shape != other.Shape || one.Turn != other.Turn || one.Corner != other.Corner)
            return false;
        for (var row = 0; row < _rows.Count; row++)
        {
            // Where a row comes to a post it has a bore or a screw there, which have its height.
            var treatments = _line.Rows[row].Treatments;
            if (treatments[x] != treatments[y]
                || !AreLike(BoresAt(row, x), BoresAt(row, y)) || !AreLike(FixingsAt(row, x), FixingsAt(row, y)))
                return false;
        }
        return true;
    }

    /// <inheritdoc/>
    public int GetHashCode(int obj)
    {
        var post = _line.Posts[obj];
        var hash = HashCode.Combine(post.Across.Nanometres, post.Height.Nanometres);
        for (var row = 0; row < _rows.Count; row++)
        {
            var bores = BoresAt(row, obj);
            hash = bores.Length > 0 ? HashCode.Combine(hash, bores.Length, bores[0].RakeDegrees, bores[0].Height.Nanometres) : HashCode.Combine(hash, 0);
        }
        return hash;
    }

    private bool IsOuter(int post) => post == 0 || post == _line.Posts.Count - 1;

    private static int[] Starts<T>(Line line, List<T> all, Func<T, Post> postOf)
    {
        var starts = new int[line.Posts.Count + 1];
        var next = 0;
        for (var post = 0; post < line.Posts.Count; post++)
        {
            starts[post] = next;
            while (next < all.Count && ReferenceEquals(postOf(all[next]), line.Posts[post]))
                next++;
        }
        starts[^1] = next;
        return starts;
    }

    private static bool AreLike(ReadOnlySpan<Bore> some, ReadOnlySpan<Bore> others)
    {
        if (some.Length != others.Length)
            return false;
        for (var i = 0; i < some.Length; i++)
        {
            var (one, other) = (some[i], others[i]);
            if (one.RakeDegrees != other.RakeDegrees || one.Kind != other.Kind || one.Bit != other.Bit || one.Height != other.Height
                || one.SkewDegrees != other.SkewDegrees || one.KinkDegrees != other.KinkDegrees || one.IsExisting != other.IsExisting)
                return false;
        }
        return true;
    }

    private static bool AreLike(ReadOnlySpan<Fixing> some, ReadOnlySpan<Fixing> others)
    {
        if (some.Length != others.Length)
            return false;
        for (var i = 0; i < some.Length; i++)
        {
            var (one, other) = (some[i], others[i]);
            if (one.RakeDegrees != other.RakeDegrees || one.Height != other.Height || one.RowHeight != other.RowHeight || (!ReferenceEquals(one.Driven, other.Driven) && one.Driven != other.Driven))
                return false;
        }
        return true;
    }
}
