using CutShop.Paper.Words;
using CutShop.Shop.Tickets;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

using static CutShop.Web.Benches.BenchWords;

namespace CutShop.Web.Benches;

/// <summary>
/// A page of a bench. Each form carries a key of its own; what comes of it is told to the page's script as a little JSON where the
/// script sent it, and as a page where the browser did.
/// </summary>
[OfItsPerson]
public abstract class BenchPage : PageModel
{
    /// <summary>The header by which the script says that it sent the form.</summary>
    public const string SentByScript = "X-Tap";

    /// <summary>The form's own key: sent twice it counts once.</summary>
    [BindProperty(Name = "key")]
    public string? RequestKey { get; set; }

    /// <summary>Tickets and drawings with the reader's units and words.</summary>
    public PaperSettings Paper => ReaderLanguage.PaperFor(HttpContext);

    /// <summary>Writes lengths in the units that the reader wants first; for who reads millimetres as a tape at a bench is read, in whole ones.</summary>
    public Figures Figures => FiguresFor(HttpContext);

    /// <summary>The same, for a part of a page.</summary>
    public static Figures FiguresFor(HttpContext context)
    {
        var first = PersonUnits.UnitsOf(context);
        return new(first, WholeMillimetres: first == UnitsFirst.Millimetres);
    }

    /// <summary>Who stands at the bench.</summary>
    public string Me => Who.Of(User);

    /// <summary>Why the last tap changed nothing, in the reader's language, or null.</summary>
    public string? Problem { get; private set; }

    /// <summary>What came of the last scan, or null.</summary>
    public Verdict? Verdict { get; protected set; }

    /// <summary>True where the request has a key that can be kept.</summary>
    protected bool HasKey => FormKey.IsGood(RequestKey);

    /// <summary>Says how a tap went: on to a page, or what is wrong. What came of a scan is in <see cref="Verdict"/> by then.</summary>
    /// <param name="answer">The bench's answer.</param>
    /// <param name="to">The page to go on to, done or not.</param>
    /// <param name="shown">The page to show with the problem where the browser sent the form.</param>
    protected IActionResult Answered(BenchAnswer answer, string to, Func<IActionResult> shown)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(shown);
        Problem = answer.Said is { } said ? T[said] : null;
        if (Request.Headers.ContainsKey(SentByScript))
            return new JsonResult(new { to, problem = Problem, verdict = Verdict });
        return Problem is null && Verdict is null ? Redirect(LocalAddress.Of(to, "/")) : shown();
    }

    /// <summary>Goes to what was scanned into a field that takes no scans.</summary>
    /// <param name="scan">The scan.</param>
    /// <param name="at">The bench.</param>
    /// <param name="shown">The page to show where the request has no good key.</param>
    protected IActionResult OpenScanned(string scan, string at, Func<IActionResult> shown) =>
        Answered(BenchAnswer.Nothing, $"/scan?text={Uri.EscapeDataString(scan)}&at={at}", shown);
}
