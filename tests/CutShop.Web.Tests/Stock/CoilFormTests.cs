using System.Net;

namespace CutShop.Web.Tests.Stock;

/// <summary>Lengths on the forms of coils are typed as everywhere else in the shop.</summary>
public sealed class CoilFormTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(false, "1 1/2", "a number alone is inches")]
    [InlineData(true, "38.1", "a number alone is millimetres")]
    public async Task A_bare_diameter_is_in_the_unit_that_leads_for_the_person(bool millimetresFirst, string diameter, string hint)
    {
        await using var shop = await RunningShop.StartAsync();
        var name = RunningShop.NameOf(Role.Owner);
        Assert.True((await shop.People.SetUnitsAsync(shop.People.Find(name)!.Id, millimetresFirst, name, Cancel)).IsDone);
        Assert.Contains(hint, await shop.Client.GetStringAsync(new Uri("/stock", UriKind.Relative), Cancel), StringComparison.Ordinal);
        using (await SendAsync(shop, diameter, "600 ft")) { }
        var coil = new CoilShelf(shop.Database).Find("K0001")!;
        Assert.Equal((Length.FromSixtyFourths(96), Length.Foot * 600), (coil.Kind.Diameter, coil.Whole));
    }

    // Whoever types 600 means feet or metres, never inches: nothing is guessed.
    [Fact]
    public async Task A_coil_s_length_has_its_unit_and_so_has_what_is_left_of_it()
    {
        await using var shop = await RunningShop.StartAsync();
        using (var answer = await SendAsync(shop, "1 1/2", "600"))
            Assert.Contains("the unit is missing", await answer.TextAsync(), StringComparison.Ordinal);
        using (var answer = await SendAsync(shop, "1 1/2", "62 ft", whenFull: "600"))
            Assert.Contains("When full: ", await answer.TextAsync(), StringComparison.Ordinal);
        Assert.Empty(new CoilShelf(shop.Database).InHand());
        using (await SendAsync(shop, "1 1/2", "600 ft", whenFull: "900 ft")) { }
        foreach (var (left, is585) in new[] { ("585", false), ("585 ft", true) })
        {
            using (await shop.Client.SendFormAsync("/stock/K0001?handler=Adjust", ("RequestKey", FormKey.New() + "-a"), ("Left", left), ("Reason", "frayed"))) { }
            Assert.Equal(Length.Foot * (is585 ? 585 : 600), new CoilShelf(shop.Database).Find("K0001")!.Left);
        }
    }

    [Theory]
    [InlineData("40 m", "600 ft", "diameter: 40000 mm; accepted: above zero, at most 12 in (304.8 mm)")]
    [InlineData("1 1/2 in", "0 ft", "length: 0\"; accepted: above zero, at most 10 km (about 32,800 ft)")]
    [InlineData("thick", "600 ft", "Diameter: \"thick\": ")]
    public async Task What_is_wrong_is_said_without_marks_that_nobody_types(string diameter, string length, string said)
    {
        await using var shop = await RunningShop.StartAsync();
        using var answer = await SendAsync(shop, diameter, length);
        var page = await answer.TextAsync();
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains(said, page, StringComparison.Ordinal);
        Assert.DoesNotContain('\\', page);
        Assert.Empty(new CoilShelf(shop.Database).InHand());
    }

    private static Task<HttpResponseMessage> SendAsync(RunningShop shop, string diameter, string length, string whenFull = "") => shop.Client.SendFormAsync(
        "/stock",
        ("RequestKey", FormKey.New()),
        ("Material", nameof(RopeMaterial.Polypropylene)),
        ("Diameter", diameter),
        ("Construction", RopeKind.ThreeStrand),
        ("Lot", "P-2611"),
        ("CoilLength", length),
        ("WhenFull", whenFull),
        ("Place", ""));
}
