using CutShop.Shop.Benches;

namespace CutShop.Web.Benches;

/// <summary>The jobs that are yet to be packed.</summary>
public sealed class PackModel(PackingBench packing) : BenchPage
{
    /// <summary>The jobs.</summary>
    public IReadOnlyList<ParcelListed> Jobs { get; private set; } = [];

    /// <summary>A scan that led nowhere, or null.</summary>
    public string? Lost { get; private set; }

    /// <summary>Shows the jobs.</summary>
    public void OnGet(string? lost) => (Lost, Jobs) = (lost, packing.Open());
}
