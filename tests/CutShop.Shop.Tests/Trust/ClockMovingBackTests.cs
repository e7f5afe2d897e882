using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Trust;

/// <summary>The machine's clock was a year ahead and is put right: nothing is lost or stuck, and work goes on by itself.</summary>
public sealed class ClockMovingBackTests : IDisposable
{
    private static readonly TimeSpan Ahead = TimeSpan.FromDays(365);

    private readonly string _folder = Directory.CreateTempSubdirectory("cutshop-clock-").FullName;
    private readonly SetClock _clock = new(new DateTimeOffset(2028, 2, 1, 8, 0, 0, TimeSpan.Zero));
    private readonly ShopDatabase _database;

    public ClockMovingBackTests() => _database = ShopDatabase.Open(ShopFolder.DatabaseIn(_folder), _clock);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_ticket_taken_by_the_wrong_clock_is_handed_back_and_the_history_keeps_its_order()
    {
        await new JobIntake(_database, ShopTables.Standard).TakeInAsync(SmallJobs.OnePiece("LQ-1"), "Ada", cancel: Cancel);
        var bench = new DrillBench(_database);
        Assert.True((await bench.TakeAsync(("LQ-1", "A1"), "Dov", "1", Cancel)).IsDone);
        _clock.Now -= Ahead;
        Assert.True((await bench.TakeAsync(("LQ-1", "A1"), "Eva", "2", Cancel)).IsDone);
        Assert.True((await bench.TickAsync(("LQ-1", "A1"), 1, "Eva", "3", Cancel)).IsDone);
        Assert.True((await bench.FitsAsync(("LQ-1", "A1"), "Eva", "4", Cancel)).IsDone);
        Assert.True((await bench.UndoAsync(("LQ-1", "A1"), "a slip", "Eva", "5", Cancel)).IsDone);
        Assert.Equal(
            ["taken to the bench", "handed back, nothing was done for 45 minutes", "taken to the bench", "drilled a bore", "drilled, the rope fits, 1 screw hole with it", "undone"],
            Lines("drill ticket"));
        Assert.Empty(ShopCheck.OfFile(_database.Path, _clock));
    }

    [Fact]
    public async Task A_name_that_the_wrong_clock_locked_opens_again()
    {
        var password = PeopleShelf.DrawPassword();
        await new PeopleShelf(_database).AddAsync("Ada", Role.Owner, password, "test", Cancel);
        var signIn = new SignIn(_database);
        for (var i = 0; i < SignIn.MostTries; i++)
            await signIn.WithPasswordAsync("Ada", "something else", new("an address", IsKnown: false), Cancel);
        Assert.Equal(SignInOutcome.Locked, (await signIn.WithPasswordAsync("Ada", password, new("an address", IsKnown: false), Cancel)).Outcome);
        _clock.Now -= TimeSpan.FromMinutes(5);
        Assert.Equal(SignInOutcome.Locked, (await signIn.WithPasswordAsync("Ada", password, new("an address", IsKnown: false), Cancel)).Outcome);
        _clock.Now -= Ahead;
        Assert.Equal(SignInOutcome.Right, (await signIn.WithPasswordAsync("Ada", password, new("an address", IsKnown: false), Cancel)).Outcome);
    }

    [Fact]
    public void A_backup_of_the_wrong_clock_keeps_no_other_from_being_made()
    {
        var backups = new ShopBackups(_database.Path, ShopFolder.BackupsIn(_folder), _clock);
        backups.Make(KeepRule.Default);
        _clock.Now -= Ahead;
        Assert.True(new BackupTime(new(2, 30)).IsDue(_clock.Now, TimeZoneInfo.Utc, backups.All.Select(backup => backup.MadeAt)));
        var made = backups.Make(KeepRule.Default);
        Assert.Empty(made.Removed);
        Assert.True(File.Exists(made.File.Path));
    }

    public void Dispose()
    {
        _database.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private IReadOnlyList<string> Lines(string subject) =>
        [.. new HistoryShelf(_database).Of(subject, 1).Select(line => line.What)];

    /// <summary>A clock that can be put back.</summary>
    private sealed class SetClock(DateTimeOffset now) : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = now;

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
