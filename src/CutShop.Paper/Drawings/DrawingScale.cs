namespace CutShop.Paper.Drawings;

/// <summary>A drawing's scale, one to a whole number.</summary>
/// <param name="OneTo">How many times smaller than life.</param>
public readonly record struct DrawingScale(int OneTo)
{
    private static readonly int[] Usual = [1, 2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 32, 40, 48, 64, 80, 100, 120, 160, 200, 250, 320, 400, 500];

    /// <summary>The largest usual scale at which <paramref name="inches"/> take no more than <paramref name="mm"/> on paper.</summary>
    public static DrawingScale Fitting(double inches, double mm, int atLeast = 1)
    {
        var wanted = Math.Max(inches * 25.4 / mm, atLeast);
        foreach (var usual in Usual)
        {
            if (usual >= wanted - 1e-9)
                return new(usual);
        }
        return new((int)Math.Ceiling(wanted / 500) * 500);
    }

    /// <summary>Millimetres on paper for so many inches in life.</summary>
    public double Mm(double inches) => inches * 25.4 / OneTo;
}
