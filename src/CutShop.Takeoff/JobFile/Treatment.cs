using System.Globalization;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.JobFile;

/// <summary>What is done with the rope at a post.</summary>
public enum TreatmentKind
{
    /// <summary>The rope goes through a bore; at a corner two runs meet in two bores.</summary>
    Bored,

    /// <summary>The rope ends in a bore half way into the post.</summary>
    Stopped,

    /// <summary>The rope goes through a bore and ends in a stopper knot behind the post.</summary>
    Knot,

    /// <summary>The rope is wound round the post.</summary>
    Wrap,

    /// <summary>The rope passes the post and is held against it.</summary>
    Beside,

    /// <summary>The rope ends in an eye that is spliced round a pin.</summary>
    Eye,
}

/// <summary>An eye spliced at the end of a rope, on a pin at a post.</summary>
/// <param name="Pin">Diameter of the pin.</param>
/// <param name="Throat">From the pin's centre to the eye's throat.</param>
/// <param name="Reach">From the post's face to the pin's centre.</param>
/// <param name="Tucks">Full tucks of the splice; null for as many as the fibre needs.</param>
/// <param name="Thimble">Diameter of the thimble's groove, or null where there is none.</param>
public sealed record Eye(Length Pin, Length Throat, Length Reach, int? Tucks, Length? Thimble)
{
    /// <summary>The fewest full tucks: 3 in natural rope, 4 in synthetic. Source: 29 CFR 1910.184(h), WAC 296-24-29429.</summary>
    public static int LeastTucks(bool isNatural) => isNatural ? 3 : 4;

    /// <summary>The most tucks that a splice is asked for.</summary>
    public const int MostTucks = 20;

    /// <summary>The tucks in a rope.</summary>
    public int TucksIn(bool isNatural) => Tucks ?? LeastTucks(isNatural);

    /// <summary>The diameter that the rope lies round: the thimble's groove, or the pin.</summary>
    public Length Round => Thimble ?? Pin;
}

/// <summary>On which side of a turning post a wrapped rope goes by.</summary>
public enum WrapSide
{
    /// <summary>Round the outside of the turn; the default.</summary>
    Outside,

    /// <summary>By the inside of the turn.</summary>
    Inside,
}

/// <summary>What is done with the rope at a post, and for a wrap how often it goes round.</summary>
/// <param name="Kind">What is done.</param>
/// <param name="HalfTurns">Turns of a wrap counted in halves, so two and a half turns are 5; 0 for anything else.</param>
/// <param name="Side">At a corner, the side on which a wrap goes by.</param>
/// <param name="Eye">The eye at an end that has one; null for anything else.</param>
public readonly record struct Treatment(TreatmentKind Kind, int HalfTurns = 0, WrapSide Side = WrapSide.Outside, Eye? Eye = null)
{
    /// <summary>The most turns a wrap may have.</summary>
    public const int MostTurns = 1_000;

    /// <summary>Bored.</summary>
    public static Treatment Bored => new(TreatmentKind.Bored);

    /// <summary>Stopped.</summary>
    public static Treatment Stopped => new(TreatmentKind.Stopped);

    /// <summary>Knot.</summary>
    public static Treatment Knot => new(TreatmentKind.Knot);

    /// <summary>Beside the post.</summary>
    public static Treatment Beside => new(TreatmentKind.Beside);

    /// <summary>True where the rope goes into the post.</summary>
    public bool IsInBore => Kind is TreatmentKind.Bored or TreatmentKind.Stopped or TreatmentKind.Knot;

    /// <summary>Turns of a wrap, in halves.</summary>
    public decimal Turns => HalfTurns / 2m;

    /// <summary>A wrap of so many half turns.</summary>
    public static Treatment Wrap(int halfTurns, WrapSide side = WrapSide.Outside) => new(TreatmentKind.Wrap, halfTurns, side);

    /// <summary>An end in an eye.</summary>
    public static Treatment InEye(Eye eye) => new(TreatmentKind.Eye, Eye: eye);

    /// <summary>The treatment as a job file writes it; of an eye the word alone, without its figures.</summary>
    public override string ToString() => Kind switch
    {
        TreatmentKind.Beside => "beside",
        TreatmentKind.Eye => "eye",
        TreatmentKind.Bored => "bored",
        TreatmentKind.Stopped => "stopped",
        TreatmentKind.Knot => "knot",
        TreatmentKind.Wrap => string.Create(
            CultureInfo.InvariantCulture, $"wrap {Turns:0.#}{(Side == WrapSide.Inside ? " inside" : "")}"),
        _ => throw new InvalidOperationException($"No treatment is numbered {(int)Kind}."),
    };
}
