namespace CutShop.Paper.Labels;

/// <summary>The labels in the printer, and the printer's resolution.</summary>
/// <param name="WidthMm">Width in millimetres, along the text.</param>
/// <param name="HeightMm">Height in millimetres.</param>
/// <param name="DotsPerInch">The printer's dots to the inch; a printer with 8 dots to the millimetre is sold as 203.</param>
/// <param name="Correction">How much of the code may be lost.</param>
public sealed record LabelStock(double WidthMm, double HeightMm, double DotsPerInch, QrCorrection Correction)
{
    /// <summary>4 in wide and 2 in tall, 203 dots to the inch, level Q.</summary>
    public static LabelStock Default { get; } = new(101.6, 50.8, 203, QrCorrection.Quarter);

    /// <summary>One printer dot in millimetres.</summary>
    public double DotMm => 25.4 / DotsPerInch;
}
