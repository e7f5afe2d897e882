using QRCoder;

namespace CutShop.Paper.Labels;

/// <summary>How much of a square code may be lost before it cannot be read.</summary>
public enum QrCorrection
{
    /// <summary>Level L: about a fourteenth.</summary>
    Fourteenth,

    /// <summary>Level M: about a seventh.</summary>
    Seventh,

    /// <summary>Level Q: about a quarter.</summary>
    Quarter,

    /// <summary>Level H: about a third.</summary>
    Third,
}

/// <summary>The dark and light modules of a square code (ISO/IEC 18004), without its quiet zone.</summary>
public sealed class QrModules
{
    private readonly bool[] _dark;

    private QrModules(int side, bool[] dark) => (Side, _dark) = (side, dark);

    /// <summary>Modules along a side: 4 times the version, and 17.</summary>
    public int Side { get; }

    /// <summary>True where the module is dark; both counted from 0, from the upper left.</summary>
    public bool IsDark(int column, int row) => _dark[row * Side + column];

    /// <summary>Codes a text. Digits, capitals and <c>$%*+-./: </c> alone take the denser alphanumeric mode.</summary>
    public static QrModules Of(string text, QrCorrection correction)
    {
        using var generator = new QRCodeGenerator();
        using var data = generator.CreateQrCode(text, LevelOf(correction));
        // The library's matrix carries a quiet zone of its own; the drawing makes one to the label's dots.
        const int LibraryQuiet = 4;
        var side = data.ModuleMatrix.Count - 2 * LibraryQuiet;
        var dark = new bool[side * side];
        for (var row = 0; row < side; row++)
        {
            for (var column = 0; column < side; column++)
                dark[row * side + column] = data.ModuleMatrix[row + LibraryQuiet][column + LibraryQuiet];
        }
        return new(side, dark);
    }

    private static QRCodeGenerator.ECCLevel LevelOf(QrCorrection correction) => correction switch
    {
        QrCorrection.Fourteenth => QRCodeGenerator.ECCLevel.L,
        QrCorrection.Seventh => QRCodeGenerator.ECCLevel.M,
        QrCorrection.Quarter => QRCodeGenerator.ECCLevel.Q,
        QrCorrection.Third => QRCodeGenerator.ECCLevel.H,
        _ => throw new ArgumentOutOfRangeException(nameof(correction), correction, message: null),
    };
}
