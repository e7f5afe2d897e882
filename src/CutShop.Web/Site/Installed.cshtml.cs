using CutShop.Shop.Site;
using Microsoft.AspNetCore.Mvc;

using static CutShop.Web.Site.SiteWords;

namespace CutShop.Web.Site;

/// <summary>Marks a piece as installed or not; shown only where that could not be done.</summary>
[RequestSizeLimit(MostBytes)]
public sealed class InstalledModel(PieceShelf pieces, InstalledMarks marks) : SiteForm
{
    private const int MostBytes = 16 * 1024;

    /// <summary>The piece as it is now.</summary>
    public SitePiece? Found { get; private set; }

    /// <summary>True where something speaks against the piece being up, and the tap did not say that it is all the same.</summary>
    public bool IsAsked { get; private set; }

    /// <summary>There is nothing to see here but the piece.</summary>
    public IActionResult OnGet() => Find(pieces.Find, found => found.Label) is null ? Page() : Redirect($"/p/{Code.Plain}");

    /// <summary>
    /// Takes <c>state</c> and <c>seen</c>, each "installed" or "not-installed", <c>key</c>, a GUID of the tap's own, and
    /// <c>at</c>, the time of the tap in UTC; a tap that comes at once needs no time. A piece that is not cut, or is reported as too short, is
    /// marked only with <c>sure</c> "yes". With <c>back</c> "line" it leads back to the piece's line.
    /// </summary>
    public async Task<IActionResult> OnPostAsync()
    {
        var cancel = HttpContext.RequestAborted;
        Found = Find(pieces.Find, found => found.Label);
        var (form, refusal) = await SentAsync(T["Unreadable"]);
        if (form is null)
            return refusal!;
        if (InstalledWords.Read(form["state"]) is not { } wanted || InstalledWords.Read(form["seen"]) is not { } seen
            || KeyIn(form) is not { } key || !TryReadTime(form, out var at))
            return Refused(StatusCodes.Status422UnprocessableEntity, T["TapIncomplete"]);

        var answer = await marks.MarkAsync(Code, new(wanted, seen, at, form["sure"] == "yes"), OnSite, key, cancel);
        if (answer.Outcome == SiteOutcome.Conflict)
        {
            Found = pieces.Find(Code);
            return Refused(
                StatusCodes.Status409Conflict,
                answer.State == InstalledState.Installed
                    ? T["MarkedByOther"]
                    : T["UnmarkedByOther"],
                new { state = InstalledWords.Of(answer.State), answer.ChangedAt });
        }
        IsAsked = answer.Outcome is SiteOutcome.NotCut or SiteOutcome.ReportedShort;
        return answer.Outcome == SiteOutcome.Done
            ? Stored(new { state = InstalledWords.Of(answer.State), code = Code.Plain }, form["back"] == "line" ? $"/line#{Code.Plain}" : "#mark")
            : Refused(answer.Outcome);
    }
}
