using System.Globalization;
using CutShop.Shop.Benches;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;

using static CutShop.Web.Settings.SettingsWords;

namespace CutShop.Web.Settings;

/// <summary>The form for how the benches work.</summary>
[Authorize(Policy = Rights.ChangeSettings)]
public sealed class BenchesModel(BenchSettingsShelf settings) : SettingsForm
{
    private BenchTyped _typed = new("", "", "", "", "");

    /// <inheritdoc/>
    public override IReadOnlyList<SettingField> Fields =>
    [
        new(nameof(_typed.Over), T["Over"], T["OverHint"], _typed.Over),
        new(nameof(_typed.Under), T["Under"], T["UnderHint"], _typed.Under),
        new(nameof(_typed.HandBackMinutes), T["HandBack"], T["HandBackHint"], _typed.HandBackMinutes),
        new(nameof(_typed.ShiftHours), T["Undo"], T["UndoHint"], _typed.ShiftHours),
        new(nameof(_typed.SpareScrews), T["SpareScrews"], T["SpareScrewsHint"], _typed.SpareScrews),
    ];

    /// <summary>Stores what was typed, or shows what is wrong with it.</summary>
    public async Task<IActionResult> OnPostAsync(
        string? over, string? under, string? handBackMinutes, string? shiftHours, string? spareScrews, CancellationToken cancel)
    {
        _typed = new(over ?? "", under ?? "", handBackMinutes ?? "", shiftHours ?? "", spareScrews ?? "");
        return Stored(await settings.SetAsync(_typed, Who.Of(User), cancel));
    }

    /// <inheritdoc/>
    protected override void Load()
    {
        var now = settings.Current;
        _typed = new(
            now.Over.ToString(),
            now.Under.ToString(),
            now.HandBackAfter.TotalMinutes.ToString("0", CultureInfo.InvariantCulture),
            now.Shift.TotalHours.ToString("0", CultureInfo.InvariantCulture),
            now.SpareScrews.ToString(CultureInfo.InvariantCulture));
    }
}
