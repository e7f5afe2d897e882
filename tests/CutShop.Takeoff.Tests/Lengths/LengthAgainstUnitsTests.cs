using CsCheck;

namespace CutShop.Takeoff.Tests.Lengths;

/// <summary>Conversions against a library of units that was written elsewhere.</summary>
public class LengthAgainstUnitsTests
{
    [Fact]
    public void Each_unit_is_as_long_as_the_library_says()
    {
        Assert.Equal(Nanometres(UnitsNet.Length.FromInches(1)), Length.Inch.Nanometres);
        Assert.Equal(Nanometres(UnitsNet.Length.FromFeet(1)), Length.Foot.Nanometres);
        Assert.Equal(Nanometres(UnitsNet.Length.FromMillimeters(1)), Length.Millimetre.Nanometres);
        Assert.Equal(Nanometres(UnitsNet.Length.FromCentimeters(1)), Length.Centimetre.Nanometres);
        Assert.Equal(Nanometres(UnitsNet.Length.FromMeters(1)), Length.Metre.Nanometres);
    }

    [Fact]
    public void Texts_of_each_unit_agree_with_the_library() =>
        Gen.Select(Gen.Int[0, 100_000], Gen.OneOf("in", "ft", "mm", "cm", "m")).Sample((hundredths, unit) =>
        {
            var number = hundredths / 100m;
            var library = unit switch
            {
                "in" => UnitsNet.Length.FromInches((double)number),
                "ft" => UnitsNet.Length.FromFeet((double)number),
                "mm" => UnitsNet.Length.FromMillimeters((double)number),
                "cm" => UnitsNet.Length.FromCentimeters((double)number),
                _ => UnitsNet.Length.FromMeters((double)number),
            };
            var text = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{number} {unit}");
            Assert.Equal(Nanometres(library), LengthText.Parse(text).OrThrow().Nanometres);
        });

    [Fact]
    public void Inches_and_millimetres_as_numbers_agree_with_the_library() =>
        Gen.Long[-1_000_000_000_000, 1_000_000_000_000].Sample(nanometres =>
        {
            var library = UnitsNet.Length.FromNanometers(nanometres);
            Assert.Equal(library.Inches, Length.FromNanometres(nanometres).Inches, 1e-9 * Math.Abs(library.Inches));
            Assert.Equal(library.Millimeters, Length.FromNanometres(nanometres).Millimetres, 1e-9 * Math.Abs(library.Millimeters));
        });

    private static long Nanometres(UnitsNet.Length length) => (long)Math.Round(length.Nanometers);
}
