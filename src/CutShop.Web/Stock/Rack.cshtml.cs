using CutShop.Shop.Orders;
using CutShop.Shop.Stock;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Stock;

/// <summary>The shop's rack of bits.</summary>
[MaySend(Rights.ChangeSettings)]
public sealed class RackModel(ShopTablesShelf tables) : PageModel
{
    /// <summary>The bits, by kind and size.</summary>
    public IReadOnlyList<RackBit> Bits { get; private set; } = [];

    /// <summary>Kinds of bit.</summary>
    public IReadOnlyDictionary<string, string> Kinds { get; } = BitWords.All.ToDictionary(word => word, word => TakeoffJson.Word(BitWords.KindNamed(word)!.Value));

    /// <summary>The kind chosen.</summary>
    public string Kind { get; private set; } = BitWords.All.First();

    /// <summary>The diameter typed.</summary>
    public string Diameter { get; private set; } = "";

    /// <summary>What is wrong with the diameter.</summary>
    public IReadOnlyList<FieldNote> Notes { get; private set; } = [];

    /// <summary>Shows the rack.</summary>
    public void OnGet() => Bits = [.. tables.Current().Rack.Bits.OrderBy(bit => bit.Kind).ThenBy(bit => bit.Diameter)];

    /// <summary>Hangs a bit up.</summary>
    public Task<IActionResult> OnPostHangAsync(string? kind, string? diameter, CancellationToken cancel) =>
        ChangeAsync(kind, diameter, bit => tables.HangBitAsync(bit, Who.Of(User), cancel));

    /// <summary>Takes a bit off.</summary>
    public Task<IActionResult> OnPostTakeoffAsync(string? kind, string? diameter, CancellationToken cancel) => ChangeAsync(
        kind,
        diameter,
        async bit =>
        {
            await tables.TakeBitOffAsync(bit, Who.Of(User), cancel);
            return null;
        });

    private async Task<IActionResult> ChangeAsync(string? kind, string? diameter, Func<RackBit, Task<string?>> change)
    {
        if (BitWords.KindNamed(kind ?? "") is not { } known)
            return BadRequest();
        (Kind, Diameter) = (kind!, diameter ?? "");
        var read = TypedLength.Diameter(Diameter);
        var problem = read.IsGood ? await change(new(known, read.Value)) : read.Problem;
        if (problem is null)
            return Redirect("/bits");
        Notes = [new(NoteKind.Error, problem)];
        OnGet();
        return Page();
    }
}
