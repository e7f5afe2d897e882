namespace CutShop.Paper.Drawings;

/// <summary>The line styles of a drawing.</summary>
public enum Pen
{
    /// <summary>No line.</summary>
    None,

    /// <summary>A visible edge.</summary>
    Outline,

    /// <summary>Dimension and extension lines.</summary>
    Thin,

    /// <summary>An edge inside the wood.</summary>
    Hidden,

    /// <summary>A centre line or a chord.</summary>
    Axis,

    /// <summary>The ground.</summary>
    Ground,

    /// <summary>A rope.</summary>
    Rope,

    /// <summary>The one rope that the sheet is about.</summary>
    ThisRope,
}

/// <summary>What fills a closed figure.</summary>
public enum Fill
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>Timber: a light tint.</summary>
    Wood,

    /// <summary>Wood to be taken away: a darker tint.</summary>
    Bore,

    /// <summary>Solid.</summary>
    Ink,
}

/// <summary>How a pen draws.</summary>
/// <param name="Width">Width in millimetres.</param>
/// <param name="Dashes">Lengths of dashes and gaps in millimetres, in turn; empty for an unbroken line.</param>
/// <param name="Shade">Darkness, 0 to 1.</param>
public sealed record PenStyle(double Width, IReadOnlyList<double> Dashes, double Shade)
{
    private static readonly PenStyle NoLine = new(0, [], 0);
    private static readonly PenStyle Outline = new(0.45, [], 1);
    private static readonly PenStyle Thin = new(0.18, [], 1);
    private static readonly PenStyle Hidden = new(0.25, [1.2, 0.8], 1);
    private static readonly PenStyle Axis = new(0.18, [3, 0.8, 0.6, 0.8], 0.8);
    private static readonly PenStyle Ground = new(0.7, [], 1);
    private static readonly PenStyle Rope = new(0.8, [], 0.45);
    private static readonly PenStyle ThisRope = new(1.4, [], 1);

    /// <summary>The style of a pen.</summary>
    public static PenStyle Of(Pen pen) => pen switch
    {
        Pen.None => NoLine,
        Pen.Outline => Outline,
        Pen.Thin => Thin,
        Pen.Hidden => Hidden,
        Pen.Axis => Axis,
        Pen.Ground => Ground,
        Pen.Rope => Rope,
        Pen.ThisRope => ThisRope,
        _ => throw new ArgumentOutOfRangeException(nameof(pen), pen, message: null),
    };

    /// <summary>Darkness of a fill, 0 to 1.</summary>
    public static double ShadeOf(Fill fill) => fill switch
    {
        Fill.None => 0,
        Fill.Wood => 0.1,
        Fill.Bore => 0.55,
        Fill.Ink => 1,
        _ => throw new ArgumentOutOfRangeException(nameof(fill), fill, message: null),
    };
}
