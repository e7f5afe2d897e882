namespace CutShop.Testing.Rendering;

/// <summary>What a phone sees of a label.</summary>
/// <param name="Blur">Standard deviation of the blur in modules of the code: at 0.3 an edge is as wide as a module.</param>
/// <param name="Turn">How far the label lies turned in the picture, in degrees, one way or the other.</param>
/// <param name="Lean">How far the camera is held from straight above, in degrees, to any side.</param>
/// <param name="Smear">The share of the code's data area that one smear covers.</param>
internal sealed record PhotoOf(double Blur, double Turn, double Lean, double Smear)
{
    /// <summary>A label just printed, held still, seen from straight above.</summary>
    public static PhotoOf FreshLabel { get; } = new(0, 0, 0, 0);

    /// <summary>Out of focus.</summary>
    public static PhotoOf Blurred { get; } = FreshLabel with { Blur = 0.3 };

    /// <summary>Turned by 15 degrees and leaning by 15 degrees.</summary>
    public static PhotoOf Tilted { get; } = FreshLabel with { Turn = 15, Lean = 15 };

    /// <summary>A tenth of the data area under a smear.</summary>
    public static PhotoOf Smeared { get; } = FreshLabel with { Smear = 0.1 };

    /// <summary>All of these at once.</summary>
    public static PhotoOf Everything { get; } = new(0.3, 15, 15, 0.1);
}
