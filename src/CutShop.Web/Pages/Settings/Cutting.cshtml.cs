using CutShop.Shop;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Pages.Settings;

/// <summary>The form for how the shop cuts and buys rope.</summary>
[Authorize(Policy = May.ChangeSettings)]
public sealed class CuttingModel(SettingsShelf settings) : PageModel
{
    private IReadOnlyList<FieldProblem> _problems = [];
    private CuttingTyped _typed = new("", "", "", "", "");

    /// <summary>True after storing.</summary>
    public bool Saved { get; private set; }

    /// <summary>The fields: name, label, hint and what stands in them.</summary>
    public IEnumerable<(string Name, string Words, string Hint, string Value)> Fields =>
    [
        (nameof(_typed.Kerf), "Kerf", "lost at each cut", _typed.Kerf),
        (nameof(_typed.Squaring), "Squaring", "taken off to square the end at each cut", _typed.Squaring),
        (nameof(_typed.FirstTrim), "First trim", "taken off a coil's ragged end", _typed.FirstTrim),
        (nameof(_typed.Keep), "Keep offcuts from", "anything shorter is scrap", _typed.Keep),
        (nameof(_typed.StandardLengths), "Coils are bought in", "lengths with a semicolon between; empty if none can be bought", _typed.StandardLengths),
    ];

    /// <summary>What is wrong with a field, or null.</summary>
    public string? ProblemWith(string field) =>
        _problems.FirstOrDefault(problem => problem.Field == field) is { } problem ? $"\"{problem.Value}\": {problem.Text}" : null;

    /// <summary>Shows what is set.</summary>
    public void OnGet() => Load();

    /// <summary>Stores what was typed, or shows what is wrong with it.</summary>
    public async Task<IActionResult> OnPostAsync(string? kerf, string? squaring, string? firstTrim, string? keep, string? standardLengths, CancellationToken cancel)
    {
        _typed = new(kerf ?? "", squaring ?? "", firstTrim ?? "", keep ?? "", standardLengths ?? "");
        _problems = await settings.SetCuttingAsync(_typed, Who.Of(User), cancel);
        Saved = _problems.Count == 0;
        if (Saved)
            Load();
        return Page();
    }

    private void Load()
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
