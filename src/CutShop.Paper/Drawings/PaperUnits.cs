namespace CutShop.Paper.Drawings;

/// <summary>Millimetres and printer's points, 72 to the inch.</summary>
internal static class PaperUnits
{
    private const double PointsPerMm = 72 / 25.4;

    /// <summary>Points from millimetres.</summary>
    public static double Points(double mm) => mm * PointsPerMm;

    /// <summary>Millimetres from points.</summary>
    public static double Mm(double points) => points / PointsPerMm;
}
