using System.Globalization;
using CsCheck;

namespace CutShop.Shop.Tests.Orders;

public sealed class MoneyTests
{
    [Theory]
    [InlineData("12.5", 125_000)]
    [InlineData("0", 0)]
    [InlineData("0.0001", 1)]
    [InlineData(" 1.375 ", 13_750)]
    [InlineData("999999.9999", 9_999_999_999)]
    public void Money_is_read_exactly(string text, long tenThousandths) =>
        Assert.Equal(tenThousandths, Money.Parse(text).OrThrow().TenThousandths);

    [Theory]
    [InlineData("")]
    [InlineData("-1")]
    [InlineData("1,50")]
    [InlineData("1,000.00")]
    [InlineData("$5")]
    [InlineData("0.00001")]
    [InlineData("1000000")]
    [InlineData("1e3")]
    public void What_is_no_amount_is_refused_with_what_is_accepted(string text) =>
        Assert.Equal("accepted: an amount from 0 to 999999.9999 with at most four decimals, such as \"12.50\"", Money.Parse(text).Problem);

    // 0.25 a foot: 6 in are 0.125, which is half way and goes up; 0.2499 a foot: 0.12495 goes down.
    // 2.125 a foot: 39 ft 5 in are 39.41666... ft, 83.76041666..., 83.76.
    [Theory]
    [InlineData("0.25", "6 in", "0.13")]
    [InlineData("0.2499", "6 in", "0.12")]
    [InlineData("2.125", "39 ft 5 in", "83.76")]
    [InlineData("1", "0.12 in", "0.01")]
    [InlineData("1", "0.059 in", "0.00")]
    public void A_length_costs_half_up_to_the_cent(string foot, string length, string amount) =>
        Assert.Equal(amount, Money.Parse(foot).OrThrow().ForFeet(LengthText.Parse(length).OrThrow()).ToString());

    // 0.005 x 1 = 0.005 goes up to 0.01; 0.0049 goes down; 7 x 0.0025 = 0.0175 goes up to 0.02.
    [Theory]
    [InlineData("0.005", 1, "0.01")]
    [InlineData("0.0049", 1, "0.00")]
    [InlineData("0.0025", 7, "0.02")]
    [InlineData("4.25", 8, "34.00")]
    public void So_many_pieces_cost_half_up_to_the_cent(string price, int count, string amount) =>
        Assert.Equal(amount, Money.Parse(price).OrThrow().Times(count).ToString());

    // 6.25 % of 281.76 is 17.61; 10 % of 0.05 is 0.005, up to 0.01.
    [Theory]
    [InlineData("281.76", "6.25%", "17.61")]
    [InlineData("0.05", "10%", "0.01")]
    [InlineData("0.04", "10%", "0.00")]
    public void A_share_is_half_up_to_the_cent(string amount, string share, string tax) =>
        Assert.Equal(tax, Money.Parse(amount).OrThrow().ShareOf(Share.Parse(share).OrThrow()).ToString());

    [Fact]
    public void Money_prints_and_reads_the_same_in_every_culture()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal("$1,234.50", Money.Parse("1234.5").OrThrow().With("$"));
            Assert.Equal("€2.125", Money.Parse("2.125").OrThrow().With("€"));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void What_money_prints_it_reads_back() =>
        Gen.Long[0, 9_999_999_999].Sample(amount => Money.Parse(Money.FromTenThousandths(amount).ToString()).OrThrow().TenThousandths == amount);

    [Fact]
    public void An_amount_is_off_from_the_exact_one_by_at_most_half_a_cent() =>
        Gen.Select(Gen.Long[0, 1_000_000], Gen.Long[1, 100_000_000_000]).Sample((price, nanometres) =>
        {
            var amount = Money.FromTenThousandths(price).ForFeet(Length.FromNanometres(nanometres));
            // In ten-thousandths times the nanometres of a foot, so that nothing is divided.
            var error = ((Int128)amount.TenThousandths * 304_800_000) - ((Int128)price * nanometres);
            return amount.TenThousandths % 100 == 0 && error > -50 * (Int128)304_800_000 && error <= 50 * (Int128)304_800_000;
        });
}
