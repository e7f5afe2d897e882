using System.Globalization;

namespace CutShop.Benchmarks;

/// <summary>Prints what was measured, alike in every culture.</summary>
internal static class Printed
{
    public static void Say(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
