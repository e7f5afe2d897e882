using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Words;

/// <content>
/// What is done about the shrinking of natural rope, by when it is let shrink. New rope is soaked, dried slack on a grating, and never hauled
/// taut or made fast while it dries: The Ashley Book of Knots, no. 118. That it is then fitted, marked and trimmed, or hung dry with more sag and
/// loose turns, is common practice, no source.
/// </content>
public sealed partial class PaperText
{
    /// <summary>Less than this is not worth a figure.</summary>
    private static readonly Length LeastTrim = Length.FromSixtyFourths(4);

    /// <summary>What a rope loses is known to no better than this.</summary>
    private static readonly Length About = Length.FromSixtyFourths(16);

    /// <summary>Which rope a piece is cut from, new or preshrunk; null for rope that is true to size.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="figure">Writes a length.</param>
    public string? WettingOfCoil(Piece piece, Func<Length, string> figure)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(figure);
        return piece.Manner is null ? null
            : piece.IsPreshrunk ? this["WetFromPreshrunk"]
            : !IsCutLonger(piece) ? this["WetFromNewOnly"]
            : this["WetFromNew", figure(piece.Shrinks.RoundUpTo(About))];
    }

    /// <summary>What is done with a piece between the bench and its place, in order; nothing for rope that is true to size.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="figure">Writes a length.</param>
    public IReadOnlyList<string> WettingOfPiece(Piece piece, Func<Length, string> figure) =>
        [.. WettingBeforeHanging(piece).Append(WettingBeforeLastEnd(piece, figure)).Append(WettingOfTurns(piece)).OfType<string>()];

    /// <summary>What comes before a piece is hung.</summary>
    public IReadOnlyList<string> WettingBeforeHanging(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return piece.Manner switch
        {
            null => [],
            WettingManner.Preshrunk => [this["WetHangPreshrunk"]],
            WettingManner.Trimmed when !IsCutLonger(piece) => [this["WetNeverFast"]],
            WettingManner.Trimmed => [$"{this["WetSoak"]} {this["WetNeverFast"]}"],
            WettingManner.HungLong => [this["WetHungLong"]],
            _ => throw new ArgumentOutOfRangeException(nameof(piece), piece.Manner, message: null),
        };
    }

    /// <summary>What comes before the last end of a piece goes in; null where nothing does.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="figure">Writes a length.</param>
    public string? WettingBeforeLastEnd(Piece piece, Func<Length, string> figure)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(figure);
        return piece.Manner != WettingManner.Trimmed || !IsCutLonger(piece) ? null
            : piece.Trim < LeastTrim ? this["WetTrimRest"]
            : this["WetTrim", figure(piece.Trim.RoundUpTo(About))];
    }

    /// <summary>How turns round posts are laid on; null where there are none, or as on any rope.</summary>
    public string? WettingOfTurns(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return piece.Manner == WettingManner.HungLong && piece.AtPosts.Any(at => at.Kind == AtPostKind.Wrap) ? this["WetLooseTurns"] : null;
    }

    /// <summary>The same as few words as a label has room for; null for rope that is true to size.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="figure">Writes a length.</param>
    public string? WettingOnLabel(Piece piece, Func<Length, string> figure)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(figure);
        return piece.Manner switch
        {
            null => null,
            WettingManner.Trimmed when !IsCutLonger(piece) => null,
            WettingManner.Preshrunk => this["WetLabelPreshrunk"],
            WettingManner.Trimmed when piece.Trim < LeastTrim => this["WetLabelTrimRest"],
            WettingManner.Trimmed => this["WetLabelTrim", figure(piece.Trim.RoundUpTo(About))],
            WettingManner.HungLong => this["WetLabelHungLong"],
            _ => throw new ArgumentOutOfRangeException(nameof(piece), piece.Manner, message: null),
        };
    }

    /// <summary>False where a job adds nothing for the shrinking of its rope: who soaked such a piece would have it too short.</summary>
    private static bool IsCutLonger(Piece piece) => piece.Shrinks >= LeastTrim;

    /// <summary>The sag to set in a section, and for rope that is hung dry also the one that it draws up to.</summary>
    /// <param name="span">The section.</param>
    /// <param name="figure">Writes a length.</param>
    public string SagOf(PieceSection span, Func<Length, string> figure)
    {
        ArgumentNullException.ThrowIfNull(span);
        ArgumentNullException.ThrowIfNull(figure);
        var sag = span.Sag == Length.Zero ? this["Straight"] : figure(span.Sag);
        return span.DrySag is { } dry ? this["DrySagThen", figure(dry), sag] : sag;
    }
}
