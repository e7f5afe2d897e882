namespace CutShop.Shop.Tests.Store;

public sealed class LabelAddressShelfTests : IDisposable
{
    private readonly ShopOnDisk _shop = new();

    private LabelAddressShelf Shelf => new(_shop.Database);

    [Theory]
    [InlineData("https://shop.example")]
    [InlineData("http://192.0.2.7:8080/rope")]
    public async Task An_address_is_set_and_left_unset_again(string address)
    {
        Assert.Null(Shelf.Current);
        Assert.Empty(await Shelf.SetAsync($" {address} ", "Jory", TestContext.Current.CancellationToken));
        Assert.Equal(new Uri(address), Shelf.Current);
        Assert.Empty(await Shelf.SetAsync("", "Jory", TestContext.Current.CancellationToken));
        Assert.Null(Shelf.Current);
        Assert.Equal(2, _shop.Database.Read(session => session.Value<long>("SELECT count(*) FROM history WHERE subject = 'setting'")));
    }

    [Theory]
    [InlineData("shop.example")]
    [InlineData("ftp://shop.example")]
    [InlineData("https://shop.example/?a=b")]
    [InlineData("https://someone@shop.example")]
    [InlineData("https://")]
    [InlineData("javascript:alert(1)")]
    public async Task What_is_no_address_of_a_site_is_refused(string address)
    {
        Assert.Equal(address, Assert.Single(await Shelf.SetAsync(address, "Jory", TestContext.Current.CancellationToken)).Value);
        Assert.Null(Shelf.Current);
    }

    public void Dispose() => _shop.Dispose();
}
