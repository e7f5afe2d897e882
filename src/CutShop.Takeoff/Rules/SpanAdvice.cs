using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Rules;

/// <summary>What can be done on site with a piece whose spans were measured: each way with its figures, to the sixteenth of an inch, in the order to try them.</summary>
/// <param name="Sections">The sections that were measured, in order.</param>
/// <param name="Over">How much longer the rope is than the planned sags need, all measured sections together; below zero where it is short.</param>
/// <param name="IsEachSound">True where each measured section can hang with the sag that its own rope gives there.</param>
/// <param name="Shared">The one sag in all sections of the piece that takes up the rope as cut; null where there is none within their limits, or only one section.</param>
/// <param name="FromKnot">What to take from the knot's tail, or from both, so that all sags are as planned; null where no knot has enough.</param>
public sealed record SpanAdvice(IReadOnlyList<SectionAdvice> Sections, Length Over, bool IsEachSound, Length? Shared, Length? FromKnot)
{
    /// <summary>True where the rope does not reach as planned.</summary>
    public bool IsShort => Over.IsNegative;

    /// <summary>True where nothing can be done on site that is within the limits: the piece is sent back.</summary>
    public bool IsHopeless => IsShort && !IsEachSound && Shared is null && FromKnot is null;
}

/// <summary>A measured section with the rope that was planned for it, to the sixteenth of an inch, rounded so that the rope is never said to be longer than it is.</summary>
/// <param name="Index">Which section of the piece, from 0.</param>
/// <param name="Clear">The level distance from post face to post face as measured, up to the next sixteenth.</param>
/// <param name="Over">How much longer its rope is than the planned sag needs; below zero where it is short.</param>
/// <param name="Sag">The sag that its rope gives; below zero where it does not reach: what it lacks, pulled straight.</param>
/// <param name="IsSound">True where that sag is within the section's limits.</param>
public sealed record SectionAdvice(int Index, Length Clear, Length Over, Length Sag, bool IsSound)
{
    /// <summary>True where the rope spans the section at all.</summary>
    public bool Reaches => !Sag.IsNegative;
}
