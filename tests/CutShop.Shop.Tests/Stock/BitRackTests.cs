using CutShop.Shop.Tests.Orders;

namespace CutShop.Shop.Tests.Stock;

public sealed class BitRackTests
{
    private static readonly RackBit Odd = new(BitKind.Spade, Length.FromSixtyFourths(77));

    [Fact]
    public async Task The_rack_starts_as_the_program_s_and_keeps_what_the_shop_changes()
    {
        using var shop = new DeskShop();
        var rack = shop.Tables;
        var brought = ShopTables.Standard.Rack.Bits.Distinct().ToHashSet();
        Assert.Equal(ShopTables.Standard.Rack.Bits, shop.Tables.Current().Rack.Bits);
        Assert.Null(await rack.HangBitAsync(Odd, "test", DeskShop.Cancel));
        Assert.True(await rack.TakeBitOffAsync(brought.First(), "test", DeskShop.Cancel));
        Assert.False(await rack.TakeBitOffAsync(brought.First(), "test", DeskShop.Cancel));
        Assert.Equal(brought.Append(Odd).Except([brought.First()]).ToHashSet(), shop.Tables.Current().Rack.Bits.ToHashSet());
    }

    [Fact]
    public async Task Taking_off_a_bit_that_does_not_hang_there_changes_nothing()
    {
        using var shop = new DeskShop();
        Assert.False(await shop.Tables.TakeBitOffAsync(Odd, "test", DeskShop.Cancel));
        Assert.False(shop.Database.Read(ShopTablesShelf.HasOwnRack));
    }

    [Fact]
    public async Task An_empty_rack_stays_empty()
    {
        using var shop = new DeskShop();
        var rack = shop.Tables;
        foreach (var bit in ShopTables.Standard.Rack.Bits.Distinct())
            await rack.TakeBitOffAsync(bit, "test", DeskShop.Cancel);
        Assert.Empty(shop.Tables.Current().Rack.Bits);
    }

    [Fact]
    public async Task A_bit_without_a_size_is_refused()
    {
        using var shop = new DeskShop();
        Assert.Equal("diameter: 0\"; accepted: above zero, at most 1' 0\"", await shop.Tables.HangBitAsync(Odd with { Diameter = Length.Zero }, "test", DeskShop.Cancel));
    }
}
