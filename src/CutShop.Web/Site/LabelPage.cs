using CutShop.Paper.Words;
using CutShop.Shop.Site;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;

using static CutShop.Web.Site.SiteWords;

namespace CutShop.Web.Site;

/// <summary>
/// A page that a label leads to. The code in its address is all that it asks for, so whoever is signed in can do no more
/// here than anyone else who holds the label.
/// </summary>
[AllowAnonymous]
[EnableRateLimiting(GuessLimits.Codes)]
public abstract class LabelPage : PageModel
{
    /// <summary>Drawings and words of the trade, in the reader's units and language.</summary>
    public PaperSettings Paper => ReaderLanguage.PaperFor(HttpContext);

    /// <summary>Why the address leads to no piece, or null where it does.</summary>
    public LostLabel? Lost { get; private set; }

    /// <summary>The code in the address, as it was typed or scanned.</summary>
    protected string Typed => (string)RouteData.Values["code"]!;

    /// <summary>What is said of a code that leads nowhere, in the reader's language.</summary>
    protected virtual string NoneHasIt => T["NoSuchPiece"];

    /// <summary>True where the answer is to be JSON: a program or the page's own script asks.</summary>
    protected bool WantsJson => Request.Headers.Accept.ToString().Contains("application/json", StringComparison.OrdinalIgnoreCase);

    /// <summary>A length both ways, first the unit that the reader has chosen.</summary>
    public string Both(Length length) => Show.Both(length, Paper.Units);

    /// <summary>The piece of the address; where there is none, <see cref="Lost"/> says why and the answer has its status.</summary>
    protected TFound? Find<TFound>(Func<PieceCode, TFound?> find, Func<TFound, LabelState> stateOf)
        where TFound : class
    {
        ArgumentNullException.ThrowIfNull(find);
        ArgumentNullException.ThrowIfNull(stateOf);
        var code = PieceCode.Parse(Typed);
        if (!code.IsGood)
            Lost = new(Typed, T[code.Reason!], StatusCodes.Status404NotFound);
        else if (find(code.Value) is not { } found)
            Lost = new(Typed, NoneHasIt, StatusCodes.Status404NotFound);
        else if (stateOf(found) == LabelState.Ended)
            Lost = new(Typed, T["LabelReplaced"], StatusCodes.Status410Gone);
        else
            return found;
        Response.StatusCode = Lost.Status;
        return null;
    }
}
