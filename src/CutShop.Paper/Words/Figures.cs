using System.Globalization;
using CutShop.Takeoff.Lengths;

namespace CutShop.Paper.Words;

/// <summary>
/// Lengths as a ticket writes them. A whole number of 64ths of an inch is written exactly; any other to the nearest
/// 1/16 in, and to 0.1 mm, with <c>≈</c> before it where rounding changed it. No line breaks within a figure.
/// </summary>
/// <param name="First">The unit that leads.</param>
/// <param name="WholeMillimetres">True where millimetres are whole and without <c>≈</c>, as a tape at a bench is read.</param>
public readonly record struct Figures(UnitsFirst First, bool WholeMillimetres = false)
{
    private const int TapeMarks = 16;

    /// <summary>The same with tenths of a millimetre: for bits, which are called by them.</summary>
    public Figures ToTheTenth() => this with { WholeMillimetres = false };

    /// <summary>Inches alone, such as <c>74 3/8 in</c>.</summary>
    public static string Inches(Length length) => LengthText.Unbroken(LengthText.Inches(length, Denominator(length)));

    /// <summary>Feet and inches, such as <c>6' 2 3/8"</c> in the job file's way of writing.</summary>
    public static string FeetInches(Length length) => LengthText.Unbroken(LengthText.FeetInches(length, Denominator(length)));

    /// <summary>The leading unit alone, small figures in inches.</summary>
    public string Lead(Length length) => First == UnitsFirst.FeetInches ? Inches(length) : Millimetres(length);

    /// <summary>The other unit alone.</summary>
    public string Other(Length length) => First == UnitsFirst.FeetInches ? Millimetres(length) : Inches(length);

    /// <summary>Both units on one line: inches and millimetres.</summary>
    public string Both(Length length) => Together(Lead(length), Other(length));

    /// <summary>Both units on two lines.</summary>
    public string Stacked(Length length) => $"{Lead(length)}\n{Other(length)}";

    /// <summary>A long length in the leading unit: feet, inches and a fraction, or millimetres.</summary>
    public string LongLead(Length length) => First == UnitsFirst.FeetInches ? FeetInches(length) : Millimetres(length);

    /// <summary>A long length in the other unit.</summary>
    public string LongOther(Length length) => First == UnitsFirst.FeetInches ? Millimetres(length) : FeetInches(length);

    /// <summary>A long length in both units on one line.</summary>
    public string LongBoth(Length length) => Together(LongLead(length), LongOther(length));

    /// <summary>A long length in both units on two lines.</summary>
    public string LongStacked(Length length) => $"{LongLead(length)}\n{LongOther(length)}";

    /// <summary>An angle to a tenth of a degree.</summary>
    public static string Degrees(double degrees) => string.Create(CultureInfo.InvariantCulture, $"{degrees:0.0}°");

    /// <summary>A number with at most one decimal.</summary>
    public static string Tenths(double number) => number.ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>A count.</summary>
    public static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);

    /// <summary>Two figures on one line; where the line must break, it breaks between them.</summary>
    private static string Together(string lead, string other) => $"{lead} ({other})";

    private string Millimetres(Length length) =>
        LengthText.Unbroken(LengthText.Millimetres(WholeMillimetres ? length.RoundTo(Length.Millimetre) : length));

    private static int Denominator(Length length) => length.IsWhole(Length.FromSixtyFourths(1)) ? 64 : TapeMarks;
}
