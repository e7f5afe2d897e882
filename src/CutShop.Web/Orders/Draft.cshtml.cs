using System.Globalization;
using CutShop.Shop.Jobs;
using CutShop.Shop.Orders;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Orders;

/// <summary>The editor of a draft.</summary>
[RequestFormLimits(ValueCountLimit = 20_000)]
[Authorize(Policy = Rights.ManageJobs)]
public sealed class DraftModel(
    DraftShelf drafts, DraftPreviews previews, QuoteDesk quotes, DraftIntake intake, JobChanging changing) : PageModel
{
    /// <summary>The draft as stored.</summary>
    public Draft Draft { get; private set; } = null!;

    /// <summary>What the page shows of it.</summary>
    public DraftView View { get; private set; } = null!;

    /// <summary>What somebody else changed meanwhile, or null.</summary>
    public DraftConflict? Conflict { get; private set; }

    /// <summary>Why a step was not taken, or null.</summary>
    public string? Problem { get; private set; }

    /// <summary>What was pasted and could not be taken, by line.</summary>
    public (int Line, string Text)? Pasted { get; private set; }

    /// <summary>The quotes made from it.</summary>
    public IReadOnlyList<QuoteListed> Quotes { get; private set; } = [];

    /// <summary>Shows the draft.</summary>
    public IActionResult OnGet(long id) => drafts.Find(id) is { } draft ? Show(draft, draft.Form) : NotFound();

    /// <summary>Keeps what was typed, then does what was asked.</summary>
    public async Task<IActionResult> OnPostAsync(long id, long version, string? step, CancellationToken cancel)
    {
        if (!Request.Form.ContainsKey("number"))
            return BadRequest();
        var typed = Typed();
        if (await drafts.SaveAsync(id, version, typed, Who.Of(User), cancel) is not { } saved)
            return NotFound();
        if (saved.Conflict is { } conflict)
            return ShowConflict(saved.Draft, typed, conflict);
        if (!saved.Draft.IsOpen)
            return Redirect($"/drafts/{id}");
        return await StepAsync(saved.Draft, (step ?? "check").Split(' '), cancel);
    }

    /// <summary>
    /// Shows what a draft comes to with the fields that are sent in place of a version's own, without keeping it: all but the plan,
    /// which is drawn whole and can come a moment later.
    /// </summary>
    public IActionResult OnPostPreview(long id, long version) => Previewed("_Preview", id, version);

    /// <summary>Shows the plan of the same.</summary>
    public IActionResult OnPostPlan(long id, long version) => Previewed("_Plan", id, version);

    /// <summary>Keeps what was typed so far.</summary>
    public async Task<IActionResult> OnPostSaveAsync(long id, long version, CancellationToken cancel)
    {
        if (!Request.Form.ContainsKey("number") || await drafts.SaveAsync(id, version, Typed(), Who.Of(User), cancel) is not { } saved)
            return NotFound();
        return new JsonResult(new { version = saved.Draft.Version }) { StatusCode = saved.IsKept ? StatusCodes.Status200OK : StatusCodes.Status409Conflict };
    }

    /// <summary>Keeps the fields chosen from two people's drafts.</summary>
    public async Task<IActionResult> OnPostMergeAsync(long id, long version, CancellationToken cancel)
    {
        if (drafts.Find(id) is not { } stored || !Request.Form.ContainsKey("number"))
            return NotFound();
        var mine = Typed();
        if (Request.Form["choose.all"] == "theirs")
            return Redirect($"/drafts/{id}");
        const string prefix = "choose.";
        var theirs = Request.Form.Where(pair => pair.Key.StartsWith(prefix, StringComparison.Ordinal) && pair.Value == "theirs")
            .Select(pair => pair.Key[prefix.Length..]).ToHashSet();
        // A third change meanwhile is shown again rather than merged into.
        var merged = stored.Version == version ? DraftConflict.Merge(stored.Form, mine, theirs) : mine;
        if (await drafts.SaveAsync(id, version, merged, Who.Of(User), cancel) is not { } saved)
            return NotFound();
        return saved.Conflict is { } conflict ? ShowConflict(saved.Draft, mine, conflict) : Redirect($"/drafts/{id}");
    }

    /// <summary>Takes the draft up again after it was put away.</summary>
    public async Task<IActionResult> OnPostReopenAsync(long id, CancellationToken cancel)
    {
        await drafts.ReopenAsync(id, Who.Of(User), cancel);
        return Redirect($"/drafts/{id}");
    }

    private IActionResult Previewed(string part, long id, long version)
    {
        var typed = Request.Form.ToDictionary(pair => pair.Key, pair => pair.Value.ToString());
        return previews.Of(id, version, typed) is { } preview ? Partial(part, Viewed(preview, [.. typed.Keys])) : NotFound();
    }

    private async Task<IActionResult> StepAsync(Draft draft, string[] step, CancellationToken cancel)
    {
        var form = draft.Form;
        var (line, at) = (Number(step, 1), Number(step, 2));
        return step[0] switch
        {
            "add-post" => await EditedAsync(draft, DraftEdits.AddPost(form, line, at), $"lines[{line}].posts[{at + 1}].mark", cancel),
            "remove-post" => await EditedAsync(draft, DraftEdits.RemovePost(form, line, at), $"lines[{line}].posts[{Math.Max(at - 1, 0)}].mark", cancel),
            "add-row" => await EditedAsync(draft, DraftEdits.AddRow(form, line), $"lines[{line}].rows[{form.Lines.ElementAtOrDefault(line)?.Rows.Count}].height", cancel),
            "remove-row" => await EditedAsync(draft, DraftEdits.RemoveRow(form, line, at), $"lines[{line}].rows[0].mark", cancel),
            "add-line" => await EditedAsync(draft, DraftEdits.AddLine(form), $"lines[{form.Lines.Count}].mark", cancel),
            "duplicate-line" => await EditedAsync(draft, DraftEdits.DuplicateLine(form, line), $"lines[{form.Lines.Count}].mark", cancel),
            "remove-line" => await EditedAsync(draft, DraftEdits.RemoveLine(form, line), "lines[0].mark", cancel),
            "put-on-curve" => await EditedAsync(draft, DraftEdits.PutOnCurve(form, line), $"lines[{line}].curve.radius", cancel),
            "close-to-ring" => await EditedAsync(draft, DraftEdits.CloseToRing(form, line), $"lines[{line}].sections[{form.Lines.ElementAtOrDefault(line)?.Posts.Count - 1}].width", cancel),
            "measure-sections" => await EditedAsync(draft, DraftEdits.MeasureSections(form, line), $"lines[{line}].sections[0].width", cancel),
            "paste" => await PasteAsync(draft, line, cancel),
            "change-job" => await EditedAsync(draft, form with { Changes = form.Number.Trim() }, "number", cancel),
            "quote" => await QuoteAsync(draft, cancel),
            "take-in" => await TakeInAsync(draft, cancel),
            "drop" => await DropAsync(draft, cancel),
            _ => Redirect(At() is { } field ? $"/drafts/{draft.Id}?at={Uri.EscapeDataString(field)}" : $"/drafts/{draft.Id}"),
        };
    }

    private async Task<IActionResult> EditedAsync(Draft draft, DraftForm edited, string goTo, CancellationToken cancel)
    {
        var saved = (await drafts.SaveAsync(draft.Id, draft.Version, edited, Who.Of(User), cancel))!;
        return saved.Conflict is { } conflict ? ShowConflict(saved.Draft, edited, conflict) : Redirect($"/drafts/{draft.Id}#{goTo}");
    }

    private async Task<IActionResult> PasteAsync(Draft draft, int line, CancellationToken cancel)
    {
        var text = Request.Form[$"paste[{line}]"].ToString();
        var taken = SpreadsheetPaste.Into(draft.Form, line, text);
        if (taken.IsGood)
            return await EditedAsync(draft, taken.Value, $"lines[{line}].posts[0].mark", cancel);
        (Problem, Pasted) = (taken.Problem, (line, text));
        return Show(draft, draft.Form);
    }

    private async Task<IActionResult> QuoteAsync(Draft draft, CancellationToken cancel)
    {
        var made = await quotes.MakeAsync(draft.Id, draft.Version, Who.Of(User), cancel);
        return made.IsDone ? Redirect($"/quotes/{made.Value}") : Refused(draft, made.Problem!.ToString());
    }

    private async Task<IActionResult> TakeInAsync(Draft draft, CancellationToken cancel)
    {
        if (changing.OfNumber(draft.Form.Number.Trim()) is { } stored)
            return draft.Form.IsChangeOf(stored.Number) ? Redirect($"/drafts/{draft.Id}/change") : Show(draft, draft.Form);
        var taken = await intake.TakeInAsync(draft.Id, draft.Version, Who.Of(User), cancel);
        return taken.IsDone ? Redirect($"/jobs/{Uri.EscapeDataString(taken.Value)}") : Refused(draft, taken.Problem!.ToString());
    }

    private async Task<IActionResult> DropAsync(Draft draft, CancellationToken cancel)
    {
        await drafts.DropAsync(draft.Id, Who.Of(User), cancel);
        return Redirect($"/drafts/{draft.Id}");
    }

    private PageResult Refused(Draft draft, string problem)
    {
        Problem = problem;
        return Show(draft, draft.Form);
    }

    private PageResult ShowConflict(Draft stored, DraftForm mine, DraftConflict conflict)
    {
        Conflict = conflict;
        return Show(stored, mine);
    }

    private PageResult Show(Draft draft, DraftForm form)
    {
        (Draft, View) = (draft, Viewed(previews.Of(form), []));
        Quotes = quotes.OfDraft(draft.Id);
        return Page();
    }

    private DraftView Viewed(DraftPreview preview, HashSet<string> changed) => new(preview, PersonUnits.PaperFor(HttpContext), changed, At());

    /// <summary>The field that somebody types in or has chosen to look at.</summary>
    private string? At() => Request.HasFormContentType ? Request.Form["at"] : Request.Query["at"];

    private DraftForm Typed() => DraftFields.Read(Request.Form.Select(pair => KeyValuePair.Create(pair.Key, pair.Value.ToString())));

    private static int Number(string[] step, int at) =>
        step.Length > at && int.TryParse(step[at], NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : -1;
}
