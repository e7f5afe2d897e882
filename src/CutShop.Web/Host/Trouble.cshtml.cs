using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

using static CutShop.Web.Shared.FrontWords;

namespace CutShop.Web.Host;

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
        "404" => (T["NotHere"], T["NotHereAbout"]),
        "400" when NulCharacters.FieldOf(HttpContext) is { } named => (T["NotUnderstood"], T["NulInField", named]),
        "400" => (T["NotUnderstood"], T["NotUnderstoodAbout"]),
        "403" => (T["NotAllowed"], T["NotAllowedAbout"]),
        "405" => (T["NotPossibleHere"], T["NotPossibleAbout"]),
        "415" => (T["NotAForm"], T["NotAFormAbout"]),
        "413" => (T["TooLarge"], T["TooMuchSent", SizeLimits.Form / (1024 * 1024)]),
        "429" => (T["TooManyAtOnce"], T["TooManyAbout"]),
        _ => (T["SomethingWentWrong"], T["WentWrongAbout"]),
    };
}
