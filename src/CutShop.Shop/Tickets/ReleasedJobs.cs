namespace CutShop.Shop.Tickets;

/// <summary>The one place where benches and cut plans ask whether a job is theirs to work on.</summary>
internal static class ReleasedJobs
{
    /// <summary>A condition on a row of jobs: released, and not cancelled since.</summary>
    public const string Condition = "jobs.released_at IS NOT NULL AND jobs.cancelled_at IS NULL";
}
