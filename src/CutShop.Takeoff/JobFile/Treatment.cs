using System.Globalization;

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
public readonly record struct Treatment(TreatmentKind Kind, int HalfTurns = 0, WrapSide Side = WrapSide.Outside)
{
    /// <summary>The most turns a wrap may have.</summary>
    public const int MostTurns = 1_000;

    /// <summary>Bored.</summary>
    public static Treatment Bored => new(TreatmentKind.Bored);

    /// <summary>Stopped.</summary>
    public static Treatment Stopped => new(TreatmentKind.Stopped);

    /// <summary>Knot.</summary>
    public static Treatment Knot => new(TreatmentKind.Knot);

    /// <summary>Turns of a wrap, in halves.</summary>
    public decimal Turns => HalfTurns / 2m;

    /// <summary>A wrap of so many half turns.</summary>
    public static Treatment Wrap(int halfTurns, WrapSide side = WrapSide.Outside) => new(TreatmentKind.Wrap, halfTurns, side);

    /// <summary>The treatment as a job file writes it.</summary>
    public override string ToString() => Kind switch
    {
        TreatmentKind.Bored => "bored",
        TreatmentKind.Stopped => "stopped",
        TreatmentKind.Knot => "knot",
        TreatmentKind.Wrap => string.Create(
            CultureInfo.InvariantCulture, $"wrap {Turns:0.#}{(Side == WrapSide.Inside ? " inside" : "")}"),
        _ => throw new InvalidOperationException($"No treatment is numbered {(int)Kind}."),
    };
}
