using CutShop.Shop;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Pages.Drafts;

/// <summary>The few questions that a draft starts from.</summary>
[Authorize(Policy = May.ManageJobs)]
public sealed class NewModel(DraftShelf drafts) : PageModel
{
    /// <summary>The answers as typed.</summary>
    public DraftQuestions Asked { get; private set; } = new();

    /// <summary>What is wrong with the number of posts.</summary>
    public IReadOnlyList<FieldNote> PostsNotes { get; private set; } = [];

    /// <summary>This form's own key, so that it counts once.</summary>
    public string Key { get; private set; } = "";

    /// <summary>Asks.</summary>
    public void OnGet() => Key = FormKey.New();

    /// <summary>Makes the draft and goes to it.</summary>
    public async Task<IActionResult> OnPostAsync(string? key, CancellationToken cancel)
    {
        if (!FormKey.IsGood(key))
            return BadRequest();
        Asked = Answers(Request.Form);
        var form = Asked.ToForm();
        if (form.IsGood)
        {
            var id = await drafts.StartAsync(form.Value, Who.Of(User), $"draft {key}", cancel);
            return Redirect($"/drafts/{id}");
        }
        (Key, PostsNotes) = (key, [new(NoteKind.Error, form.Problem!)]);
        return Page();
    }

    private static DraftQuestions Answers(IFormCollection form)
    {
        return new()
        {
            Number = Said("number"),
            Customer = Said("customer"),
            Due = Said("due"),
            Unit = Said("unit"),
            Posts = Said("posts"),
            Shape = Said("shape"),
            Across = Said("across"),
            PostHeight = Said("postHeight"),
            Spacing = Said("spacing"),
            Width = Said("width"),
            Rows = Said("rows"),
            Material = Said("material"),
            Diameter = Said("diameter"),
            Sag = Said("sag"),
            Ends = Said("ends"),
            Between = Said("between"),
        };

        string Said(string name) => form[name].ToString() is { Length: <= 500 } said ? said : "";
    }
}
