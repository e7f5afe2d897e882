using CutShop.Shop.Store;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

using static CutShop.Web.Settings.SettingsWords;

namespace CutShop.Web.Settings;

/// <summary>A field of a form of settings.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Words">Its label.</param>
/// <param name="Hint">What it means.</param>
/// <param name="Value">What stands in it, as typed.</param>
public sealed record SettingField(string Name, string Words, string Hint, string Value)
{
    /// <summary>True where several lines may be typed.</summary>
    public bool HasLines { get; init; }

    /// <summary>What can be chosen; empty where anything is typed.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];
}

/// <summary>A page that shows what is set, and stores what is typed or says what is wrong with it.</summary>
public abstract class SettingsForm : PageModel
{
    private IReadOnlyList<FieldProblem> _problems = [];

    /// <summary>True after storing.</summary>
    public bool Saved { get; private set; }

    /// <summary>The fields, in order.</summary>
    public abstract IReadOnlyList<SettingField> Fields { get; }

    /// <summary>What is wrong with a field, or null.</summary>
    public string? ProblemWith(string field) =>
        _problems.FirstOrDefault(problem => problem.Field == field) is { } problem ? T["Problem", problem.Value, problem.Said] : null;

    /// <summary>Shows what is set.</summary>
    public void OnGet() => Load();

    /// <summary>Fills the fields with what is set.</summary>
    protected abstract void Load();

    /// <summary>Shows how storing went: what is set now, or what was typed with what is wrong.</summary>
    protected IActionResult Stored(IReadOnlyList<FieldProblem> problems)
    {
        ArgumentNullException.ThrowIfNull(problems);
        _problems = problems;
        Saved = problems.Count == 0;
        if (Saved)
            Load();
        return Page();
    }
}
