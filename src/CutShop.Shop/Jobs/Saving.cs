using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Jobs;

/// <summary>Something that can be done to use a piece or a post that was made in a form that is no longer wanted.</summary>
public abstract record Saving
{
    /// <summary>A drilling goes deeper.</summary>
    /// <param name="Row">The row.</param>
    /// <param name="Face">The face.</param>
    /// <param name="By">How much deeper.</param>
    /// <param name="To">The whole depth then.</param>
    public sealed record DrillDeeper(string Row, Face Face, Length By, Length To) : Saving;

    /// <summary>A bore is drilled on from another face.</summary>
    /// <param name="Row">The row.</param>
    /// <param name="Face">The face.</param>
    /// <param name="Depth">How deep.</param>
    /// <param name="Mark">The height of its mark on that face.</param>
    public sealed record DrillAlso(string Row, Face Face, Length Depth, Length Mark) : Saving;

    /// <summary>A bore goes in beside a hole that is there.</summary>
    /// <param name="Row">The row.</param>
    /// <param name="Height">The height of the new bore.</param>
    /// <param name="Wood">Wood left between it and the nearest hole.</param>
    public sealed record BoreBeside(string Row, Length Height, Length Wood) : Saving;

    /// <summary>A hole stays in the post and takes no rope.</summary>
    /// <param name="Row">The row that it was for.</param>
    public sealed record LeaveHole(string Row) : Saving;

    /// <summary>Screw holes are drilled as on the new ticket.</summary>
    /// <param name="Row">The row.</param>
    public sealed record DrillScrewHoles(string Row) : Saving;

    /// <summary>The piece is cut shorter.</summary>
    /// <param name="By">By how much.</param>
    public sealed record CutShorter(Length By) : Saving;

    /// <summary>An end is prepared as on the new ticket.</summary>
    /// <param name="Post">The post at which it goes.</param>
    public sealed record PrepareEnd(string Post) : Saving;

    /// <summary>The piece is used for another run of the same rope.</summary>
    /// <param name="Run">The run.</param>
    /// <param name="CutOff">What is cut off it.</param>
    public sealed record UseFor(string Run, Length CutOff) : Saving;

    /// <summary>The piece is hung up as an offcut.</summary>
    /// <param name="Length">Its length.</param>
    public sealed record HangUp(Length Length) : Saving;
}

/// <summary>What can be saved of work that was done.</summary>
public static class Savings
{
    /// <summary>What makes the new post of an old one that was drilled; nothing where another post must be taken.</summary>
    public static IReadOnlyList<Saving> Of(PostWork was, PostWork next)
    {
        ArgumentNullException.ThrowIfNull(was);
        ArgumentNullException.ThrowIfNull(next);
        if (was.Post with { Mark = next.Post.Mark } != next.Post)
            return [];
        var savings = new List<Saving>();
        foreach (var bore in next.Bores)
        {
            var same = was.Bores.FirstOrDefault(old => IsSameHole(old, bore));
            if (same is not null)
            {
                if (!DrillOn(same, bore, savings))
                    return [];
            }
            else if (was.Bores.Select(old => WoodBetween(old, bore)).Append(Length.FromInches(100)).Min() is { IsPositive: true } wood)
            {
                savings.Add(new Saving.BoreBeside(bore.Row, bore.Height, wood));
            }
            else
            {
                return [];
            }
        }
        savings.AddRange(was.Bores.Where(old => !next.Bores.Any(bore => IsSameHole(old, bore))).Select(old => new Saving.LeaveHole(old.Row)));
        savings.AddRange(WorkDifferences.Between(was, next)
            .Where(difference => difference is { Field: WorkField.Screws, Becomes: not null }).Select(difference => difference.Place).Distinct().Select(row => new Saving.DrillScrewHoles(row)));
        return savings;
    }

    /// <summary>What can be done with a piece that was cut.</summary>
    /// <param name="was">The piece as it was cut.</param>
    /// <param name="next">The piece that takes its place, or null.</param>
    /// <param name="wanted">Pieces that are yet to be cut.</param>
    public static IReadOnlyList<Saving> Of(PieceWork was, PieceWork? next, IEnumerable<PieceWork> wanted)
    {
        ArgumentNullException.ThrowIfNull(was);
        ArgumentNullException.ThrowIfNull(wanted);
        var cut = was.Piece.Cut;
        if (next is not null && IsSameRope(was, next) && next.Piece.Cut <= cut)
        {
            return
            [
                .. next.Piece.Cut < cut ? (Saving[])[new Saving.CutShorter(cut - next.Piece.Cut)] : [],
                .. WorkDifferences.Between(was, next).Where(difference => difference.Field == WorkField.End)
                    .Select(difference => new Saving.PrepareEnd(((WorkValue.RopeEnd)difference.Becomes!).Post)),
            ];
        }
        var fits = wanted.Where(work => IsSameRope(was, work) && work.Piece.Cut <= cut).MaxBy(work => work.Piece.Cut);
        return fits is null ? [new Saving.HangUp(cut)] : [new Saving.UseFor(fits.Piece.Run, cut - fits.Piece.Cut)];
    }

    private static bool IsSameRope(PieceWork one, PieceWork other) => (one.Piece.Rope, one.Piece.IsPreshrunk) == (other.Piece.Rope, other.Piece.IsPreshrunk);

    private static bool IsSameHole(Bore old, Bore bore) =>
        (old.Row, old.Height, old.Bit, old.RakeDegrees) == (bore.Row, bore.Height, bore.Bit, bore.RakeDegrees)
        && old.Operations.Any(operation => bore.Operations.Any(other => other.Face == operation.Face));

    /// <summary>Adds what is still to be drilled of a hole; false where it is too deep already or open at a face that must stay whole.</summary>
    private static bool DrillOn(Bore old, Bore bore, List<Saving> savings)
    {
        var left = old.Operations.ToDictionary(operation => operation.Face);
        // A straight bore's other face is the one across, whatever post it is named by.
        if (old.Kind is AtPostKind.Through or AtPostKind.Knot && bore.Kind is AtPostKind.Through or AtPostKind.Knot)
        {
            var open = left.Keys.Except(bore.Operations.Select(operation => operation.Face)).ToList();
            var asked = bore.Operations.Select(operation => operation.Face).Except(left.Keys).ToList();
            if (open is [var was] && asked is [var now] && left.Remove(was, out var across))
                left[now] = across;
        }
        foreach (var operation in bore.Operations)
        {
            if (!left.Remove(operation.Face, out var done))
                savings.Add(new Saving.DrillAlso(bore.Row, operation.Face, operation.Depth, operation.Mark));
            else if (operation.Depth > done.Depth)
                savings.Add(new Saving.DrillDeeper(bore.Row, operation.Face, operation.Depth - done.Depth, operation.Depth));
            else if (operation.Depth < done.Depth)
                return false;
        }
        return left.Count == 0;
    }

    private static Length WoodBetween(Bore one, Bore other) => (one.Height - other.Height).Abs() - ((one.Bit + other.Bit) / 2);
}
