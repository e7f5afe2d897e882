using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Cli;

/// <summary>The coils on the rack of the invented shop at Lantern Quay.</summary>
internal static class DemoCoils
{
    private static readonly (RopeMaterial Material, string Diameter, string Lot, string Length, string? WhenFull, string Place)[] Coils =
    [
        (RopeMaterial.Polypropylene, "1 1/2 in", "P-2611", "600 ft", null, "rack 1"),
        (RopeMaterial.Polypropylene, "1 1/2 in", "P-2604", "62 ft", "600 ft", "rack 1"),
        (RopeMaterial.Polypropylene, "1 1/2 in", "P-2604", "31 ft 6 in", "600 ft", "rack 1"),
        (RopeMaterial.Polypropylene, "1 1/4 in", "P-2598", "200 ft", null, "rack 2"),
        (RopeMaterial.Manila, "1 1/2 in", "M-0417", "120 ft", "600 ft", "rack 3"),
        (RopeMaterial.Manila, "1 1/2 in", "M-0433", "600 ft", null, "rack 3"),
    ];

    /// <summary>Hangs the coils up, once however often it is called. There is no 2 in manila, so the lamp pier has something to buy.</summary>
    public static async Task HangAsync(ShopDatabase database, CancellationToken cancel)
    {
        var stock = new CoilShelf(database);
        foreach (var (number, coil) in Coils.Index())
        {
            var kind = new RopeKind(coil.Material, LengthText.Parse(coil.Diameter).OrThrow(), RopeKind.ThreeStrand);
            Length? whenFull = coil.WhenFull is { } full ? LengthText.Parse(full).OrThrow() : null;
            await stock.ReceiveAsync(new(kind, coil.Lot, LengthText.Parse(coil.Length).OrThrow(), coil.Place, whenFull), "demo", $"demo coil {number}", cancel);
        }
    }
}
