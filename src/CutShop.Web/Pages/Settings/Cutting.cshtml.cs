using CutShop.Shop;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;

namespace CutShop.Web.Pages.Settings;

/// <summary>The form for how the shop cuts and buys rope.</summary>
[Authorize(Policy = May.ChangeSettings)]
public sealed class CuttingModel(SettingsShelf settings) : SettingsForm
{
    private CuttingTyped _typed = new("", "", "", "", "");

    /// <inheritdoc/>
    public override IReadOnlyList<SettingField> Fields =>
    [
        new(nameof(_typed.Kerf), "Kerf", "lost at each cut", _typed.Kerf),
        new(nameof(_typed.Squaring), "Squaring", "taken off to square the end at each cut", _typed.Squaring),
        new(nameof(_typed.FirstTrim), "First trim", "taken off a coil's ragged end", _typed.FirstTrim),
        new(nameof(_typed.Keep), "Keep offcuts from", "anything shorter is scrap", _typed.Keep),
        new(nameof(_typed.StandardLengths), "Coils are bought in", "lengths with a semicolon between; empty if none can be bought", _typed.StandardLengths),
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
            SettingsShelf.Joined(cutting.StandardLengths));
    }
}
