using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Result;

/// <summary>All that is done at one post.</summary>
/// <param name="Post">The post.</param>
/// <param name="Line">The mark of the line it stands in.</param>
/// <param name="Before">The mark of the post before it, or null at the line's start.</param>
/// <param name="After">The mark of the post after it, or null at the line's end.</param>
/// <param name="Bores">Its bores.</param>
/// <param name="Fixings">The screws at it.</param>
/// <param name="Warnings">What is unwise at it.</param>
public sealed record PostWork(
    Post Post, string Line, string? Before, string? After, IReadOnlyList<Bore> Bores, IReadOnlyList<Fixing> Fixings, IReadOnlyList<Warning> Warnings)
{
    /// <summary>
    /// The screws whose holes are drilled at the bench: face by face so that the post is turned least, then from the top down. Those
    /// that hold turns are screwed on site, through the rope once it is wound.
    /// </summary>
    public IReadOnlyList<Fixing> ScrewHoles =>
        [.. Fixings.Where(fixing => fixing.Face.Sight != FaceSight.Around && !fixing.IsHardware).GroupBy(fixing => fixing.Face).SelectMany(face => FromTheTop(face))];

    /// <summary>The same for posts that are bored with the same bits at the same heights, so that the drill is set up once for all of them.</summary>
    public string Likeness => string.Join(
        ", ",
        Bores.Where(bore => !bore.IsExisting).Select(bore => (Bit: bore.Bit.Nanometres, Kind: PartCodes.AtPost.Of(bore.Kind), Height: bore.Height.Nanometres))
            .OrderByDescending(bore => bore.Bit).ThenBy(bore => bore.Kind, StringComparer.Ordinal).ThenBy(bore => bore.Height)
            .Select(bore => FormattableString.Invariant($"{bore.Bit} {bore.Kind} {bore.Height}")));

    /// <summary>True where the installer bores it.</summary>
    public bool IsBoredOnSite => Bores.Any(bore => bore.BoredBy == BoredBy.Site);

    /// <summary>How many drillings the shop makes in it.</summary>
    public int DrillingsInShop => IsBoredOnSite ? 0 : Bores.Sum(bore => bore.Operations.Count);

    /// <summary>How many screw holes the shop makes in it.</summary>
    public int ScrewHolesInShop => IsBoredOnSite ? 0 : ScrewHoles.Count;

    /// <summary>The screws from the top row down.</summary>
    public static IEnumerable<Fixing> FromTheTop(IEnumerable<Fixing> fixings) => fixings.OrderByDescending(fixing => fixing.RowHeight);

    /// <summary>
    /// The drillings in the order that changes bits least: by bit, the largest first, then face by face so that the post is
    /// turned least, then from the top down.
    /// </summary>
    public IReadOnlyList<Drilling> Drillings()
    {
        var faces = Bores.SelectMany(bore => bore.Operations).Select(operation => operation.Face).Distinct().ToList();
        return
        [
            .. Bores.SelectMany(bore => bore.Operations.Select(operation => (Bore: bore, Operation: operation)))
                .OrderByDescending(x => x.Bore.Bit)
                .ThenBy(x => x.Bore.BitChoice.Kind)
                .ThenBy(x => faces.IndexOf(x.Operation.Face))
                .ThenByDescending(x => x.Bore.Height)
                .Select((x, i) => new Drilling(i + 1, x.Bore, x.Operation)),
        ];
    }

    /// <summary>The work at every post of a job, along the lines.</summary>
    public static IEnumerable<PostWork> Of(JobTakeoff takeoff)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        var bores = takeoff.Bores.ToLookup(bore => bore.Post.Mark);
        var fixings = takeoff.Fixings.ToLookup(fixing => fixing.Post.Mark);
        var warnings = takeoff.Warnings.Where(warning => warning.Post is not null).ToLookup(warning => warning.Post);
        return takeoff.Job.Lines.SelectMany(line => line.Posts.Select((post, i) => new PostWork(
            post,
            line.Mark,
            line.Before(i),
            line.After(i),
            [.. bores[post.Mark]],
            [.. fixings[post.Mark]],
            [.. warnings[post.Mark]])));
    }
}

/// <summary>One drilling on a ticket.</summary>
/// <param name="Number">Its place in the order, from 1.</param>
/// <param name="Bore">The bore.</param>
/// <param name="Operation">The face, the mark, the depth and the stop collar.</param>
public sealed record Drilling(int Number, Bore Bore, BoreOperation Operation)
{
    /// <summary>Height of the centre mark on the face above the ground.</summary>
    public Length Mark => Operation.Mark;

    /// <summary>Where to set the stop collar.</summary>
    public Length Collar => Operation.Collar;

    /// <summary>The mark's distance below the post's top.</summary>
    public Length MarkFromTop => Bore.Post.Height - Mark;
}
