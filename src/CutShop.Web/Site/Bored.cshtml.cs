using System.Globalization;
using CutShop.Shop.Site;
using CutShop.Shop.Tickets;
using Microsoft.AspNetCore.Mvc;

using static CutShop.Web.Site.SiteWords;

namespace CutShop.Web.Site;

/// <summary>Ticks a bore that is made on site, or takes the tick back; shown only where that could not be done.</summary>
[RequestSizeLimit(MostBytes)]
public sealed class BoredModel(PieceShelf pieces, BoreTicks ticks) : SiteForm
{
    private const int MostBytes = 16 * 1024;

    /// <summary>The piece of the label.</summary>
    public SitePiece? Found { get; private set; }

    /// <summary>There is nothing to see here but the posts.</summary>
    public IActionResult OnGet() => Find(pieces.Find, found => found.Label) is null ? Page() : Redirect(SitePaths.Bores(Code));

    /// <summary>
    /// Takes <c>post</c> and <c>row</c>, the marks, <c>bore</c>, which of the row's bores in the post from 1, <c>state</c> and <c>seen</c>, each
    /// "bored" or "not-bored", <c>key</c>, a GUID of the tap's own, and <c>at</c>, the time of the tap in UTC; a tap that comes at once needs no time.
    /// </summary>
    public async Task<IActionResult> OnPostAsync()
    {
        var cancel = HttpContext.RequestAborted;
        Found = Find(pieces.Find, found => found.Label);
        var (form, refusal) = await SentAsync(T["Unreadable"]);
        if (form is null)
            return refusal!;
        if (BoreTap.Read(form["state"]) is not { } wanted || BoreTap.Read(form["seen"]) is not { } seen
            || !int.TryParse(form["bore"], NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            || KeyIn(form) is not { } key || !TryReadTime(form, out var at))
            return Refused(StatusCodes.Status422UnprocessableEntity, T["TapIncomplete"]);

        var bore = new BoreMark(form["post"].ToString(), form["row"].ToString(), number);
        var answer = await ticks.TickAsync(Code, new(bore, wanted, seen, at), OnSite, key, cancel);
        var now = new { state = BoreTap.Word(answer.IsBored), answer.ChangedAt };
        return answer.Outcome switch
        {
            SiteOutcome.Done => Stored(new { state = now.state, post = bore.Post, row = bore.Row, bore = bore.Number }, $"/bores#{BoreTick.Anchor(bore.Post)}"),
            SiteOutcome.Conflict => Refused(StatusCodes.Status409Conflict, T[answer.IsBored ? "TickedByOther" : "UntickedByOther"], now),
            _ => Refused(answer.Outcome),
        };
    }
}
