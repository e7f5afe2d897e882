using CutShop.Shop.Site;

namespace CutShop.Web.Shared;

/// <summary>The address that labels carry: what the shop has set, else what the site was started with.</summary>
public sealed class LabelAddress(LabelAddressShelf set, ShopSiteSettings site)
{
    /// <summary>The address as of now.</summary>
    public Uri Now => set.Current ?? site.Address;
}
