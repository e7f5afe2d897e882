using CutShop.Shop.Tests.Orders;
using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Jobs;

public sealed class JobSearchTests
{
    private static async Task<JobSearch> WithJobsAsync(DeskShop shop)
    {
        foreach (var (number, customer, due, release) in new[]
        {
            ("LQ-1", "Lamp pier", "2027-01-10", true), ("LQ-2", "Lamp pier", "2027-01-11", true), ("LQ-3", "Beach ramp", "", true), ("LQ-4", "Beach ramp", "2027-01-05", false),
        })
        {
            var form = SmallJobs.FourPosts(number) with { Customer = customer, Due = due };
            if (release)
                await shop.ReleasedJobAsync(form);
            else
                await shop.Intake.TakeInAsync(await shop.StartAsync(form, number), 1, "test", DeskShop.Cancel);
        }
        return new(shop.Database);
    }

    [Fact]
    public async Task Jobs_come_by_due_day_and_those_without_one_last()
    {
        using var shop = new DeskShop();
        var jobs = (await WithJobsAsync(shop)).Find(new(JobsShown.All)).Jobs;
        Assert.Equal(["LQ-4", "LQ-1", "LQ-2", "LQ-3"], jobs.Select(job => job.Number));
        Assert.Equal([true, true, false, false], jobs.Select(job => job.IsLate));
    }

    [Theory]
    [InlineData(JobsShown.Late, "", "LQ-4 LQ-1")]
    [InlineData(JobsShown.Received, "", "LQ-4")]
    [InlineData(JobsShown.Open, "lamp", "LQ-1 LQ-2")]
    [InlineData(JobsShown.All, "lq-3", "LQ-3")]
    [InlineData(JobsShown.All, "%", "")]
    [InlineData(JobsShown.All, "amp pi", "LQ-1 LQ-2")]
    [InlineData(JobsShown.All, "beach ramp", "LQ-4 LQ-3")]
    [InlineData(JobsShown.All, "p", "LQ-4 LQ-1 LQ-2 LQ-3")]
    [InlineData(JobsShown.All, "lamp ramp", "")]
    [InlineData(JobsShown.All, "\"lamp\" OR beach*", "")]
    public async Task Jobs_are_found_by_what_is_asked(JobsShown shown, string text, string numbers)
    {
        using var shop = new DeskShop();
        var search = await WithJobsAsync(shop);
        Assert.Equal(numbers, string.Join(' ', search.Find(new(shown, text)).Jobs.Select(job => job.Number)));
    }

    [Fact]
    public async Task A_text_that_most_jobs_have_and_one_that_a_single_job_has_find_the_same_way()
    {
        using var shop = new DeskShop();
        await StoreAsync(shop, 1100, i => i == 700 ? "Harbour \"steps\", east" : "Lantern Quay");
        var search = new JobSearch(shop.Database);
        Assert.Equal(["LQ-0700"], search.Find(new(JobsShown.All, "\"STEPS\", e")).Jobs.Select(job => job.Number));
        Assert.Equal(Enumerable.Range(1, 40).Select(i => $"LQ-{i:0000}"), search.Find(new(JobsShown.All, "tern qu")).Jobs.Select(job => job.Number));
    }

    [Fact]
    public async Task A_job_whose_customer_was_renamed_is_found_by_the_new_name_only()
    {
        using var shop = new DeskShop();
        var search = await WithJobsAsync(shop);
        await shop.ExecuteAsync("UPDATE jobs SET customer = 'Tide mill' WHERE number = 'LQ-2'");
        Assert.Equal(["LQ-1"], search.Find(new(JobsShown.All, "lamp")).Jobs.Select(job => job.Number));
        Assert.Equal(["LQ-2"], search.Find(new(JobsShown.All, "tide")).Jobs.Select(job => job.Number));
    }

    [Fact]
    public async Task Days_bound_the_search_on_both_sides_inclusively()
    {
        using var shop = new DeskShop();
        var search = await WithJobsAsync(shop);
        Assert.Equal(["LQ-1", "LQ-2"], search.Find(new(JobsShown.All, DueFrom: new(2027, 1, 10), DueTo: new(2027, 1, 11))).Jobs.Select(job => job.Number));
    }

    [Fact]
    public async Task A_job_whose_work_is_done_is_not_open_and_not_late()
    {
        using var shop = new DeskShop();
        var search = await WithJobsAsync(shop);
        await shop.ExecuteAsync("UPDATE cut_tickets SET state = 'cut'");
        await shop.ExecuteAsync("UPDATE drill_tickets SET state = 'drilled'");
        Assert.Equal(["LQ-4"], search.Find(new(JobsShown.Open)).Jobs.Select(job => job.Number));
        Assert.All(search.Find(new(JobsShown.All)).Jobs, job => Assert.False(job.IsLate));
    }

