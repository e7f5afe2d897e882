using static CutShop.Web.Shared.HostWords;

namespace CutShop.Web.Shared;

/// <summary>A page that the bar leads to.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Address">Its address.</param>
/// <param name="Here">What pages below it call themselves in <c>ViewData["Here"]</c>.</param>
public sealed record NavigationPage(string Name, string Address, string Here);

/// <summary>An entry of the bar: a station with its pages, of which the first is where it leads.</summary>
/// <param name="Name">The station's name.</param>
/// <param name="Pages">Its pages, those that the reader has work on.</param>
public sealed record NavigationGroup(string Name, IReadOnlyList<NavigationPage> Pages)
{
    /// <summary>True where one of its pages is shown.</summary>
    public bool Has(string? here) => Pages.Any(page => page.Here == here);
}

/// <summary>The bar at the head of each page: the stations of the shop, at most six for anyone, each with the pages of the reader's role.</summary>
public static class Navigation
{
    /// <summary>The entries for whoever asks. A station of which somebody has one page is called by that page.</summary>
    public static IReadOnlyList<NavigationGroup> For(HttpContext context)
    {
        if (SignedIn.PersonOf(context) is null)
            return [Of("FindAPiece", (true, "FindAPiece", "/p", "piece"))];
        var desk = Rights.Do(context, Rights.ManageJobs);
        return
        [
            .. new[]
            {
                Of("Orders", (true, "Jobs", "/", "jobs"), (desk, "OrderDesk", "/drafts", "drafts"), (desk, "Prices", "/prices", "prices")),
                Of("Stock", (true, "Coils", "/stock", "stock"), (true, "CutPlans", "/plans", "plans"), (true, "Bits", "/bits", "bits")),
                Of(
                    "Benches",
                    (desk || Rights.Do(context, Rights.CutRope), "Cut", "/cut", "cut"),
                    (desk || Rights.Do(context, Rights.DrillPosts), "Drill", "/drill", "drill"),
                    (Rights.Do(context, Rights.PackJobs), "Pack", "/pack", "pack")),
                Of("Site", (true, "Reports", "/reports", "reports"), (true, "FindAPiece", "/p", "piece")),
                Of("Board", (true, "Board", "/board", "board")),
                Of("Settings", (Rights.Do(context, Rights.ChangeSettings), "Settings", "/settings", "settings")),
            }.Where(group => group.Pages.Count > 0),
        ];
    }

    private static NavigationGroup Of(string name, params (bool IsTheirs, string Name, string Address, string Here)[] pages)
    {
        List<NavigationPage> theirs = [.. pages.Where(page => page.IsTheirs).Select(page => new NavigationPage(T[page.Name], page.Address, page.Here))];
        return new(theirs is [var only] ? only.Name : T[name], theirs);
    }
}
