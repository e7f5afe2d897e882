using System.Globalization;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Store;

/// <summary>
/// An amount of money, exact, in ten-thousandths of the currency's unit; never negative. An amount to pay is always whole
/// cents; a price by the foot may be finer. Ordering is by size; <c>default</c> is nothing.
/// </summary>
public readonly record struct Money : IComparable<Money>
{
    private const int PerUnit = 10_000;
    private const decimal Most = 999_999.9999m;
    private const int NanometresPerFoot = 304_800_000;

    private Money(long tenThousandths) => TenThousandths = tenThousandths;

    /// <summary>Nothing.</summary>
    public static Money Zero => default;

    /// <summary>The amount in whole ten-thousandths: the exact value, and what is stored.</summary>
    public long TenThousandths { get; }

    /// <summary>The amount in units of the currency.</summary>
    public decimal Amount => TenThousandths / (decimal)PerUnit;

    /// <summary>An amount of whole ten-thousandths.</summary>
    public static Money FromTenThousandths(long tenThousandths)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(tenThousandths);
        return new(tenThousandths);
    }

    /// <summary>Reads an amount such as <c>12.50</c>; thousands are not grouped.</summary>
    public static Parsed<Money> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length > 32
            || !decimal.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var amount)
            || amount > Most || amount * PerUnit != decimal.Truncate(amount * PerUnit))
            return Parsed.Bad<Money>(new(StoreReplies.List, "AcceptedMoney"));
        return Parsed.Good(new Money((long)(amount * PerUnit)));
    }

    /// <summary>So many times the amount, half up to the cent.</summary>
    public Money Times(long count) => HalfUpToCent(Amount * count);

    /// <summary>What a length costs at this price a foot, half up to the cent. The one rounding is the last step.</summary>
    public Money ForFeet(Length length) => HalfUpToCent(Amount * length.Nanometres / NanometresPerFoot);

    /// <summary>A share of the amount, half up to the cent.</summary>
    public Money ShareOf(Share share) => HalfUpToCent(Amount * share.Millionths / 1_000_000);

    /// <summary>The amount with its sign, two decimals, or up to four where it has them: <c>$12.50</c>, <c>$1.375</c>.</summary>
    public string With(string sign) => string.Create(CultureInfo.InvariantCulture, $"{sign}{Amount:#,##0.00##}");

    /// <summary>The amount as it is typed.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Amount:0.00##}");

    /// <inheritdoc/>
    public int CompareTo(Money other) => TenThousandths.CompareTo(other.TenThousandths);

    /// <summary>The sum.</summary>
    public static Money operator +(Money a, Money b) => new(a.TenThousandths + b.TenThousandths);

    /// <summary>How far two amounts are apart.</summary>
    public Money ApartFrom(Money other) => new(Math.Abs(TenThousandths - other.TenThousandths));

    /// <summary>Less.</summary>
    public static bool operator <(Money a, Money b) => a.TenThousandths < b.TenThousandths;

    /// <summary>More.</summary>
    public static bool operator >(Money a, Money b) => a.TenThousandths > b.TenThousandths;

    /// <summary>Not more.</summary>
    public static bool operator <=(Money a, Money b) => a.TenThousandths <= b.TenThousandths;

    /// <summary>Not less.</summary>
    public static bool operator >=(Money a, Money b) => a.TenThousandths >= b.TenThousandths;

    /// <summary>Amounts are never negative, so away from zero is up.</summary>
    private static Money HalfUpToCent(decimal amount) => new((long)(Math.Round(amount, 2, MidpointRounding.AwayFromZero) * PerUnit));
}
