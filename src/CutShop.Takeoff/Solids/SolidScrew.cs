using CutShop.Takeoff.Result;

namespace CutShop.Takeoff.Solids;

/// <summary>A hole round a screw's axis, from the face.</summary>
/// <param name="Depth">Its depth in inches; zero where there is none.</param>
/// <param name="Radius">Half its diameter in inches.</param>
public readonly record struct ScrewHole(double Depth, double Radius);

/// <summary>A screw in a post and the holes that are drilled for it, all round one axis from where it is driven in.</summary>
/// <param name="Row">The mark of its row.</param>
/// <param name="Purpose">What it is for.</param>
/// <param name="Body">The screw, as thick as its shank, from the face to its point.</param>
/// <param name="Sinking">What sinks its head: a counterbore, or the straight hole that a countersink fits into.</param>
/// <param name="Thread">The pilot, as deep as the point comes.</param>
/// <param name="Plain">The hole for the plain shank, through the wood before the rope.</param>
public sealed record SolidScrew(string Row, FixingPurpose Purpose, Cylinder Body, ScrewHole Sinking, ScrewHole Thread, ScrewHole Plain)
{
    /// <summary>What sinks its head, as a body; null where no head is sunk.</summary>
    public Cylinder? Head => Bored(Sinking);

    /// <summary>The pilot as a body; null where none is needed.</summary>
    public Cylinder? Pilot => Bored(Thread);

    /// <summary>The hole for the shank as a body; null where none is needed.</summary>
    public Cylinder? ShankHole => Bored(Plain);

    /// <summary>
    /// The least distance from the screw and its sunk head to another body in inches; zero or less where they meet. Where it is not under
    /// <paramref name="upTo"/>, any figure that is not.
    /// </summary>
    public double GapTo(in Cylinder other, double upTo = double.PositiveInfinity)
    {
        var gap = Gap.Between(Body, other, upTo);
        return Head is { } head ? Math.Min(gap, Gap.Between(head, other, upTo)) : gap;
    }

    /// <summary>The same to another screw.</summary>
    public double GapTo(SolidScrew other, double upTo = double.PositiveInfinity)
    {
        ArgumentNullException.ThrowIfNull(other);
        var gap = GapTo(other.Body, upTo);
        return other.Head is { } head ? Math.Min(gap, GapTo(head, upTo)) : gap;
    }

    /// <summary>How much of its axis lies in a rope, in inches.</summary>
    public double BiteIn(in Cylinder rope) => rope.On(Body.From, Body.To) is { } on ? on.Out - on.In : 0;

    private Cylinder? Bored(ScrewHole hole) => hole.Depth > 0 && hole.Radius > 0 ? new(Body.From, Body.From + (Body.Along * hole.Depth), hole.Radius) : null;
}
