using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;

namespace CutShop.Takeoff.Rules;

/// <summary>One step of hanging a piece of rope on site.</summary>
public abstract record InstallStep;

/// <summary>Before natural rope is hung: it is soaked and dried, or hung as it is, by the piece's manner.</summary>
public sealed record SoakStep : InstallStep;

/// <summary>Natural rope that was soaked and dried is fitted, marked and trimmed before its last end goes in.</summary>
public sealed record TrimStep : InstallStep;

/// <summary>The rope is laid along the line, with the end to start with at its post.</summary>
/// <param name="Start">The post to start at.</param>
/// <param name="Finish">The post at the other end.</param>
/// <param name="FinishTakesUp">True where the end at <paramref name="Finish"/> can be made longer or shorter and the other cannot.</param>
public sealed record LayOutStep(Post Start, Post Finish, bool FinishTakesUp) : InstallStep;

/// <summary>Before the second rope enters a bored corner, the first is in and screwed.</summary>
/// <param name="Corner">The corner post.</param>
/// <param name="FirstRun">The run that must be in.</param>
public sealed record FirstRopeStep(Post Corner, string FirstRun) : InstallStep;

/// <summary>An end is put in and fixed.</summary>
/// <param name="At">What the end does at its post.</param>
/// <param name="Inner">The neighbouring post in the run: the rope leaves toward it.</param>
/// <param name="IsStart">True for the end that is fixed first.</param>
/// <param name="Fixing">Its screws; null for a knot, which holds itself.</param>
/// <param name="Way">Which way it is wound; null unless it is a wrap.</param>
public sealed record EndStep(AtPost At, Post Inner, bool IsStart, Fixing? Fixing, WrapWay? Way) : InstallStep
{
    /// <summary>The splice of an eye that is made now, since the rope had to go through bores first; null for anything else.</summary>
    public EyeSplice? Splice { get; init; }
}

/// <summary>The rope is passed through bored posts; no screw yet.</summary>
/// <param name="Posts">The posts in order.</param>
public sealed record ThreadStep(IReadOnlyList<Post> Posts) : InstallStep;

/// <summary>The sag of a section is set from a string.</summary>
/// <param name="Section">The section.</param>
public sealed record SagStep(PieceSection Section) : InstallStep;

/// <summary>The screw that holds the sag at a bored post, or the staple that holds the rope against a post beside it.</summary>
/// <param name="Post">The post.</param>
/// <param name="Fixing">The screw.</param>
public sealed record LineScrewStep(Post Post, Fixing Fixing) : InstallStep;

/// <summary>The rope is wound round a post in passing, and screwed.</summary>
/// <param name="At">The post and the turns.</param>
/// <param name="Fixing">Its screws.</param>
/// <param name="Way">Which way it is wound.</param>
public sealed record WrapStep(AtPost At, Fixing Fixing, WrapWay Way) : InstallStep;

/// <summary>Which way a rope is wound round a post, seen from above, in the order of the work.</summary>
public enum WrapWay
{
    /// <summary>With the clock.</summary>
    Clockwise,

    /// <summary>Against the clock.</summary>
    CounterClockwise,
}
