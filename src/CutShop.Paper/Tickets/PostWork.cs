using CutShop.Takeoff;

namespace CutShop.Paper;

/// <summary>All that is done to one post.</summary>
/// <param name="Line">The line it stands in.</param>
/// <param name="Index">Its place in the line, from 0.</param>
/// <param name="Bores">Its bores.</param>
/// <param name="Fixings">The screws at it.</param>
public sealed record PostWork(Line Line, int Index, IReadOnlyList<Bore> Bores, IReadOnlyList<Fixing> Fixings)
{
    /// <summary>The post.</summary>
    public Post Post => Line.Posts[Index];

    /// <summary>The neighbour before it, or null at the line's start.</summary>
    public Post? Before => Index == 0 ? null : Line.Posts[Index - 1];

    /// <summary>The neighbour after it, or null at the line's end.</summary>
    public Post? After => Index == Line.Posts.Count - 1 ? null : Line.Posts[Index + 1];

    /// <summary>
    /// The screws whose holes are drilled at the bench: face by face so that the post is turned least, then from the top down. Those
    /// that hold turns are screwed on site, through the rope once it is wound.
    /// </summary>
    public IReadOnlyList<Fixing> ScrewHoles =>
        [.. Fixings.Where(fixing => fixing.Face.Sight != FaceSight.Around).GroupBy(fixing => fixing.Face).SelectMany(face => face.OrderByDescending(fixing => fixing.Row.Height))];

    /// <summary>The work at every post of a job that has any, along the lines.</summary>
    public static IReadOnlyList<PostWork> Of(JobTakeoff takeoff)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        var bores = takeoff.Bores.ToLookup(bore => (bore.Line.Mark, bore.Post.Mark));
        var fixings = takeoff.Fixings.ToLookup(fixing => (fixing.Line.Mark, fixing.Post.Mark));
        return
        [
            .. takeoff.Job.Lines
                .SelectMany(line => line.Posts.Select((post, i) =>
                    new PostWork(line, i, [.. bores[(line.Mark, post.Mark)]], [.. fixings[(line.Mark, post.Mark)]])))
                .Where(work => work.Bores.Count + work.Fixings.Count > 0),
        ];
    }

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
                .Select((x, i) => new Drilling(i + 1, x.Bore, x.Operation, MarkHeight(x.Bore.Height, x.Operation.Face, x.Bore.RakeDegrees))),
        ];
    }

    /// <summary>
    /// Height of a mark on a face above the ground: the bore's height is at the post's centre, and a raked bore comes out
    /// half the post's width times its slope higher uphill and lower downhill.
    /// </summary>
    public Length MarkHeight(Length height, Face face, double rakeDegrees)
    {
        var slope = Math.Tan(rakeDegrees * Math.PI / 180);
        return rakeDegrees == 0 ? height : height + Length.RoundedFromInches(Uphill(face) * slope * Post.Across.Inches / 2);
    }

    /// <summary>The height of the screws of a fixing, as seen on the face they are driven from.</summary>
    public Length MarkHeight(Fixing fixing)
    {
        ArgumentNullException.ThrowIfNull(fixing);
        var rake = Bores.FirstOrDefault(bore => bore.Run == fixing.Run)?.RakeDegrees ?? 0;
        return MarkHeight(fixing.Height, fixing.Face, rake);
    }

    /// <summary>1 for a face that looks along the line, -1 for one that looks back, 0 for a side.</summary>
    private int Uphill(Face face) => face.Sight switch
    {
        FaceSight.Toward => face.Neighbour == After?.Mark ? 1 : -1,
        FaceSight.AwayFrom => face.Neighbour == Before?.Mark ? 1 : -1,
        _ => 0,
    };
}

/// <summary>One drilling on a ticket.</summary>
/// <param name="Number">Its place in the order, from 1.</param>
/// <param name="Bore">The bore.</param>
/// <param name="Operation">The face and the depth.</param>
/// <param name="Mark">Height of the centre mark on that face above the ground.</param>
public sealed record Drilling(int Number, Bore Bore, BoreOperation Operation, Length Mark)
{
    /// <summary>Where to set the stop collar.</summary>
    public Length Collar => StopCollar.For(Operation.Depth);

    /// <summary>The mark's distance below the post's top.</summary>
    public Length MarkFromTop => Bore.Post.Height - Mark;
}
