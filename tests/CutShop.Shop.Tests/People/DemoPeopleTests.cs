namespace CutShop.Shop.Tests.People;

public sealed class DemoPeopleTests : IDisposable
{
    private readonly ShopOnDisk _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_demo_has_one_of_each_role_with_new_secrets_each_time()
    {
        var first = await new DemoPeople(_shop.Database).MakeAsync(Cancel);
        var second = await new DemoPeople(_shop.Database).MakeAsync(Cancel);
        Assert.Equal(Enum.GetValues<Role>(), first.Select(hand => hand.Person.Role).Order());
        Assert.Equal(first.Select(hand => hand.Person.Id), second.Select(hand => hand.Person.Id));
        Assert.Equal(8, first.Concat(second).Select(hand => hand.Password).Distinct().Count());
        var signIn = new SignIn(_shop.Database);
        Assert.Equal(SignInOutcome.Wrong, (await signIn.WithPasswordAsync(first[0].Person.Name, first[0].Password, new("an address", IsKnown: false), Cancel)).Outcome);
        Assert.Equal(SignInOutcome.Right, (await signIn.WithPasswordAsync(second[0].Person.Name, second[0].Password, new("an address", IsKnown: false), Cancel)).Outcome);
        Assert.Equal(SignInOutcome.Right, (await signIn.WithPinAsync(second[0].Person.Name, second[0].Pin, new("an address", IsKnown: false), Cancel)).Outcome);
    }

    [Fact]
    public async Task A_shop_with_people_of_its_own_gets_none_of_the_demos()
    {
        var answer = await new PeopleShelf(_shop.Database).AddAsync("Ada", Role.Owner, PeopleShelf.DrawPassword(), "test", Cancel);
        Assert.True(answer.IsDone);
        Assert.Empty(await new DemoPeople(_shop.Database).MakeAsync(Cancel));
        Assert.Equal("Ada", Assert.Single(new PeopleShelf(_shop.Database).All()).Name);
    }

    [Fact]
    public async Task A_fault_while_they_are_made_leaves_all_four_of_them_or_nobody()
    {
        const int FirstStep = 14; // a row, an actor and a line of history for each of four, who made them, and the setting
        for (var broken = 1; broken <= FirstStep; broken++)
        {
            var count = 0;
            _shop.Database.BeforeEachWrite = () =>
            {
                if (++count == broken)
                    throw new IOException("The disk is gone.");
            };
            await Assert.ThrowsAsync<IOException>(() => new DemoPeople(_shop.Database).MakeAsync(Cancel));
            Assert.Empty(new PeopleShelf(_shop.Database).All());
        }
        _shop.Database.BeforeEachWrite = null;
        Assert.Equal(4, (await new DemoPeople(_shop.Database).MakeAsync(Cancel)).Count);
    }

    [Fact]
    public async Task No_secret_is_in_the_database_in_plain()
    {
        var hands = await new DemoPeople(_shop.Database).MakeAsync(Cancel);
        var text = _shop.Database.Read(session => session.Value<string>("SELECT string_agg(name || password_hash || pin_hash || stamp, ',') FROM people"))
            + _shop.Database.Read(session => session.Value<string>("SELECT string_agg(what || before || after || details || reason, ',') FROM history"));
        Assert.All(hands, hand => Assert.DoesNotContain(hand.Password, text, StringComparison.Ordinal));
    }

    public void Dispose() => _shop.Dispose();
}
