namespace CutShop.Shop;

/// <summary>The one place that says whether a job is released to the benches. Every job is, as soon as it is taken in.</summary>
internal static class JobRelease
{
    /// <summary>A condition on a row of jobs.</summary>
    public const string IsReleased = "jobs.taken_in_at IS NOT NULL";
}
