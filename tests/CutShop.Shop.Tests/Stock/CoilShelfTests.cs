namespace CutShop.Shop.Tests.Stock;

public sealed class CoilShelfTests : IDisposable
{
    private static readonly RopeKind Kind = new(RopeMaterial.Polypropylene, LengthText.Parse("1 1/2 in").OrThrow(), RopeKind.ThreeStrand);

    private readonly ShopOnDisk _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_coil_that_came_in_hangs_there_untouched()
    {
        var answer = await ReceiveAsync("600 ft");
        Assert.True(answer.IsDone);
        var coil = _shop.Stock.Find(answer.Mark)!;
        Assert.Equal((Feet(600), Feet(600), "L7", "rack 1", "in stock", true), (coil.Whole, coil.Left, coil.Lot, coil.Place, coil.State, coil.IsUntouched));
        Assert.Equal(Kind, coil.Kind);
    }

    [Fact]
    public async Task The_same_request_twice_receives_one_coil()
    {
        var first = await ReceiveAsync("600 ft", key: "r1");
        var second = await ReceiveAsync("600 ft", key: "r1");
        Assert.Equal(first, second);
        Assert.Single(_shop.Stock.InHand());
    }

    [Theory]
    [InlineData("0 in", "L7", "length")]
    [InlineData("99999 m", "L7", "length")]
    [InlineData("600 ft", " ", "lot")]
    public async Task What_is_wrong_with_a_coil_is_named_and_nothing_is_stored(string length, string lot, string field)
    {
        var answer = await _shop.Stock.ReceiveAsync(new(Kind, lot, LengthText.Parse(length).OrThrow(), "rack 1"), "Ada", "r1", Cancel);
        Assert.StartsWith(field + ":", answer.Problem?.ToString(), StringComparison.Ordinal);
        Assert.Equal(0, _shop.Count("coils"));
        Assert.Equal(0, _shop.Count("requests"));
    }

    [Fact]
    public async Task A_coil_that_was_opened_before_it_came_in_is_no_full_one_and_its_ledger_says_what_is_gone()
    {
        var answer = await _shop.Stock.ReceiveAsync(new(Kind, "L7", Feet(62), "rack 1", WhenFull: Feet(600)), "Ada", "r1", Cancel);
        Assert.Equal(answer, await _shop.Stock.ReceiveAsync(new(Kind, "L7", Feet(62), "rack 1", WhenFull: Feet(600)), "Ada", "r1", Cancel));
        var coil = _shop.Stock.Find(answer.Mark)!;
        Assert.Equal((Feet(600), Feet(62), "in stock", false), (coil.Whole, coil.Left, coil.State, coil.IsUntouched));
        Assert.Equal(Feet(538), _shop.Database.Read(session => session.Value<Length>("SELECT CAST(sum(nm) AS bigint) FROM rope_uses WHERE kind = 'correction'")));
    }

    [Theory]
    [InlineData(62)]
    [InlineData(61)]
    [InlineData(40_000)]
    public async Task A_full_coil_holds_more_than_is_left_of_it(int whenFull)
    {
        var answer = await _shop.Stock.ReceiveAsync(new(Kind, "L7", Feet(62), "rack 1", WhenFull: Feet(whenFull)), "Ada", "r1", Cancel);
        Assert.StartsWith("when full: ", answer.Problem?.ToString(), StringComparison.Ordinal);
        Assert.Equal(0, _shop.Count("coils"));
    }

    [Theory]
    [InlineData("12 in", true)]
    [InlineData("304.800001 mm", false)]
    [InlineData("40 m", false)]
    public async Task Rope_is_at_most_a_foot_thick(string diameter, bool taken)
    {
        var answer = await _shop.Stock.ReceiveAsync(new(Kind with { Diameter = LengthText.Parse(diameter).OrThrow() }, "L7", Feet(600), "rack 1"), "Ada", "r1", Cancel);
        Assert.Equal(taken, answer.IsDone);
        Assert.Equal(taken, answer.Problem?.ToString().EndsWith("; accepted: above zero, at most 12 in (304.8 mm)", StringComparison.Ordinal) is null);
    }

    [Fact]
    public async Task A_correction_keeps_its_reason_in_the_history()
    {
        var mark = (await ReceiveAsync("600 ft")).Mark;
        Assert.True((await _shop.Stock.AdjustAsync(mark, Feet(590), "ten feet were frayed", "Ada", "a1", Cancel)).IsDone);
        Assert.Equal(Feet(590), _shop.Stock.Find(mark)!.Left);
        Assert.Equal(
            ("coil-corrected", Feet(600), Feet(590), "ten feet were frayed"),
            _shop.Database.Read(session => session.Value<(string, Length, Length, string)>("SELECT what, before_nm, after_nm, reason FROM history ORDER BY id DESC LIMIT 1")));
        var line = new HistoryShelf(_shop.Database).Of("coil", 1)[^1];
        Assert.Equal(("corrected", "600' 0\"", "590' 0\"", "ten feet were frayed"), (line.What, line.Before, line.After, line.Reason));
    }

    [Theory]
    [InlineData("601 ft", "more", "left")]
    [InlineData("0 in", "gone", "left")]
    [InlineData("590 ft", "", "reason")]
    public async Task A_correction_that_cannot_be_is_refused(string left, string reason, string field)
    {
        var mark = (await ReceiveAsync("600 ft")).Mark;
        var answer = await _shop.Stock.AdjustAsync(mark, LengthText.Parse(left).OrThrow(), reason, "Ada", "a1", Cancel);
        Assert.StartsWith(field + ":", answer.Problem?.ToString(), StringComparison.Ordinal);
        Assert.Equal(Feet(600), _shop.Stock.Find(mark)!.Left);
    }

    [Fact]
    public async Task A_retired_coil_is_off_the_rack_and_cannot_be_changed()
    {
        var mark = (await ReceiveAsync("600 ft")).Mark;
        Assert.True((await _shop.Stock.RetireAsync(mark, "mildew", "Ada", "x1", Cancel)).IsDone);
        Assert.Empty(_shop.Stock.InHand());
        Assert.StartsWith("coil:", (await _shop.Stock.AdjustAsync(mark, Feet(1), "try", "Ada", "a1", Cancel)).Problem?.ToString(), StringComparison.Ordinal);
    }

    public void Dispose() => _shop.Dispose();

    private static Length Feet(int feet) => Length.Foot * feet;

    private Task<StockAnswer> ReceiveAsync(string length, string key = "r1") =>
        _shop.Stock.ReceiveAsync(new(Kind, "L7", LengthText.Parse(length).OrThrow(), "rack 1"), "Ada", key, Cancel);
}
