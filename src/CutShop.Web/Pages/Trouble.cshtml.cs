using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Pages;

/// <summary>What a person sees when a page is not there or something broke.</summary>
[AllowAnonymous]
[IgnoreAntiforgeryToken]
public sealed class TroubleModel : PageModel
{
    /// <summary>The heading.</summary>
    public string Heading => Explained.Heading;

    /// <summary>What happened and what to do.</summary>
    public string Explanation => Explained.Explanation;

    // Without a handler, so that it answers whatever was sent; and read here and not bound: binding reads the form too, and it may be the form that cannot be read.
    private (string Heading, string Explanation) Explained => Request.Query["status"].ToString() switch
    {
        "404" => ("Not here", "There is no such page. A job, coil or piece may have been typed wrong."),
        "400" when NulCharacters.FieldOf(HttpContext) is { } named => ("Not understood", $"The field \"{named}\" holds a NUL character, which cannot be stored; accepted: any other character. Nothing was stored. Go back, remove it and send the form again."),
        "400" => ("Not understood", "What was sent is not complete. Go back, load the page again and send it once more."),
        "403" => ("Not yours to do", "Your role does not allow this. Some pages also ask that you signed in with a password and not with a PIN."),
        "405" => ("Not possible here", "This page does not accept what was sent. Nothing was stored. Go back, load the page again and send it once more."),
        "415" => ("Not a form", "This page accepts only forms, and what was sent is not a form. Nothing was stored. Go back, load the page again and send it once more."),
        "413" => ("Too large", $"More was sent than is taken; accepted: at most {SizeLimits.Form / (1024 * 1024)} MiB in a form. A large job comes as a job file."),
        "429" => ("Too many at once", "Too many tries came from here within a minute. Wait a minute, then try again."),
        _ => ("Something broke", "Nothing that was acknowledged is lost, and nothing half done was stored. Try again; if it stays, the log of the server says why."),
    };
}
