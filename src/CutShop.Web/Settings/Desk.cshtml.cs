using System.Globalization;
using CutShop.Shop.Orders;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;

using static CutShop.Web.Settings.SettingsWords;

namespace CutShop.Web.Settings;

/// <summary>The form for what the order desk warns of.</summary>
[Authorize(Policy = Rights.ChangeSettings)]
public sealed class DeskModel(PullLimit limit) : SettingsForm
{
    private string _typed = "";

    /// <inheritdoc/>
    public override IReadOnlyList<SettingField> Fields => [new("pull", T["PullLimit"], T["PullLimitHint"], _typed)];

    /// <summary>Stores what was typed, or shows what is wrong with it.</summary>
    public async Task<IActionResult> OnPostAsync(string? pull, CancellationToken cancel)
    {
        _typed = pull ?? "";
        return Stored(await limit.SetAsync(_typed, Who.Of(User), cancel));
    }

    /// <inheritdoc/>
    protected override void Load() => _typed = limit.Current.ToString(CultureInfo.InvariantCulture);
}
