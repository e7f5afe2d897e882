namespace CutShop.Paper.Drawings;

/// <summary>A number as a drawing's SVG has it: at most three digits behind the point, the same in every culture.</summary>
internal readonly record struct SvgNumber(double Value) : ISpanFormattable
{
    /// <inheritdoc/>
    public override string ToString() => string.Create(provider: null, $"{this}");

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => ToString();

    /// <inheritdoc/>
    public bool TryFormat(Span<char> destination, out int charsWritten, ReadOnlySpan<char> format, IFormatProvider? provider)
    {
        charsWritten = 0;
        var thousandths = (long)Math.Round(Value * 1000);
        var (whole, part) = Math.DivRem(Math.Abs(thousandths), 1000);
        if (thousandths < 0)
        {
            if (destination.IsEmpty)
                return false;
            destination[charsWritten++] = '-';
        }
        if (!whole.TryFormat(destination[charsWritten..], out var digits, default, provider))
            return false;
        charsWritten += digits;
        if (part == 0)
            return true;
        if (destination.Length - charsWritten < 4)
            return false;
        destination[charsWritten++] = '.';
        for (var tens = 100L; part > 0; tens /= 10)
        {
            var (digit, rest) = Math.DivRem(part, tens);
            destination[charsWritten++] = (char)('0' + digit);
            part = rest;
        }
        return true;
    }
}
