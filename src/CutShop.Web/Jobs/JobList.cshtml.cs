using CutShop.Shop.Jobs;
using CutShop.Shop.Site;
using CutShop.Takeoff.Lengths;
using Microsoft.AspNetCore.Http.Extensions;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Jobs;

/// <summary>The list of jobs, searched and paged.</summary>
public sealed class JobListModel(JobSearch jobs, SiteReports reports) : PageModel
{
    private static readonly Dictionary<string, JobsShown> ShownByWord = new()
    {
        ["open"] = JobsShown.Open,
        ["late"] = JobsShown.Late,
        ["received"] = JobsShown.Received,
        ["all"] = JobsShown.All,
    };

    /// <summary>The jobs of this page.</summary>
    public JobsPage Jobs { get; private set; } = new([], NextKey: null);

    /// <summary>How many reports from site wait for the desk.</summary>
    public long OpenReports { get; private set; }

    /// <summary>Part of the number or the customer.</summary>
    public string Text { get; private set; } = "";

    /// <summary>The first day.</summary>
    public string DueFrom { get; private set; } = "";

    /// <summary>The last day.</summary>
    public string DueTo { get; private set; } = "";

    /// <summary>Which jobs.</summary>
    public string Shown { get; private set; } = "open";

    /// <summary>True where something was asked for.</summary>
    public bool IsSearch => Text.Length + DueFrom.Length + DueTo.Length > 0 || Shown != "open";

    /// <summary>How many of all jobs are like what was looked for, where only some were; null where all were, or nothing was looked for.</summary>
    public long? AmongAll { get; private set; }

    /// <summary>The same search among all jobs.</summary>
    public string AllAddress => "/" + new QueryBuilder { { "q", Text }, { "from", DueFrom }, { "to", DueTo }, { "show", "all" } };

    /// <summary>The most jobs that are counted.</summary>
    public const int MostCounted = 1000;

    /// <summary>What the shop should set up yet, for who may; empty once all is done.</summary>
    public IReadOnlyList<SetUpStep> ToSetUp { get; private set; } = [];

    /// <summary>The address of the next page, or null.</summary>
    public string? NextAddress { get; private set; }

    /// <summary>Shows a page of the list. A date that is none is passed over.</summary>
    public void OnGet(string? q, string? from, string? to, string? show, string? after)
    {
        (Text, DueFrom, DueTo) = (q ?? "", IsoDate.Find(from) is null ? "" : from!, IsoDate.Find(to) is null ? "" : to!);
        Shown = show is not null && ShownByWord.ContainsKey(show) ? show : "open";
        var wanted = new JobsWanted(ShownByWord[Shown], Text, IsoDate.Find(from), IsoDate.Find(to), after);
        Jobs = jobs.Find(wanted);
        if (Shown != "all" && Text.Trim().Length + DueFrom.Length + DueTo.Length > 0)
            AmongAll = jobs.CountAll(wanted, MostCounted);
        ToSetUp = SetUpSteps.For(HttpContext);
        OpenReports = reports.OpenCount();
        if (Jobs.NextKey is { } key)
            NextAddress = "/" + new QueryBuilder { { "q", Text }, { "from", DueFrom }, { "to", DueTo }, { "show", Shown }, { "after", key } };
    }
}
