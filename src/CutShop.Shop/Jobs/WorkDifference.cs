using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Jobs;

/// <summary>What of the work on a piece or a post can differ.</summary>
public enum WorkField
{
    /// <summary>The length to cut.</summary>
    CutLength,

    /// <summary>Which rope: material, diameter, construction, colour, new or preshrunk.</summary>
    Rope,

    /// <summary>The post at which an end goes, or what the end does there.</summary>
    End,

    /// <summary>Shape or width of the post.</summary>
    PostSize,

    /// <summary>Height of the post.</summary>
    PostHeight,

    /// <summary>The turn at the post.</summary>
    Turn,

    /// <summary>Whether a row is bored here, and how: stopped, through, corner, knot.</summary>
    Bore,

    /// <summary>Who bores it: the shop, or the installer where the post stands.</summary>
    BoredBy,

    /// <summary>Diameter of the bit.</summary>
    Bit,

    /// <summary>Height of the bore.</summary>
    BoreHeight,

    /// <summary>Rake of the bore.</summary>
    Rake,

    /// <summary>A face that is drilled, or how deep.</summary>
    Depth,

    /// <summary>Which screws, from which face, at what height, and their holes.</summary>
    Screws,
}

/// <summary>One thing that differs between two forms of the work on a piece or a post.</summary>
/// <param name="Field">What differs.</param>
/// <param name="Place">Where: a row's mark, the mark of an end's post; empty where it is of the whole piece or post.</param>
/// <param name="Was">What it was; null where there was none.</param>
/// <param name="Becomes">What it becomes; null where there is none.</param>
public sealed record WorkDifference(WorkField Field, string Place, WorkValue? Was, WorkValue? Becomes);

/// <summary>A value of the work: a length, an angle, or a thing with a name.</summary>
public abstract record WorkValue
{
    /// <summary>A length.</summary>
    /// <param name="Length">The length.</param>
    public sealed record Measure(Length Length) : WorkValue;

    /// <summary>An angle.</summary>
    /// <param name="Degrees">In degrees; positive is uphill in the line's direction.</param>
    public sealed record Angle(double Degrees) : WorkValue;

    /// <summary>A post's cross-section.</summary>
    /// <param name="Shape">Its shape.</param>
    /// <param name="Across">Its width or diameter.</param>
    public sealed record Section(PostShape Shape, Length Across) : WorkValue;

    /// <summary>A turn of the line.</summary>
    /// <param name="Turn">The turn.</param>
    public sealed record Corner(Turn Turn) : WorkValue;

    /// <summary>A rope.</summary>
    /// <param name="Rope">The rope.</param>
    /// <param name="IsPreshrunk">True where it was soaked and dried before it is cut.</param>
    public sealed record OfRope(Rope Rope, bool IsPreshrunk) : WorkValue;

    /// <summary>What an end does at a post.</summary>
    /// <param name="Post">The post's mark.</param>
    /// <param name="Kind">What it does there.</param>
    /// <param name="Turns">Turns of a wrap; 0 for anything else.</param>
    /// <param name="Takes">Rope taken up there.</param>
    public sealed record RopeEnd(string Post, AtPostKind Kind, decimal Turns, Length Takes) : WorkValue;

    /// <summary>A kind of bore.</summary>
    /// <param name="Kind">Stopped, through, corner or knot.</param>
    public sealed record BoreKind(AtPostKind Kind) : WorkValue;

    /// <summary>Who bores a post.</summary>
    /// <param name="Who">Who.</param>
    public sealed record Borer(BoredBy Who) : WorkValue;

    /// <summary>A drilling.</summary>
    /// <param name="Face">The face.</param>
    /// <param name="Depth">How deep.</param>
    /// <param name="Mark">The height of its mark on the face.</param>
    public sealed record Drilled(Face Face, Length Depth, Length Mark) : WorkValue;

    /// <summary>Screws with their holes.</summary>
    /// <param name="Screws">Which, how many, and the holes.</param>
    /// <param name="Face">The face they go in from.</param>
    /// <param name="Mark">The height of their mark on the face.</param>
    public sealed record Driven(DrivenScrews Screws, Face Face, Length Mark) : WorkValue;
}

