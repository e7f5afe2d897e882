using System.Globalization;
using CutShop.Shop.Store;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;

using static CutShop.Web.Settings.SettingsWords;

namespace CutShop.Web.Settings;

/// <summary>The form for what leaves the shop.</summary>
[Authorize(Policy = Rights.ChangeSettings)]
public sealed class SendingModel(SendingSettingsShelf settings) : SettingsForm
{
    private SendingTyped _typed = new("", "", "");

    /// <inheritdoc/>
    public override IReadOnlyList<SettingField> Fields =>
    [
        new(nameof(_typed.ParcelLb), T["ParcelLb"], T["ParcelLbHint"], _typed.ParcelLb),
        new(nameof(_typed.Salt), T["Salt"], T["SaltHint"], _typed.Salt) { Choices = [SendingSettingsShelf.No, SendingSettingsShelf.Yes] },
        new(nameof(_typed.ReSetMonths), T["ReSetMonths"], T["ReSetMonthsHint"], _typed.ReSetMonths),
    ];

    /// <summary>Stores what was typed, or shows what is wrong with it.</summary>
    public async Task<IActionResult> OnPostAsync(string? parcelLb, string? salt, string? reSetMonths, CancellationToken cancel)
    {
        _typed = new(parcelLb ?? "", salt ?? "", reSetMonths ?? "");
        return Stored(await settings.SetAsync(_typed, Who.Of(User), cancel));
    }

    /// <inheritdoc/>
    protected override void Load()
    {
        var now = settings.Current;
        _typed = new(
            now.ParcelLb?.ToString(CultureInfo.InvariantCulture) ?? "",
            now.IsForSalt ? SendingSettingsShelf.Yes : SendingSettingsShelf.No,
            now.ReSetMonths.ToString(CultureInfo.InvariantCulture));
    }
}