    [Fact]
    public async Task What_is_cut_and_drilled_is_told_while_a_job_is_at_work_when_it_is_done_and_when_it_was_cancelled()
    {
        using var shop = new DeskShop();
        var search = await WithJobsAsync(shop);
        await shop.ExecuteAsync("UPDATE cut_tickets SET state = 'packed' WHERE piece_id = (SELECT min(id) FROM pieces WHERE job_id = (SELECT id FROM jobs WHERE number = 'LQ-1'))");
        await shop.ExecuteAsync("UPDATE drill_tickets SET state = 're-ordered' WHERE post_id = (SELECT min(id) FROM posts WHERE job_id = (SELECT id FROM jobs WHERE number = 'LQ-1'))");
        await shop.ExecuteAsync("UPDATE cut_tickets SET state = 'cut' WHERE piece_id IN (SELECT id FROM pieces WHERE job_id = (SELECT id FROM jobs WHERE number = 'LQ-2'))");
        await shop.ExecuteAsync("UPDATE drill_tickets SET state = 'drilled' WHERE post_id IN (SELECT id FROM posts WHERE job_id = (SELECT id FROM jobs WHERE number = 'LQ-2'))");
        await shop.Release.CancelAsync("LQ-3", "not wanted", "test", DeskShop.Cancel);
        var told = search.Find(new(JobsShown.All)).Jobs.ToDictionary(job => job.Number, job => (job.State, job.Pieces, job.Cut, job.Posts, job.Drilled));
        Assert.Equal(("released", 2L, 1L, 4L, 0L), told["LQ-1"]);
        Assert.Equal(("released", 2L, 2L, 4L, 4L), told["LQ-2"]);
        Assert.Equal(("cancelled", 2L, 0L, 4L, 0L), told["LQ-3"]);
        Assert.Equal(("received", 2L, 0L, 4L, 0L), told["LQ-4"]);
    }

    [Theory]
    [InlineData("LQ-3", null, null, 1)]
    [InlineData("LQ", null, null, 4)]
    [InlineData("nobody at all", null, null, 0)]
    [InlineData("", "2027-01-10", "2027-01-10", 1)]
    public async Task What_is_looked_for_is_counted_among_all_jobs_also_cancelled_ones(string text, string? from, string? to, long count)
    {
        using var shop = new DeskShop();
        var search = await WithJobsAsync(shop);
        await shop.Release.CancelAsync("LQ-3", "not wanted", "test", DeskShop.Cancel);
        var wanted = new JobsWanted(JobsShown.Late, text, IsoDate.Find(from), IsoDate.Find(to), AfterKey: "2027-03-02LQ-2");
        Assert.Equal(count, search.CountAll(wanted, 100));
        Assert.Equal(Math.Min(count, 2), search.CountAll(wanted, 2));
    }

    [Fact]
    public async Task Pages_follow_each_other_without_gap_or_double()
    {
        using var shop = new DeskShop();
        await StoreAsync(shop, 120, _ => "Lantern Quay", i => i > 110 ? null : $"2027-03-{1 + (i % 3):00}");
        var search = new JobSearch(shop.Database);
        var seen = new List<JobFound>();
        string? after = null;
        do
        {
            var page = search.Find(new(JobsShown.All, AfterKey: after));
            seen.AddRange(page.Jobs);
            after = page.NextKey;
        }
        while (after is not null);
        Assert.Equal(120, seen.Select(job => job.Number).Distinct().Count());
        Assert.Equal(120, seen.Count);
        Assert.Equal(seen.OrderBy(job => job.Due ?? DateOnly.MaxValue).ThenBy(job => job.Number, StringComparer.Ordinal).Select(job => job.Number), seen.Select(job => job.Number));
    }

    private static Task<int> StoreAsync(DeskShop shop, int count, Func<int, string> customer, Func<int, string?>? due = null) => shop.ExecuteAsync(
        "INSERT INTO jobs (number, customer, due, one_lot, job_file, taken_in_at) VALUES (@number, @customer, @due, 0, '', '2027-01-01T00:00:00.000Z')",
        Enumerable.Range(1, count).Select(i => new { number = $"LQ-{i:0000}", customer = customer(i), due = due?.Invoke(i) }));
}
