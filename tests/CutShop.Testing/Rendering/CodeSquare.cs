namespace CutShop.Testing.Rendering;

/// <summary>Where a code's modules are in a picture of its label.</summary>
/// <param name="Side">Modules along a side.</param>
/// <param name="Left">Left edge of the dark square, in pixels.</param>
/// <param name="Top">Its top edge.</param>
/// <param name="Module">A module's side.</param>
internal sealed record CodeSquare(int Side, float Left, float Top, float Module)
{
    private const int Corner = 8;

    /// <summary>The code of a label that was rendered at a resolution.</summary>
    public static CodeSquare On(string address, LabelStock stock, int dotsPerInch)
    {
        var code = QrModules.Of(address, stock.Correction);
        var place = QrPlace.Of(code, stock).Value;
        var dots = dotsPerInch / 25.4;
        return new(code.Side, (float)(place.LeftMm * dots), (float)(place.TopMm * dots), (float)(place.ModuleMm * dots));
    }

    /// <summary>True where a module carries data or its correction: not in a corner, on a timing line or in the alignment pattern (versions 2 to 6 have one).</summary>
    public bool IsData(int column, int row)
    {
        var isAlignment = Side > 21 && InAlignment(column) && InAlignment(row);
        return !InCorner(column, row) && column != 6 && row != 6 && !isAlignment;
    }

    /// <summary>
    /// The three corners that find the code and tell its level, as left, top, width and height in modules: each a pattern of
    /// seven modules and its light rim, and on the sides towards the code the line of format information (ISO/IEC 18004).
    /// </summary>
    public IEnumerable<(int Left, int Top, int Width, int Height)> Corners =>
        [(0, 0, Corner + 1, Corner + 1), (Side - Corner, 0, Corner, Corner + 1), (0, Side - Corner, Corner + 1, Corner)];

    private bool InCorner(int column, int row) => Corners.Any(corner =>
        column >= corner.Left && column < corner.Left + corner.Width && row >= corner.Top && row < corner.Top + corner.Height);

    private bool InAlignment(int at) => at >= Side - 9 && at < Side - 4;
}
