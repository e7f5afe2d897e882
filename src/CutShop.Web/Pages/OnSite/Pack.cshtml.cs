using CutShop.Shop;
using CutShop.Web.OnSite;
using CutShop.Web.Words;

namespace CutShop.Web.Pages.OnSite;

/// <summary>A job's site pack: its lines and pieces, to be stored on the phone and taken along.</summary>
public sealed class PackModel(SitePacks packs, SiteText text) : LabelPage(text)
{
    /// <summary>The pack.</summary>
    public SitePack? Found { get; private set; }

    /// <inheritdoc/>
    protected override string NoneHasIt => T["No site pack has this code. It may have been revoked: scan the code on the newest packing list, or ask the shop."];

    /// <summary>Shows the pack.</summary>
    public void OnGet() => Found = Find(packs.Find, _ => LabelState.Good);
}
