using CutShop.Shop.Orders;
using CutShop.Shop.Store;
using CutShop.Takeoff.Words;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

using static CutShop.Web.Orders.OrderWords;

namespace CutShop.Web.Orders;

/// <summary>Writes a new price list.</summary>
[RequestFormLimits(ValueCountLimit = 2_000)]
[Authorize(Policy = Rights.SeePrices)]
[MaySend(Rights.ChangeSettings)]
public sealed class NewPricesModel(PriceBook prices, ShopDatabase database) : PageModel
{
    private const int MostRows = 200;
    private const int SpareRopes = 3;
    private const int SpareBores = 2;

    /// <summary>The list as typed.</summary>
    public PriceForm? Form { get; private set; }

    /// <summary>What is wrong, by field.</summary>
    public IDictionary<string, Sentence> Problems { get; } = new Dictionary<string, Sentence>();

    /// <summary>This form's own key, so that it counts once.</summary>
    public string Key { get; private set; } = "";

    /// <summary>Starts from today's prices.</summary>
    public void OnGet()
    {
        var today = database.Read(session => session.Today);
        Form = WithSpareRows(PriceForm.From(prices.On(today), today));
        Key = FormKey.New();
    }

    /// <summary>Keeps the list.</summary>
    public async Task<IActionResult> OnPostAsync(string? key, string? step, CancellationToken cancel)
    {
        if (!FormKey.IsGood(key))
            return BadRequest();
        var typed = Typed();
        var list = step == "more" ? null : typed.Read(prices.Currency(), Problems);
        if (list is not null)
        {
            await prices.KeepAsync(list, Who.Of(User), $"prices {key}", cancel);
            return Redirect("/prices");
        }
        (Form, Key) = (WithSpareRows(typed), key);
        return Page();
    }

    /// <summary>The notes of a field.</summary>
    public IReadOnlyList<FieldNote> At(string field) => Problems.TryGetValue(field, out var problem) ? [new(NoteKind.Error, T[problem])] : [];

    private static PriceForm WithSpareRows(PriceForm form) => form with
    {
        Ropes = [.. form.Ropes.Where(rope => !rope.IsEmpty), .. Enumerable.Repeat(new RopePriceTyped("polypropylene", "", ""), SpareRopes)],
        Bores = [.. form.Bores.Where(bore => !bore.IsEmpty), .. Enumerable.Repeat(new BorePriceTyped("", ""), SpareBores)],
    };

    private PriceForm Typed()
    {
        return new(
            Said("validFrom"),
            Said("cut"),
            Said("packing"),
            Said("delivery"),
            Said("tax"),
            Said("quoteDays"),
            [.. Rows("ropes", "diameter").Select(row => new RopePriceTyped(Said($"{row}.material"), Said($"{row}.diameter"), Said($"{row}.foot")))],
            [.. Rows("bores", "upTo").Select(row => new BorePriceTyped(Said($"{row}.upTo"), Said($"{row}.bore")))]);

        string Said(string name) => Request.Form[name].ToString() is { Length: <= 100 } said ? said : "";

        IEnumerable<string> Rows(string name, string member) =>
            Enumerable.Range(0, MostRows).Select(i => $"{name}[{i}]").TakeWhile(row => Request.Form.ContainsKey($"{row}.{member}"));
    }
}
