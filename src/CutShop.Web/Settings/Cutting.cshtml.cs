using CutShop.Shop.Stock;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;

using static CutShop.Web.Settings.SettingsWords;

namespace CutShop.Web.Settings;

/// <summary>The form for how the shop cuts and buys rope.</summary>
[Authorize(Policy = Rights.ChangeSettings)]
public sealed class CuttingModel(CuttingSettingsShelf settings) : SettingsForm
{
    private CuttingTyped _typed = new("", "", "", "", "");

    /// <inheritdoc/>
    public override IReadOnlyList<SettingField> Fields =>
    [
        new(nameof(_typed.Kerf), T["Kerf"], T["KerfHint"], _typed.Kerf),
        new(nameof(_typed.Squaring), T["Squaring"], T["SquaringHint"], _typed.Squaring),
        new(nameof(_typed.FirstTrim), T["FirstTrim"], T["FirstTrimHint"], _typed.FirstTrim),
        new(nameof(_typed.Keep), T["Keep"], T["KeepHint"], _typed.Keep),
        new(nameof(_typed.StandardLengths), T["CoilsBought"], T["CoilsBoughtHint"], _typed.StandardLengths),
    ];

    /// <summary>Stores what was typed, or shows what is wrong with it.</summary>
    public async Task<IActionResult> OnPostAsync(string? kerf, string? squaring, string? firstTrim, string? keep, string? standardLengths, CancellationToken cancel)
    {
        _typed = new(kerf ?? "", squaring ?? "", firstTrim ?? "", keep ?? "", standardLengths ?? "");
        return Stored(await settings.SetCuttingAsync(_typed, Who.Of(User), cancel));
    }

    /// <inheritdoc/>
    protected override void Load()
    {
        var cutting = settings.Cutting;
        _typed = new(
            cutting.Allowances.Kerf.ToString(),
            cutting.Allowances.Squaring.ToString(),
            cutting.Allowances.FirstTrim.ToString(),
            cutting.Allowances.Keep.ToString(),
            CuttingSettingsShelf.Joined(cutting.StandardLengths));
    }
}
