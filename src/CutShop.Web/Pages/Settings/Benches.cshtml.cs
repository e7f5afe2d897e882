using System.Globalization;
using CutShop.Shop;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Pages.Settings;

/// <summary>The form for how the benches work.</summary>
[Authorize(Policy = May.ChangeSettings)]
public sealed class BenchesModel(BenchSettingsShelf settings) : PageModel
{
    private IReadOnlyList<FieldProblem> _problems = [];
    private BenchTyped _typed = new("", "", "", "");

    /// <summary>True after storing.</summary>
    public bool Saved { get; private set; }

    /// <summary>The fields: name, label, hint and what stands in them.</summary>
    public IEnumerable<(string Name, string Words, string Hint, string Value)> Fields =>
    [
        (nameof(_typed.Over), "A piece may be over by", "a longer one is trimmed and measured again", _typed.Over),
        (nameof(_typed.Under), "A piece may be under by", "a shorter one is put aside and cut again", _typed.Under),
        (nameof(_typed.HandBackMinutes), "A forgotten ticket goes back after", "minutes without a tap", _typed.HandBackMinutes),
        (nameof(_typed.ShiftHours), "A slip can be undone for", "hours", _typed.ShiftHours),
    ];

    /// <summary>What is wrong with a field, or null.</summary>
    public string? ProblemWith(string field) =>
        _problems.FirstOrDefault(problem => problem.Field == field) is { } problem ? $"\"{problem.Value}\": {problem.Text}" : null;

    /// <summary>Shows what is set.</summary>
    public void OnGet() => Load();

    /// <summary>Stores what was typed, or shows what is wrong with it.</summary>
    public async Task<IActionResult> OnPostAsync(string? over, string? under, string? handBackMinutes, string? shiftHours, CancellationToken cancel)
    {
        _typed = new(over ?? "", under ?? "", handBackMinutes ?? "", shiftHours ?? "");
        _problems = await settings.SetAsync(_typed, Who.Of(User), cancel);
        Saved = _problems.Count == 0;
        if (Saved)
            Load();
        return Page();
    }

    private void Load()
    {
        var now = settings.Current;
        _typed = new(
            now.Over.ToString(),
            now.Under.ToString(),
            now.HandBackAfter.TotalMinutes.ToString("0", CultureInfo.InvariantCulture),
            now.Shift.TotalHours.ToString("0", CultureInfo.InvariantCulture));
    }
}