/// <summary>Compares the work on tickets, value by value; words, the warnings and the choice among bits of one size do not count.</summary>
public static class WorkDifferences
{
    /// <summary>What differs in the work of cutting a piece. How it hangs between its ends is not work at the bench.</summary>
    public static IReadOnlyList<WorkDifference> Between(PieceWork was, PieceWork next)
    {
        ArgumentNullException.ThrowIfNull(was);
        ArgumentNullException.ThrowIfNull(next);
        return
        [
            .. Differing(WorkField.Rope, "", RopeOf(was.Piece), RopeOf(next.Piece), rope => rope),
            .. Differing(WorkField.CutLength, "", was.Piece.Cut, next.Piece.Cut, cut => new WorkValue.Measure(cut)),
            .. Differing(WorkField.End, was.Piece.From.Mark, End(was.Piece.AtPosts[0]), End(next.Piece.AtPosts[0]), end => end),
            .. Differing(WorkField.End, was.Piece.To.Mark, End(was.Piece.AtPosts[^1]), End(next.Piece.AtPosts[^1]), end => end),
        ];
    }

    /// <summary>What differs in the work at a post.</summary>
    public static IReadOnlyList<WorkDifference> Between(PostWork was, PostWork next)
    {
        ArgumentNullException.ThrowIfNull(was);
        ArgumentNullException.ThrowIfNull(next);
        return
        [
            .. Differing(WorkField.PostSize, "", new WorkValue.Section(was.Post.Shape, was.Post.Across), new WorkValue.Section(next.Post.Shape, next.Post.Across), section => section),
            .. Differing(WorkField.PostHeight, "", was.Post.Height, next.Post.Height, height => new WorkValue.Measure(height)),
            .. Differing(WorkField.Turn, "", Corner(was.Post), Corner(next.Post), turn => turn),
            .. Pairs(was.Bores, next.Bores, bore => bore.Row).SelectMany(pair => Between(pair.Place, pair.Was, pair.Next)),
            .. Pairs(was.Fixings, next.Fixings, fixing => fixing.Row).SelectMany(pair => Differing(WorkField.Screws, pair.Place, Driven(pair.Was), Driven(pair.Next), driven => driven)),
        ];
    }

    private static IEnumerable<WorkDifference> Between(string row, Bore? was, Bore? next)
    {
        if (was is null || next is null || was.Kind != next.Kind)
            yield return new(WorkField.Bore, row, was is null ? null : new WorkValue.BoreKind(was.Kind), next is null ? null : new WorkValue.BoreKind(next.Kind));
        if (was is null || next is null)
            yield break;
        foreach (var difference in (IEnumerable<WorkDifference>)
        [
            .. Differing(WorkField.BoredBy, row, was.BoredBy, next.BoredBy, who => new WorkValue.Borer(who)),
            .. Differing(WorkField.Bit, row, was.Bit, next.Bit, bit => new WorkValue.Measure(bit)),
            .. Differing(WorkField.BoreHeight, row, was.Height, next.Height, height => new WorkValue.Measure(height)),
            .. Differing(WorkField.Rake, row, was.RakeDegrees, next.RakeDegrees, rake => new WorkValue.Angle(rake)),
            .. Pairs(was.Operations, next.Operations, operation => operation.Face.ToString())
                .SelectMany(pair => Differing(WorkField.Depth, row, Drilled(pair.Was), Drilled(pair.Next), drilled => drilled)),
        ])
        {
            yield return difference;
        }
    }

    private static IEnumerable<WorkDifference> Differing<T>(WorkField field, string place, T was, T next, Func<T, WorkValue?> value) =>
        EqualityComparer<T>.Default.Equals(was, next) ? [] : [new(field, place, value(was), value(next))];

    /// <summary>What has the same key goes together, the first with the first; what has no other half is there alone.</summary>
    private static IEnumerable<(string Place, T? Was, T? Next)> Pairs<T>(IReadOnlyList<T> was, IReadOnlyList<T> next, Func<T, string> key)
    {
        var (before, after) = (was.ToLookup(key), next.ToLookup(key));
        return before.Concat(after).Select(same => same.Key).Distinct().SelectMany(place =>
        {
            var (old, now) = (before[place].ToList(), after[place].ToList());
            return Enumerable.Range(0, Math.Max(old.Count, now.Count)).Select(i => (place, i < old.Count ? old[i] : default, i < now.Count ? now[i] : default));
        });
    }

    private static WorkValue.OfRope RopeOf(Piece piece) => new(piece.Rope, piece.IsPreshrunk);

    private static WorkValue.RopeEnd End(AtPost at) => new(at.Post.Mark, at.Kind, at.Treatment.Turns, at.Length);

    private static WorkValue.Corner? Corner(Post post) => post.Turn is { } turn ? new(turn) : null;

    private static WorkValue.Drilled? Drilled(BoreOperation operation) => operation == default ? null : new(operation.Face, operation.Depth, operation.Mark);

    private static WorkValue.Driven? Driven(Fixing? fixing) => fixing is null ? null : new(fixing.Driven, fixing.Face, fixing.Mark);
}
