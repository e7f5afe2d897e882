using CutShop.Shop.Store;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;

using static CutShop.Web.Settings.SettingsWords;

namespace CutShop.Web.Settings;

/// <summary>The form for who the shop is.</summary>
[Authorize(Policy = Rights.ChangeSettings)]
public sealed class LetterheadModel(LetterheadShelf settings) : SettingsForm
{
    private Letterhead _typed = new("", "");

    /// <inheritdoc/>
    public override IReadOnlyList<SettingField> Fields =>
    [
        new(nameof(_typed.Name), T["NameOfTheShop"], "", _typed.Name),
        new(nameof(_typed.Address), T["AddressTelephoneMail"], T["AddressLines"], _typed.Address) { HasLines = true },
    ];

    /// <summary>Stores what was typed, or shows what is wrong with it.</summary>
    public async Task<IActionResult> OnPostAsync(string? name, string? address, CancellationToken cancel)
    {
        _typed = new(name ?? "", address ?? "");
        return Stored(await settings.SetAsync(_typed, Who.Of(User), cancel));
    }

    /// <inheritdoc/>
    protected override void Load() => _typed = settings.Current;
}
