using CutShop.Shop.Orders;
using CutShop.Shop.Stock;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Orders;

/// <summary>The few questions that a draft starts from.</summary>
[Authorize(Policy = Rights.ManageJobs)]
public sealed class NewDraftModel(DraftShelf drafts, ShopTablesShelf tables) : PageModel
{
    /// <summary>The answers as typed.</summary>
    public DraftQuestions Asked { get; private set; } = new();

    /// <summary>What is wrong with the answers, by question.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<FieldNote>> Mistakes { get; private set; } = new Dictionary<string, IReadOnlyList<FieldNote>>();

    /// <summary>This form's own key, so that it counts once.</summary>
    public string Key { get; private set; } = "";

    /// <summary>What is wrong with an answer, and what was understood of it where it is a length.</summary>
    public IReadOnlyList<FieldNote> NotesOf(string question, string length = "")
    {
        var notes = Mistakes.GetValueOrDefault(question, []);
        return TypedLength.Echo(length, Asked.Unit) is { Length: > 0 } echo ? [.. notes, new(NoteKind.Echo, echo)] : notes;
    }

    /// <summary>Asks.</summary>
    public void OnGet() => Key = FormKey.New();

    /// <summary>Makes the draft and goes to it, or shows what is wrong with an answer before it is wrong at every post.</summary>
    public async Task<IActionResult> OnPostAsync(string? key, CancellationToken cancel)
    {
        if (!FormKey.IsGood(key))
            return BadRequest();
        Asked = Answers(Request.Form);
        var form = Asked.ToForm();
        Mistakes = form.IsGood
            ? QuestionMistakes.Of(form.Value, tables.Current())
            : new Dictionary<string, IReadOnlyList<FieldNote>> { ["posts"] = [new(NoteKind.Error, form.Problem!)] };
        if (Mistakes.Count == 0)
        {
            var id = await drafts.StartAsync(form.Value, Who.Of(User), $"draft {key}", cancel);
            return Redirect($"/drafts/{id}");
        }
        Key = key;
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
            Course = Said("course"),
            Curve = new() { Radius = Said("curve.radius"), Taut = Said("curve.string"), Middle = Said("curve.middle"), Angle = Said("curve.angle"), Turns = Said("curve.turns") },
            Shape = Said("shape"),
            Across = Said("across"),
            Girth = Said("girth"),
            PostHeight = Said("postHeight"),
            Buried = Said("buried"),
            Datum = Said("datum"),
            Boring = Said("boring"),
            Holes = Said("holes"),
            Bore = Said("bore"),
            Spacing = Said("spacing"),
            Width = Said("width"),
            Drop = Said("drop"),
            Rows = Said("rows"),
            Material = Said("material"),
            Diameter = Said("diameter"),
            Construction = Said("construction"),
            Colour = Said("colour"),
            Longest = Said("longest"),
            Wetting = new() { Loses = Said("wetting.loses"), Manner = Said("wetting.manner") },
            Sag = Said("sag"),
            Ends = Said("ends"),
            Eye = new() { Pin = Said("eye.pin"), Length = Said("eye.length"), Reach = Said("eye.reach"), Tucks = Said("eye.tucks"), Thimble = Said("eye.thimble") },
            Between = Said("between"),
        };

        string Said(string name) => form[name].ToString() is { Length: <= 500 } said ? said : "";
    }
}
