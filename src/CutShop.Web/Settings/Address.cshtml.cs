using CutShop.Shop.Site;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;

using static CutShop.Web.Settings.SettingsWords;

namespace CutShop.Web.Settings;

/// <summary>The form for the address that labels carry.</summary>
[Authorize(Policy = Rights.ChangeSettings)]
public sealed class AddressModel(LabelAddressShelf shelf, LabelAddress labels) : SettingsForm
{
    private string _typed = "";

    /// <summary>The address that labels carry as of now.</summary>
    public Uri Now => labels.Now;

    /// <inheritdoc/>
    public override IReadOnlyList<SettingField> Fields =>
        [new("Address", T["TheShopsAddress"], T["AddressHint"], _typed)];

    /// <summary>Stores what was typed, or shows what is wrong with it.</summary>
    public async Task<IActionResult> OnPostAsync(string? address, CancellationToken cancel)
    {
        _typed = address ?? "";
        return Stored(await shelf.SetAsync(_typed, Who.Of(User), cancel));
    }

    /// <inheritdoc/>
    protected override void Load() => _typed = shelf.Current?.ToString() ?? "";
}
