using CutShop.Shop.Site;

using static CutShop.Web.Site.SiteWords;

namespace CutShop.Web.Site;

/// <summary>A job's site pack: its lines and pieces, to be stored on the phone and taken along.</summary>
public sealed class SitePackModel(SitePackShelf packs) : LabelPage
{
    /// <summary>The pack.</summary>
    public SitePack? Found { get; private set; }

    /// <inheritdoc/>
    protected override string NoneHasIt => T["NoSuchPack"];

    /// <summary>Shows the pack.</summary>
    public void OnGet() => Found = Find(packs.Find, _ => LabelState.Good);
}
