using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Benches;

/// <summary>What the bench makes of a length that was measured or typed after cutting.</summary>
public enum TapeReading
{
    /// <summary>Within the tolerance: the piece is taken.</summary>
    Good,

    /// <summary>Too long by as much as a slip of the knife makes: it is trimmed and measured again.</summary>
    TooLong,

    /// <summary>Too short: asked once more, since the piece is lost if it is true.</summary>
    TooShort,

    /// <summary>So much too long that a slip of the finger is more likely: asked once more.</summary>
    FarTooLong,

    /// <summary>More than the coil can have given: never stored.</summary>
    MoreThanCoil,
}

/// <summary>Judges what the tape is said to show, before anything is stored.</summary>
public static class TapeReadings
{
    private const int PartsOfTheCut = 20;

    /// <summary>How far from its cut length a piece is believed without a question: a foot, or 5 % of it where that is less (common practice, no source).</summary>
    public static Length Believed(Length cut) => Length.Min(Length.Foot, cut / PartsOfTheCut);

    /// <summary>What a length is for a piece.</summary>
    /// <param name="work">The piece, not measured yet.</param>
    /// <param name="settings">The tolerance.</param>
    /// <param name="measured">The length, above zero.</param>
    public static TapeReading Of(CutWork work, BenchSettings settings, Length measured)
    {
        ArgumentNullException.ThrowIfNull(work);
        ArgumentNullException.ThrowIfNull(settings);
        return measured > work.Most ? TapeReading.MoreThanCoil
            : measured < work.Cut - settings.Under ? TapeReading.TooShort
            : measured <= work.Cut + settings.Over ? TapeReading.Good
            : measured <= work.Cut + Length.Max(Believed(work.Cut), settings.Over) ? TapeReading.TooLong
            : TapeReading.FarTooLong;
    }

    /// <summary>True where a length is about what was asked, so that a number read in another unit can be offered as it.</summary>
    public static bool IsAbout(Length cut, Length measured) => (measured - cut).Abs() <= Believed(cut);
}
