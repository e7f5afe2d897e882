using CutShop.Paper.Words;
using CutShop.Shop.Store;
using CutShop.Takeoff.Tables;

namespace CutShop.Web.Shared;

/// <summary>What the site is told when it starts.</summary>
/// <param name="Database">The shop's database, open.</param>
/// <param name="Tables">Rope weights, screws and bits.</param>
/// <param name="Paper">Page size, units and words of printed paper.</param>
/// <param name="Address">The address that labels carry while the shop has set none, such as <c>https://shop.example</c>.</param>
public sealed record ShopSiteSettings(ShopDatabase Database, ShopTables Tables, PaperSettings Paper, Uri Address)
{
    /// <summary>The shop's folder, where the keys that cookies are sealed with are kept.</summary>
    public string Folder { get; init; } = Database.Folder;

    /// <summary>When and where the server makes backups by itself; null for never.</summary>
    public NightlySettings? Nightly { get; init; }

    /// <summary>True writes the log as a line of JSON an event, for whatever collects it.</summary>
    public bool JsonLog { get; init; }
}
