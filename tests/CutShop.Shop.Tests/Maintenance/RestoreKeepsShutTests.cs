using CutShop.Testing.Jobs;
using CutShop.Testing.Stores;

namespace CutShop.Shop.Tests.Maintenance;

/// <summary>What was shut since a backup stays shut when it is restored, and followers of the changes are told to start again.</summary>
public sealed class RestoreKeepsShutTests : IDisposable
{
    private static readonly SignInPlace Here = new("an address", IsKnown: false);

    private readonly TestStore _store = TestStore.InFile();
    private readonly ShopDatabase _shop;

    public RestoreKeepsShutTests() => _shop = _store.Open();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private PeopleShelf Staff => new(_shop);

    [Fact]
    public async Task A_revoked_key_stays_revoked_and_is_named()
    {
        var keys = new ApiKeyShelf(_shop);
        var (made, key) = await keys.MakeAsync("web shop", KeyScope.TakeIn, "Ada", Cancel);
        var (_, other) = await keys.MakeAsync("till", KeyScope.Read, "Ada", Cancel);
        var answer = await RestoreAsync(() => keys.RevokeAsync(made.Id, "Ada", Cancel));
        Assert.Equal(["key \"web shop\": revoked"], answer.Kept);
        Assert.Null(await keys.UseAsync(key, Cancel));
        Assert.NotNull(await keys.UseAsync(other, Cancel));
        Assert.Equal(("restore", "key-revoked"), LastLine("API key"));
    }

    [Fact]
    public async Task A_removed_tablet_stays_removed_and_is_named()
    {
        var tablets = new Tablets(_shop);
        var (enrolled, token) = await tablets.EnrolAsync("Bench 2", "Ada", Cancel);
        var answer = await RestoreAsync(() => tablets.RemoveAsync(enrolled.Id, "Ada", Cancel));
        Assert.Equal(["tablet \"Bench 2\": removed"], answer.Kept);
        Assert.Null(tablets.Find(token));
    }

    [Fact]
    public async Task A_switched_off_person_an_old_password_an_old_PIN_and_a_role_stay_as_they_were_last()
    {
        var (first, next) = (PeopleShelf.DrawPassword(), PeopleShelf.DrawPassword());
        foreach (var (name, role) in new[] { ("Ada", Role.Owner), ("Berrin", Role.Owner), ("Cai", Role.Cutter), ("Dov", Role.Driller), ("Eva", Role.Desk) })
            Assert.True((await Staff.AddAsync(name, role, first, "test", Cancel)).IsDone);
        Assert.True((await Staff.SetPinAsync(IdOf("Dov"), "4071", "test", Cancel)).IsDone);
        var answer = await RestoreAsync(async () =>
        {
            await Staff.SetPasswordAsync(IdOf("Cai"), next, "Ada", Cancel);
            await Staff.SetPinAsync(IdOf("Dov"), pin: null, "Ada", Cancel);
            await Staff.SwitchAsync(IdOf("Eva"), on: false, "Ada", Cancel);
            await Staff.ChangeRoleAsync(IdOf("Berrin"), Role.Desk, "Ada", Cancel);
            await Staff.AddAsync("Fen", Role.Desk, first, "Ada", Cancel);
        });
        Assert.Equal(["Berrin: role changed to desk", "Cai: password set", "Dov: PIN removed", "Eva: switched off"], answer.Kept!.Order());
        var signIn = new SignIn(_shop);
        Assert.Equal(SignInOutcome.Wrong, (await signIn.WithPasswordAsync("Cai", first, Here, Cancel)).Outcome);
        Assert.Equal(SignInOutcome.Right, (await signIn.WithPasswordAsync("Cai", next, Here, Cancel)).Outcome);
        Assert.Equal(SignInOutcome.Wrong, (await signIn.WithPinAsync("Dov", "4071", Here, Cancel)).Outcome);
        Assert.Equal(SignInOutcome.Wrong, (await signIn.WithPasswordAsync("Eva", first, Here, Cancel)).Outcome);
        Assert.Equal(Role.Desk, Staff.Find("Berrin")!.Role);
        Assert.Null(Staff.Find("Fen"));
        Assert.Equal(SignInOutcome.Right, (await signIn.WithPasswordAsync("Ada", first, Here, Cancel)).Outcome);
    }

