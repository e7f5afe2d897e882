using System.Globalization;

namespace CutShop.Shop.Orders;

/// <summary>Marks that nothing has yet.</summary>
internal static class Marks
{
    /// <summary>The mark that follows another: A3 after A2, and on until it is free.</summary>
    public static string After(string mark, IReadOnlySet<string> taken)
    {
        var digits = mark.Length;
        while (digits > 0 && char.IsAsciiDigit(mark[digits - 1]) && mark.Length - digits < 9)
            digits--;
        var stem = mark[..digits];
        var number = digits < mark.Length ? int.Parse(mark.AsSpan(digits), CultureInfo.InvariantCulture) : 1;
        string next;
        do
        {
            number++;
            next = string.Create(CultureInfo.InvariantCulture, $"{stem}{number}");
        }
        while (taken.Contains(next));
        return next;
    }

    /// <summary>The first free letter for a line, then L1, L2 and so on.</summary>
    public static string NewLine(IReadOnlySet<string> taken)
    {
        for (var letter = 'A'; letter <= 'Z'; letter++)
        {
            if (!taken.Contains(letter.ToString()))
                return letter.ToString();
        }
        return After("L0", taken);
    }
}
