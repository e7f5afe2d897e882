using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Rules;

namespace CutShop.Paper.Installing;

/// <summary>How posts are set out, in words: for pages and sheets alike.</summary>
public static class SetOutWords
{
    /// <summary>Whole millimetres, as a tape is read.</summary>
    private static Figures Tape(PaperSettings settings) => settings.Figures with { WholeMillimetres = true };

    /// <summary>What is done, in order.</summary>
    /// <param name="setOut">How a line is set out.</param>
    /// <param name="hasBores">True where any of its posts is bored.</param>
    /// <param name="settings">Units and words.</param>
    public static IReadOnlyList<string> Steps(SetOut setOut, bool hasBores, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(setOut);
        ArgumentNullException.ThrowIfNull(settings);
        var text = settings.Text;
        var (first, far, chord) = (setOut.Line.Posts[0].Mark, setOut.Line.Posts[setOut.Far].Mark, Tape(settings).LongBoth(setOut.Chord));
        return
        [
            text[setOut.IsByPosts ? "SetOutByPosts" : "SetOutByPegs", first, far, chord],
            text["SetOutTwoTapes"],
            text["SetOutCheck", first, far],
            .. hasBores && setOut.Posts.Any(post => post.Bore is not null) ? [text["SetOutSight"]] : (string[])[],
            .. setOut.Posts.Any(post => post.First is null) ? [text["SetOutBeyondTape", Tape(settings).LongBoth(SetOut.LongestTape)]] : (string[])[],
        ];
    }

    /// <summary>A tape: its length and the point it is hooked at; that the post is that point, or that no tape reaches.</summary>
    /// <param name="setOut">How the line is set out.</param>
    /// <param name="tape">The tape, or null.</param>
    /// <param name="settings">Units and words.</param>
    public static string Tape(SetOut setOut, TapeFrom? tape, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(setOut);
        ArgumentNullException.ThrowIfNull(settings);
        return tape is not { } from ? settings.Text["NoTapeReaches"]
            : from.Length == Length.Zero ? settings.Text["IsFixedPoint", setOut.Points[from.Point].Name]
            : $"{setOut.Points[from.Point].Name}: {Tape(settings).LongBoth(from.Length)}";
    }

    /// <summary>How far something is along the string.</summary>
    /// <param name="along">Negative before the first post.</param>
    /// <param name="settings">Units and words.</param>
    public static string Along(Length along, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return along < Length.Zero ? settings.Text["BackOfFirst", Tape(settings).LongBoth(-along)] : Tape(settings).LongBoth(along);
    }

    /// <summary>How far something is off the string, and to which side.</summary>
    /// <param name="off">Positive to the left.</param>
    /// <param name="settings">Units and words.</param>
    public static string Off(Length off, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return off == Length.Zero ? settings.Text["OnTheString"]
            : settings.Text[off < Length.Zero ? "RightOfString" : "LeftOfString", Tape(settings).LongBoth(off < Length.Zero ? -off : off)];
    }

    /// <summary>How far it is to the next post or point.</summary>
    /// <param name="next">The distance, or null at the end.</param>
    /// <param name="settings">Units and words.</param>
    public static string Next(Length? next, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return next is { } distance ? Tape(settings).LongBoth(distance) : "–";
    }

    /// <summary>How the direction of a post's bores is found.</summary>
    /// <param name="post">The post.</param>
    /// <param name="isBored">True where it is bored.</param>
    /// <param name="settings">Units and words.</param>
    public static string Bore(SetOutPost post, bool isBored, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(post);
        ArgumentNullException.ThrowIfNull(settings);
        var (text, figures) = (settings.Text, Tape(settings));
        return !isBored ? text["NoBore"]
            : post.Bore is not { } bore ? text["BoreAlongSection"]
            : !bore.IsBisector ? text["BoreAlongBoth"]
            : text["BoreOnBisector", figures.Both(bore.Arm), figures.Both(bore.FromCentre), text.TurnOf(decimal.Round(bore.Turn.Degrees, 2), bore.Turn.Side == TurnSide.Left)];
    }
}
