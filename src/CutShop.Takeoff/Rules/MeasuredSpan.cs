using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Takeoff.Rules;

/// <summary>What a piece does in a section that was measured again on site.</summary>
/// <param name="Planned">The section as it was planned.</param>
/// <param name="Clear">The level distance from post face to post face as measured.</param>
/// <param name="Chord">The straight distance between the rope's supports, with that.</param>
/// <param name="Wanted">The rope that the planned sag takes.</param>
/// <param name="Sag">The sag that the planned rope gives, below the straight line at the middle; null where it does not reach.</param>
public sealed record MeasuredSpan(PieceSection Planned, Length Clear, Length Chord, Length Wanted, Length? Sag)
{
    /// <summary>The longest span that can be measured: as long as one that can be ordered.</summary>
    public static Length Longest { get; } = Length.Metre * 1000;

    /// <summary>How much the rope is over for the planned sag; below zero where it is short.</summary>
    public Length Over => Planned.Arc - Wanted;

    /// <summary>How much the rope lacks to reach at all, pulled straight; zero where it reaches.</summary>
    public Length Lacks => Length.Max(Chord - Planned.Arc, Length.Zero);

    /// <summary>Holds a piece against a section as measured: the rope is as cut, the ground's rise as planned.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="index">Which of its sections, from 0.</param>
    /// <param name="clear">The level distance from post face to post face, above zero and at most <see cref="Longest"/>.</param>
    public static MeasuredSpan Of(Piece piece, int index, Length clear)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(clear, Length.Zero);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(clear, Longest);
        var planned = piece.Sections[index];
        var (level, rise) = Supports(piece, index, clear);
        var wanted = HangingRope.FromSag(level, rise, planned.Sag.Inches);
        var given = HangingRope.FromArc(level, rise, planned.Arc.Inches);
        return new(
            planned,
            clear,
            Length.RoundedFromInches(wanted.Chord),
            Length.RoundedFromInches(wanted.Arc),
            given is { } rope ? Length.RoundedFromInches(rope.Sag) : null);
    }

    /// <summary>The level distance of a section's two supports and the height of the second over the first, in inches, where its posts stand so far apart from face to face.</summary>
    internal static (double Level, double Rise) Supports(Piece piece, int index, Length clear)
    {
        var planned = piece.Sections[index];
        // The holds stay where they are in their posts: what is between them grows as the clear distance does.
        var faces = (planned.From.Across + planned.To.Across).Inches / 2;
        var (climb, centres) = (planned.Climb.Inches, clear.Inches + faces);
        var raked = climb == 0 ? 0 : (planned.Clear.Inches + faces) * (1 - (planned.Rise.Inches / climb));
        return ((planned.Level + clear - planned.Clear).Inches, climb * (1 - (raked / centres)));
    }
}