    [Fact]
    public async Task What_was_opened_since_is_not_and_no_owner_left_is_said()
    {
        var password = PeopleShelf.DrawPassword();
        foreach (var (name, role) in new[] { ("Ada", Role.Owner), ("Cai", Role.Cutter), ("Dov", Role.Driller) })
            await Staff.AddAsync(name, role, password, "test", Cancel);
        await Staff.SwitchAsync(IdOf("Dov"), on: false, "test", Cancel);
        var answer = await RestoreAsync(async () =>
        {
            await Staff.ChangeRoleAsync(IdOf("Cai"), Role.Owner, "Ada", Cancel);
            await Staff.SwitchAsync(IdOf("Dov"), on: true, "Ada", Cancel);
            await Staff.SwitchAsync(IdOf("Ada"), on: false, "Cai", Cancel);
        });
        Assert.Equal(Role.Cutter, Staff.Find("Cai")!.Role);
        Assert.False(Staff.Find("Dov")!.IsActive);
        Assert.False(Staff.Find("Ada")!.IsActive);
        Assert.Single(answer.Kept!, line => line.StartsWith("No owner is left", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_session_that_was_signed_out_stays_so()
    {
        var (sessions, session) = (new Sessions(_shop), Sessions.Draw());
        var id = (await Staff.AddAsync("Ada", Role.Owner, PeopleShelf.DrawPassword(), "test", Cancel)).Id;
        var stamp = Staff.Find(id)!.Stamp;
        Assert.NotNull(sessions.PersonOf(id, stamp, session));
        var answer = await RestoreAsync(() => sessions.EndAsync(session, Cancel));
        Assert.Equal(["1 session: signed out"], answer.Kept);
        Assert.Null(sessions.PersonOf(id, stamp, session));
    }

    [Fact]
    public async Task A_label_that_was_replaced_twice_and_a_site_pack_stay_replaced()
    {
        await new JobIntake(_shop, ShopTables.Standard).TakeInAsync(SmallJobs.OnePiece("LQ-1"), "Ada", cancel: Cancel);
        var jobs = new JobShelf(_shop);
        var (labels, packs, pieces) = (new LabelShelf(_shop), new SitePackShelf(_shop), new PieceShelf(_shop));
        var (first, pack) = (jobs.Find("LQ-1")!.Codes[0], (await packs.CodeOfAsync("LQ-1", "Ada", Cancel))!.Value);
        var answer = await RestoreAsync(async () =>
        {
            var second = PieceCode.Parse((await labels.ReplaceAsync(first, "lost", "Ada", "1", Cancel)).Outcome).OrThrow();
            await labels.ReplaceAsync(second, "lost again", "Ada", "2", Cancel);
            await packs.ReplaceAsync("LQ-1", "copied", "Ada", "3", Cancel);
        });
        Assert.Equal([$"label {first} of A-top-1 of LQ-1: replaced", "site pack of LQ-1: replaced"], answer.Kept);
        Assert.Equal(LabelState.Ended, pieces.Find(first)!.Label);
        Assert.Null(packs.Find(pack));
        Assert.NotEqual(first, jobs.Find("LQ-1")!.Codes[0]);
        Assert.Empty(ShopCheck.Of(new ShopPlace(_store.Folder), TimeProvider.System));
    }

    [Fact]
    public async Task The_first_owners_link_does_not_open_again()
    {
        var token = (await new FirstOwner(_shop).DrawLinkAsync(Cancel))!;
        await RestoreAsync(() => new FirstOwner(_shop).MakeAsync(token, "Ada", PeopleShelf.DrawPassword(), Cancel));
        Assert.Empty(Staff.All());
        Assert.False(new FirstOwner(_shop).IsOpen(token));
    }

    [Fact]
    public async Task The_epoch_is_another_and_what_followers_must_undo_is_said()
    {
        await new JobIntake(_shop, ShopTables.Standard).TakeInAsync(SmallJobs.OnePiece("LQ-1"), "Ada", cancel: Cancel);
        var epoch = HistoryEpoch.Of(_shop);
        Assert.Equal(epoch, HistoryEpoch.Of(_shop));
        var answer = await RestoreAsync(() => new JobIntake(_shop, ShopTables.Standard).TakeInAsync(SmallJobs.OnePiece("LQ-2"), "Ada", cancel: Cancel));
        Assert.NotEqual(epoch, HistoryEpoch.Of(_shop));
        Assert.Equal(_shop.Read(session => session.Value<long>("SELECT max(id) FROM history")), answer.Backup!.LastLine);
        Assert.True(answer.Present!.LastLine > answer.Backup.LastLine);
    }

    [Fact]
    public async Task A_look_says_what_would_stay_shut_and_changes_nothing()
    {
        var keys = new ApiKeyShelf(_shop);
        var (made, _) = await keys.MakeAsync("web shop", KeyScope.TakeIn, "Ada", Cancel);
        var backup = Backup();
        await keys.RevokeAsync(made.Id, "Ada", Cancel);
        var (now, epoch) = (ShopDigest.Of(_store.DatabaseFile), HistoryEpoch.Of(_shop));
        Assert.Equal(["key \"web shop\": revoked"], Restore.Look(backup, force: false).Kept);
        Assert.Equal((now, epoch), (ShopDigest.Of(_store.DatabaseFile), HistoryEpoch.Of(_shop)));
    }

    public void Dispose()
    {
        _shop.Dispose();
        _store.Dispose();
    }

    private ShopRestore Restore => new(_store.Folder, TimeProvider.System);

    private long IdOf(string name) => Staff.Find(name)!.Id;

    private (string Who, string What) LastLine(string subject) =>
        _shop.Read(session => session.Value<(string, string)>("SELECT coalesce(actors.name, '') AS who, what FROM history JOIN actors ON actors.id = actor_id WHERE subject = @subject ORDER BY history.id DESC LIMIT 1", new { subject }));

    private string Backup() => new ShopBackups(_store.DatabaseFile, ShopFolder.BackupsIn(_store.Folder), TimeProvider.System).Make(keep: null).File.Path;

    /// <summary>Makes a backup, does something, and restores the backup under the open shop.</summary>
    private async Task<RestoreAnswer> RestoreAsync(Func<Task> since)
    {
        var made = Backup();
        var backup = made + ".of-before";
        File.Move(made, backup);
        await since();
        var answer = Restore.Restore(backup, force: false);
        Assert.True(answer.IsGood, answer.Problem);
        return answer;
    }
}
