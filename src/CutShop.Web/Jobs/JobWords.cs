using CutShop.Takeoff.Words;
using CutShop.Web.Shared;

namespace CutShop.Web.Jobs;

/// <summary>Words of the pages of jobs: the list, a job, its labels and steps, a change, reports from site.</summary>
public static class JobWords
{
    /// <summary>The words.</summary>
    public static WordList List { get; } = new(typeof(JobWords));

    internal static PageText T { get; } = new(List);
}
