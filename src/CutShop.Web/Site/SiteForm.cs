using System.Globalization;
using CutShop.Shop.Site;
using CutShop.Takeoff.Result;
using Microsoft.AspNetCore.Mvc;

using static CutShop.Web.Site.SiteWords;

namespace CutShop.Web.Site;

/// <summary>
/// A page that takes what an installer sends. It asks for no antiforgery token: that guards what a browser may do because
/// someone is signed in, and here nobody is. Nothing but the code in the address gives the right, sign-in adds none, and
/// another site cannot send what it does not know. So a tap can be kept on the phone and sent when the network is back.
/// </summary>
/// <remarks>
/// A browser is led back to the piece with 303, or shown the page with what is wrong. Where the request accepts JSON: 200
/// with what is stored, or problem details with 404 for a code that no piece has, 410 for a label that is no longer valid, 409
/// where someone else has changed the piece or it takes a surer tap, 413 and 422 for what cannot be taken as it is, 429 and 503 with Retry-After for what is to come later.
/// </remarks>
[IgnoreAntiforgeryToken]
public abstract class SiteForm : LabelPage
{
    /// <summary>Who marked or reported something on site, for the history: the label is the only key, so no name is known.</summary>
    protected const string OnSite = "site";

    /// <summary>What is wrong with what was sent, in the reader's language, or null.</summary>
    public string? Problem { get; private set; }

    /// <summary>The code of the address.</summary>
    protected PieceCode Code => PieceCode.Parse(Typed).OrThrow();

    /// <summary>The form that was sent for a label that is still valid; or the answer that refuses it.</summary>
    /// <param name="unreadable">What is said of a form that cannot be read.</param>
    protected async Task<(IFormCollection? Form, IActionResult? Refusal)> SentAsync(string unreadable)
    {
        if (Lost is { } lost)
            return (null, Refused(lost.Status, lost.Problem));
        return await ReadFormAsync(HttpContext.RequestAborted) is { } form ? (form, null) : (null, Refused(StatusCodes.Status413PayloadTooLarge, unreadable));
    }

    /// <summary>The form that was sent, or null where it cannot be read: too large, or no form.</summary>
    protected async Task<IFormCollection?> ReadFormAsync(CancellationToken cancel)
    {
        if (!Request.HasFormContentType)
            return null;
        try
        {
            return await Request.ReadFormAsync(cancel);
        }
        catch (Exception broken) when (broken is InvalidDataException or IOException)
        {
            return null;
        }
    }

    /// <summary>The key of a tap: whole numbers that are unique, as a form or a phone makes them; null where there is none.</summary>
    protected static string? KeyIn(IFormCollection form)
    {
        ArgumentNullException.ThrowIfNull(form);
        return Guid.TryParse(form["key"], out var key) ? key.ToString("N") : null;
    }

    /// <summary>When it was tapped by the phone's clock: an ISO 8601 time in UTC, or nothing.</summary>
    /// <returns>False where something else was sent.</returns>
    protected static bool TryReadTime(IFormCollection form, out DateTimeOffset? at)
    {
        ArgumentNullException.ThrowIfNull(form);
        at = null;
        var typed = form["at"].ToString();
        if (typed.Length == 0)
            return true;
        if (!DateTimeOffset.TryParse(typed, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var read))
            return false;
        at = read;
        return true;
    }

    /// <summary>Says what is wrong: as problem details, or on the page.</summary>
    protected IActionResult Refused(int status, string problem, object? more = null)
    {
        Problem = problem;
        if (!WantsJson)
        {
            Response.StatusCode = status;
            return Page();
        }
        var details = new ProblemDetails { Status = status, Title = problem };
        if (more is not null)
            details.Extensions["now"] = more;
        return new ObjectResult(details) { StatusCode = status, ContentTypes = { "application/problem+json" } };
    }

    /// <summary>Asks to send it again later.</summary>
    protected IActionResult ComeAgain(int status, string problem, int seconds)
    {
        Response.Headers.RetryAfter = seconds.ToString(CultureInfo.InvariantCulture);
        return Refused(status, problem);
    }

    /// <summary>Says why nothing could be stored for the label.</summary>
    protected IActionResult Refused(SiteOutcome outcome) => outcome switch
    {
        SiteOutcome.NoSuchPiece => Refused(StatusCodes.Status404NotFound, T["NoSuchPiece"]),
        SiteOutcome.LabelEnded => Refused(StatusCodes.Status410Gone, T["LabelReplaced"]),
        SiteOutcome.NoLongerWanted => Refused(StatusCodes.Status409Conflict, T["PieceNotNeeded"]),
        SiteOutcome.NotCut => Refused(StatusCodes.Status409Conflict, T["NotCutQuestion"]),
        SiteOutcome.ReportedShort => Refused(StatusCodes.Status409Conflict, T["ShortQuestion"]),
        SiteOutcome.UnlikelySpan => Refused(StatusCodes.Status422UnprocessableEntity, T["SpansDoNotFit"]),
        SiteOutcome.NoSuchBore => Refused(StatusCodes.Status409Conflict, T["NoSuchBore"]),
        SiteOutcome.TooManyReports => Refused(StatusCodes.Status422UnprocessableEntity, T["TooManyReports"]),
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, message: null),
    };

    /// <summary>Says that it is stored: as JSON, or by leading back to the piece.</summary>
    /// <param name="what">What is stored, for JSON.</param>
    /// <param name="behind">What stands behind the piece's address where a browser is led to.</param>
    protected IActionResult Stored(object what, string behind)
    {
        if (WantsJson)
            return new JsonResult(what);
        Response.Headers.Location = $"/p/{Code.Plain}{behind}";
        return StatusCode(StatusCodes.Status303SeeOther);
    }
}
