using CutShop.Shop;
using CutShop.Web.OnSite;
using static CutShop.Web.Words.SiteWords;

namespace CutShop.Web.Pages.OnSite;

/// <summary>A job's site pack: its lines and pieces, to be stored on the phone and taken along.</summary>
public sealed class PackModel(SitePacks packs) : LabelPage
{
    /// <summary>The pack.</summary>
    public SitePack? Found { get; private set; }

    /// <inheritdoc/>
    protected override string NoneHasIt => T["NoSuchPack"];

    /// <summary>Shows the pack.</summary>
    public void OnGet() => Found = Find(packs.Find, _ => LabelState.Good);
}
