using System.Net;
using Microsoft.Extensions.Time.Testing;

namespace CutShop.Web.Tests.People;

public sealed class TabletTests
{
    private static readonly DateTimeOffset Morning = new(2027, 3, 1, 7, 0, 0, TimeSpan.Zero);

    [Fact]
    public async Task On_an_enrolled_tablet_a_name_and_a_pin_are_enough()
    {
        await using var shop = await RunningShop.StartAsync();
        await GivePinAsync(shop, Role.Cutter, "4071");
        var tablet = await Bench.EnrolAsync(shop);
        using var form = await tablet.AskAsync("/sign-in");
        var page = await form.TextAsync();
        Assert.Contains("Bench 1", page, StringComparison.Ordinal);
        Assert.Contains(RunningShop.NameOf(Role.Cutter), page, StringComparison.Ordinal);
        Assert.DoesNotContain(RunningShop.NameOf(Role.Owner), page, StringComparison.Ordinal);
        using var signedIn = await tablet.SendFormAsync("/sign-in", ("name", RunningShop.NameOf(Role.Cutter)), ("pin", "4071"));
        Assert.Equal("/cut", signedIn.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task Anywhere_else_a_pin_is_worth_nothing_and_no_name_is_told()
    {
        await using var shop = await RunningShop.StartAsync();
        await GivePinAsync(shop, Role.Cutter, "4071");
        await Bench.EnrolAsync(shop);
        using var form = await shop.Stranger.AskAsync("/sign-in?way=pin");
        Assert.DoesNotContain(RunningShop.NameOf(Role.Cutter), await form.TextAsync(), StringComparison.Ordinal);
        using var answer = await shop.NewClient().SendFormAsync("/sign-in", ("name", RunningShop.NameOf(Role.Cutter)), ("pin", "4071"), ("password", "4071"), ("way", "pin"));
        Assert.Contains(SignInModel.Wrong, await answer.TextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Wrong_pins_lock_the_pin_and_leave_the_password()
    {
        var time = new FakeTimeProvider(Morning);
        await using var shop = await RunningShop.StartAsync(time);
        await GivePinAsync(shop, Role.Cutter, "4071");
        var tablet = await Bench.EnrolAsync(shop);
        for (var i = 0; i < SignIn.MostTries; i++)
            using (await PinAsync(tablet, "9999")) { }
        using var locked = await PinAsync(tablet, "4071");
        Assert.Contains(SignInModel.Locked, await locked.TextAsync(), StringComparison.Ordinal);
        using var byPassword = await tablet.SendFormAsync("/sign-in", ("way", "password"), ("name", RunningShop.NameOf(Role.Cutter)), ("password", await shop.PasswordOfAsync(Role.Cutter)));
        Assert.Equal(HttpStatusCode.Redirect, byPassword.StatusCode);
        time.Advance(SignIn.FirstWait);
        using var after = await PinAsync(tablet, "4071");
        Assert.Equal(HttpStatusCode.Redirect, after.StatusCode);
    }

    [Fact]
    public async Task Twenty_minutes_of_nothing_end_a_pin_sign_in()
    {
        var time = new FakeTimeProvider(Morning);
        await using var shop = await RunningShop.StartAsync(time);
        await GivePinAsync(shop, Role.Cutter, "4071");
        var tablet = await Bench.EnrolAsync(shop);
        using (await PinAsync(tablet, "4071")) { }
        time.Advance(SignedIn.BenchRest - TimeSpan.FromSeconds(1));
        using var still = await tablet.AskAsync("/me");
        Assert.Equal(HttpStatusCode.OK, still.StatusCode);
        time.Advance(SignedIn.BenchRest + TimeSpan.FromSeconds(1));
        using var gone = await tablet.AskAsync("/me");
        Assert.Equal(HttpStatusCode.Redirect, gone.StatusCode);
    }

    [Fact]
    public async Task A_removed_tablet_asks_for_a_password_again()
    {
        await using var shop = await RunningShop.StartAsync();
        await GivePinAsync(shop, Role.Cutter, "4071");
        var tablet = await Bench.EnrolAsync(shop);
        var id = Assert.Single(new Tablets(shop.Database).All()).Id;
        using (await shop.Client.SendFormAsync("/tablets?handler=Remove", ("id", $"{id}"))) { }
        using var form = await tablet.AskAsync("/sign-in");
        Assert.DoesNotContain("PIN", await form.TextAsync(), StringComparison.Ordinal);
    }

    private static Task<HttpResponseMessage> PinAsync(HttpClient tablet, string pin) =>
        tablet.SendFormAsync("/sign-in", ("name", RunningShop.NameOf(Role.Cutter)), ("pin", pin));

    private static async Task GivePinAsync(RunningShop shop, Role role, string pin)
    {
        await shop.PasswordOfAsync(role);
        var answer = await shop.People.SetPinAsync(shop.People.Find(RunningShop.NameOf(role))!.Id, pin, "test", TestContext.Current.CancellationToken);
        Assert.True(answer.IsDone);
    }
}
