using CutShop.Testing.Fuzz;
using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Jobs;

public sealed class JobIntakeTests : IDisposable
{
    private readonly ShopOnDisk _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("lq-1042-north-walk.json")]
    [InlineData("lq-1043-beach-ramp.json")]
    [InlineData("lq-1044-lamp-pier.json")]
    public async Task A_job_is_stored_with_every_piece_bore_and_ticket(string file)
    {
        var takeoff = JobTakeoff.Of(ShopOnDisk.Demo(file), ShopTables.Standard);
        Assert.Equal(IntakeOutcome.TakenIn, await _shop.Intake.TakeInAsync(takeoff.Job, "Ada", cancel: Cancel));

        Assert.Equal(takeoff.Pieces.Count, _shop.Count("pieces"));
        Assert.Equal(takeoff.Pieces.Count, _shop.Count("cut_tickets"));
        Assert.Equal(takeoff.Pieces.Count, _shop.Count("piece_parts"));
        Assert.Equal(takeoff.Job.Posts.Count(), _shop.Count("post_parts"));
        Assert.Equal(
            takeoff.Bores.Sum(bore => bore.Operations.Count),
            _shop.Database.Read(session => session.Value<long>("SELECT CAST(sum(drillings) AS bigint) FROM post_parts")));
        Assert.Equal(takeoff.Bores.Select(bore => bore.Post.Mark).Distinct().Count(), _shop.Count("drill_tickets"));
        Assert.Equal(1, _shop.Count("history"));
    }

    [Fact]
    public async Task A_stored_job_comes_back_the_same()
    {
        var job = ShopOnDisk.Demo("lq-1043-beach-ramp.json");
        await _shop.Intake.TakeInAsync(job, "Ada", cancel: Cancel);
        var stored = _shop.Jobs.Find(job.Number)!;
        Assert.Equal(JobFileWriter.Write(job), JobFileWriter.Write(stored.Takeoff.Job));
        Assert.Equal(_shop.Time.GetUtcNow(), stored.TakenInAt);
        Assert.All(stored.Pieces, piece => Assert.Equal("waiting", piece.State));
        Assert.Equal(stored.Pieces.Count, stored.Codes.Distinct().Count());
        Assert.Equal(job.Number, _shop.Jobs.Find(stored.Codes[1])!.Number);
    }

    [Fact]
    public async Task The_same_job_again_changes_nothing_and_says_so()
    {
        var job = ShopOnDisk.Demo("lq-1042-north-walk.json");
        await _shop.Intake.TakeInAsync(job, "Ada", cancel: Cancel);
        var codes = _shop.Jobs.Find(job.Number)!.Codes;
        Assert.Equal(IntakeOutcome.HadItAlready, await _shop.Intake.TakeInAsync(job, "Ben", cancel: Cancel));
        Assert.Equal(codes, _shop.Jobs.Find(job.Number)!.Codes);
        Assert.Equal(1, _shop.Count("history"));
    }

    [Fact]
    public async Task Another_job_under_the_same_number_is_refused_and_the_first_stands()
    {
        await _shop.Intake.TakeInAsync(SmallJobs.OnePiece("LQ-1", "72 in"), "Ada", cancel: Cancel);
        Assert.Equal(IntakeOutcome.NumberTaken, await _shop.Intake.TakeInAsync(SmallJobs.OnePiece("LQ-1", "73 in"), "Ada", cancel: Cancel));
        // 72 in clear and two halves of a 5 1/2 in post.
        Assert.Equal(LengthText.Parse("77 1/2 in").OrThrow(), _shop.Jobs.Find("LQ-1")!.Pieces[0].Cut);
        Assert.Equal(1, _shop.Count("jobs"));
    }

    [Fact]
    public async Task Eight_at_once_take_the_same_job_in_once()
    {
        var job = ShopOnDisk.Demo("lq-1042-north-walk.json");
        var outcomes = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => _shop.Intake.TakeInAsync(job, "Ada", cancel: Cancel), Cancel)));
        Assert.Equal(1, outcomes.Count(outcome => outcome == IntakeOutcome.TakenIn));
        Assert.Equal(7, outcomes.Count(outcome => outcome == IntakeOutcome.HadItAlready));
        Assert.Equal(JobTakeoff.Of(job, ShopTables.Standard).Pieces.Count, _shop.Count("pieces"));
    }

    [Fact]
    public void An_unknown_number_or_code_finds_nothing()
    {
        Assert.Null(_shop.Jobs.Find("LQ-1"));
        Assert.Null(_shop.Jobs.Find(PieceCode.Draw()));
    }

    [Fact]
    public async Task Jobs_are_listed_the_earliest_due_first_and_those_without_a_date_last()
    {
        await _shop.Intake.TakeInAsync(SmallJobs.OnePiece("LQ-1"), "Ada", cancel: Cancel);
        await _shop.Intake.TakeInAsync(SmallJobs.OnePiece("LQ-2", more: "\"due\": \"2027-03-12\","), "Ada", cancel: Cancel);
        await _shop.Intake.TakeInAsync(SmallJobs.OnePiece("LQ-3", more: "\"due\": \"2027-03-05\","), "Ada", cancel: Cancel);
        Assert.Equal(["LQ-3", "LQ-2", "LQ-1"], new JobSearch(_shop.Database).Find(new(JobsShown.All)).Jobs.Select(job => job.Number));
    }

    public void Dispose() => _shop.Dispose();
}
