using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Orders;

public sealed class PriceBookTests
{
    private static readonly DateOnly Today = new(2027, 1, 11);

    [Fact]
    public async Task The_list_of_the_latest_day_not_after_today_counts()
    {
        using var shop = new DeskShop();
        Assert.Null(shop.Prices.On(Today));
        await shop.KeepPricesAsync(new(2027, 1, 1), "2.00");
        await shop.KeepPricesAsync(new(2027, 2, 1), "3.00");
        Assert.Null(shop.Prices.On(new(2026, 12, 31)));
        Assert.Equal("2.00", shop.Prices.On(new(2027, 1, 31))!.Ropes[0].Foot.ToString());
        Assert.Equal("3.00", shop.Prices.On(new(2027, 2, 1))!.Ropes[0].Foot.ToString());
    }

    [Fact]
    public async Task A_correction_for_the_same_day_takes_the_older_list_s_place_and_both_are_kept()
    {
        using var shop = new DeskShop();
        await shop.KeepPricesAsync(Today, "2.00");
        await shop.KeepPricesAsync(Today, "2.10");
        Assert.Equal("2.10", shop.Prices.On(Today)!.Ropes[0].Foot.ToString());
        Assert.Equal(2, shop.All<long>("SELECT id FROM price_lists").Count);
        Assert.Single(shop.Prices.From(Today));
    }

    [Fact]
    public async Task A_list_reads_back_as_it_was_kept()
    {
        using var shop = new DeskShop();
        await shop.KeepPricesAsync(Today);
        var (kept, wanted) = (shop.Prices.On(Today)!, DeskShop.List(Today));
        Assert.Equal(wanted.Ropes, kept.Ropes);
        Assert.Equal(wanted.Bores, kept.Bores);
        Assert.Equal((wanted.Cut, wanted.Packing, wanted.Delivery, wanted.Tax, wanted.QuoteDays), (kept.Cut, kept.Packing, kept.Delivery, kept.Tax, kept.QuoteDays));
    }

    [Fact]
    public async Task A_list_sent_twice_is_kept_once()
    {
        using var shop = new DeskShop();
        var first = await shop.KeepPricesAsync(Today);
        Assert.Equal(first, await shop.KeepPricesAsync(Today));
        Assert.Single(shop.All<long>("SELECT id FROM price_lists"));
    }

    [Fact]
    public async Task A_broken_statement_leaves_no_half_list()
    {
        using var shop = new DeskShop();
        var statements = await shop.BreakEachStatementAsync(() => shop.KeepPricesAsync(Today));
        Assert.Equal(6, statements);
        Assert.NotNull(shop.Prices.On(Today));
    }

    [Fact]
    public void Every_wrong_field_of_a_typed_list_is_named()
    {
        var problems = new Dictionary<string, Sentence>();
        var form = new PriceForm(
            "2027-13-01", "four", "35", "120", "6.25", "0", [new("polypropylene", "1 1", "2"), new("polypropylene", "", "")], [new("2 in", ""), new("", "")]);
        Assert.Null(form.Read("$", problems));
        Assert.Equal(["bores[0].bore", "cut", "quoteDays", "ropes[0].diameter", "validFrom"], problems.Keys.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_bare_size_is_inches_and_the_shops_sign_may_stand_at_an_amount()
    {
        var problems = new Dictionary<string, Sentence>();
        var form = PriceForm.From(list: null, Today) with
        {
            Cut = "4.50 kr",
            Packing = "kr35",
            Ropes = [new("polypropylene", "1.5", "kr 2.125"), new("manila", "2", "3.40"), new("nylon", "40 mm", "5")],
            Bores = [new("1 5/8", "3"), new("2", "4")],
        };
        var list = form.Read("kr", problems)!;
        Assert.Empty(problems);
        Assert.Equal([("1 1/2 in", "2.125"), ("2 in", "3.40"), ("40 mm", "5.00")], list.Ropes.Select(rope => (LengthText.Brief(rope.Diameter), rope.Foot.ToString())));
        Assert.Equal(["1 5/8 in", "2 in"], list.Bores.Select(bore => LengthText.Brief(bore.UpTo)));
        Assert.Equal(("4.50", "35.00"), (list.Cut.ToString(), list.Packing.ToString()));
        Assert.Null((form with { Cut = "$4.50" }).Read("kr", problems));
        Assert.Equal("cut", Assert.Single(problems).Key);
    }

    [Fact]
    public void A_rope_that_is_in_a_typed_list_twice_is_named()
    {
        var problems = new Dictionary<string, Sentence>();
        var form = PriceForm.From(list: null, Today) with { Cut = "1", Ropes = [new("manila", "2 in", "2"), new("manila", "50.8 mm", "3")] };
        Assert.Null(form.Read("$", problems));
        Assert.Equal("ropes[1].diameter", Assert.Single(problems).Key);
    }

    [Theory]
    [InlineData("€", null)]
    [InlineData("", "accepted: 1 to 4 characters, no digits, such as \"$\"")]
    [InlineData("5", "accepted: 1 to 4 characters, no digits, such as \"$\"")]
    public async Task The_currency_sign_is_a_setting(string sign, string? problem)
    {
        using var shop = new DeskShop();
        Assert.Equal(problem, (await shop.Prices.SetCurrencyAsync(sign, "test", DeskShop.Cancel))?.ToString());
        Assert.Equal(problem is null ? sign : "$", shop.Prices.Currency());
    }

    [Fact]
    public void A_rope_without_a_price_is_named_and_there_is_no_whole_price()
    {
        var form = SmallJobs.FourPosts() with { Rope = new() { Material = "manila", Diameter = "2 in" } };
        var priced = Pricing.Of(DraftReading.Of(form, ShopTables.Standard).Takeoff!, DeskShop.List(Today));
        Assert.False(priced.IsWhole);
        Assert.Equal(["2 in manila rope"], priced.Missing.Select(missing => missing.ToString()));
    }

    [Fact]
    public void A_bore_wider_than_every_band_is_named()
    {
        var list = DeskShop.List(Today);
        var priced = Pricing.Of(DraftReading.Of(SmallJobs.FourPosts(), ShopTables.Standard).Takeoff!, list with { Bores = [list.Bores[0]] });
        Assert.Equal(["a bore with a 1 5/8 in bit"], priced.Missing.Select(missing => missing.ToString()));
    }
}
