using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace CutShop.Web.Tests.People;

public sealed class PeoplePagesTests(HeadlessBrowser browser, PeoplePagesTests.StaffedShop staffed) : IClassFixture<PeoplePagesTests.StaffedShop>
{
    [Fact]
    public async Task The_owner_adds_a_cutter_who_signs_in_with_the_password_shown_once()
    {
        await using var shop = await RunningShop.StartAsync();
        var page = await browser.OpenAsync(shop);
        await page.GotoAsync("/people");
        await page.GetByLabel("Name").FillAsync("Wilmot");
        await page.GetByLabel("Role").SelectOptionAsync("cutter");
        await page.GetByLabel("Role").PressAsync("Tab");
        await page.Keyboard.PressAsync("Enter");
        var password = await page.Locator(".secret").TextContentAsync();
        await page.GotoAsync("/people");
        await Assertions.Expect(page.Locator(".secret")).ToHaveCountAsync(0);

        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await page.GetByLabel("Name").FillAsync("wilmot");
        await page.GetByLabel("Password").FillAsync(password!);
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Cut bench");
        await Assertions.Expect(page.Locator(".who summary")).ToHaveTextAsync("Wilmot");
        await page.GotoAsync("/");
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "Settings" })).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task The_last_owner_cannot_be_switched_off_or_given_another_role()
    {
        await using var shop = await RunningShop.StartAsync();
        var id = shop.People.Find(RunningShop.NameOf(Role.Owner))!.Id;
        using var off = await shop.Client.SendFormAsync($"/people/{id}?handler=Switch", ("on", "false"));
        Assert.Contains("at least one active owner", await off.TextAsync(), StringComparison.Ordinal);
        using var other = await shop.Client.SendFormAsync($"/people/{id}?handler=Role", ("role", "desk"));
        Assert.Contains("at least one active owner", await other.TextAsync(), StringComparison.Ordinal);
        Assert.Equal(Role.Owner, shop.People.Find(id)!.Role);
    }

    [Fact]
    public async Task A_person_changes_password_and_pin_only_with_the_password_at_hand()
    {
        await using var shop = await RunningShop.StartAsync();
        var client = await shop.SignInAsync(Role.Cutter);
        var password = await shop.PasswordOfAsync(Role.Cutter);
        using var refused = await client.SendFormAsync("/me?handler=Pin", ("proof", "not the password"), ("pin", "4071"));
        Assert.Contains("the password that you sign in with", await refused.TextAsync(), StringComparison.Ordinal);
        Assert.False(shop.People.Find(RunningShop.NameOf(Role.Cutter))!.HasPin);
        using var set = await client.SendFormAsync("/me?handler=Pin", ("proof", password), ("pin", "4071"));
        Assert.Contains("Your PIN is set", await set.TextAsync(), StringComparison.Ordinal);
        using var changed = await client.SendFormAsync("/me?handler=Password", ("now", password), ("password", "four short words here"), ("again", "four short words here"));
        Assert.Contains("Your password is changed", await changed.TextAsync(), StringComparison.Ordinal);
        var signIn = new SignIn(shop.Database);
        Assert.Equal(SignInOutcome.Wrong, (await signIn.WithPasswordAsync(RunningShop.NameOf(Role.Cutter), password, new("a test", IsKnown: false), TestContext.Current.CancellationToken)).Outcome);
        Assert.Equal(SignInOutcome.Right, (await signIn.WithPasswordAsync(RunningShop.NameOf(Role.Cutter), "four short words here", new("a test", IsKnown: false), TestContext.Current.CancellationToken)).Outcome);
    }

    [Fact]
    public async Task A_person_who_reads_Spanish_is_told_in_Spanish_what_is_accepted()
    {
        await using var shop = await RunningShop.StartAsync();
        var client = await shop.SignInAsync(Role.Cutter);
        using var language = await client.AskAsync("/language/es?back=/me");
        var password = await shop.PasswordOfAsync(Role.Cutter);
        foreach (var (address, field, typed, accepted) in new[]
        {
            ("/me?handler=Pin", "pin", "1234", "se acepta: de 4 a 8 cifras"),
            ("/me?handler=Password", "password", "short", "se acepta: de 10 a "),
            ("/me?handler=Password", "password", "password2025", "es demasiado fácil de adivinar"),
        })
        {
            using var refused = await client.SendFormAsync(address, ("proof", password), ("now", password), (field, typed), ("again", typed));
            Assert.Contains(accepted, await refused.TextAsync(), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("1234")]
    [InlineData("8765")]
    [InlineData("0000")]
    [InlineData("123")]
    [InlineData("407140710")]
    [InlineData("40a1")]
    public async Task A_pin_that_anyone_would_guess_is_not_taken(string pin)
    {
        var answer = await staffed.Shop.People.SetPinAsync(staffed.Shop.People.Find(RunningShop.NameOf(Role.Owner))!.Id, pin, "test", TestContext.Current.CancellationToken);
        Assert.Equal("pin", answer.Problem!.Field);
    }

    [Fact]
    public async Task Each_person_sees_lengths_in_the_unit_of_their_choice_and_an_installer_in_the_shops()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync("lq-1042-north-walk.json");
        var client = await shop.SignInAsync(Role.Cutter);
        var address = $"/p/{job.Codes[0].Plain}";
        var inches = await client.GetStringAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
        using (await client.SendFormAsync("/me?handler=Units", ("units", "millimetres"))) { }
        var millimetres = await client.GetStringAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Matches("class=\"sag\">[^<]*&quot; \\(", inches);
        Assert.Matches("class=\"sag\">[^<]*mm \\(", millimetres);
        using var stranger = await shop.Stranger.AskAsync(address);
        Assert.Matches("class=\"sag\">[^<]*\" \\(", await stranger.TextAsync());
    }

    [Fact]
    public async Task A_script_in_a_name_is_shown_as_text()
    {
        await using var shop = await RunningShop.StartAsync();
        var page = await browser.OpenAsync(shop);
        await page.GotoAsync("/people");
        await page.GetByLabel("Name").FillAsync("<img src=x onerror=alert(1)>");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add and show a first password" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "<img src=x onerror=alert(1)>" })).ToBeVisibleAsync();
        Assert.Equal(0, await page.Locator("img").CountAsync());
    }

    [Theory]
    [InlineData("/people")]
    [InlineData("/people/1")]
    [InlineData("/me")]
    [InlineData("/tablets")]
    [InlineData("/keys")]
    [InlineData("/sign-out")]
    public async Task Axe_finds_nothing_wrong_for_who_is_signed_in(string address)
    {
        foreach (var (width, height) in Sizes)
        {
            var page = await browser.OpenAsync(staffed.Shop, width, height);
            await LookAsync(page, address, width);
            await page.Context.CloseAsync();
        }
    }

    [Fact]
    public async Task Axe_finds_nothing_wrong_with_what_strangers_see()
    {
        await using var shop = await RunningShop.StartAsync();
        foreach (var (width, height) in Sizes)
        {
            var page = await browser.OpenAsStrangerAsync(shop, width, height);
            await LookAsync(page, "/sign-in", width);
            await page.GetByLabel("Name").FillAsync("Nobody");
            await page.GetByLabel("Password").FillAsync("nothing");
            await page.Keyboard.PressAsync("Enter");
            await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToBeVisibleAsync();
            await LookAsync(page, address: null, width);
        }
    }

    [Fact]
    public async Task Axe_finds_nothing_wrong_with_the_first_start()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var token = await new FirstOwner(shop.Database).DrawLinkAsync(TestContext.Current.CancellationToken);
        foreach (var (width, height) in Sizes)
            await LookAsync(await browser.OpenAsStrangerAsync(shop, width, height), $"/set-up/{token}", width);
    }

    [Fact]
    public async Task At_a_tablet_a_finger_finds_name_pin_and_button()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.People.SetPinAsync(shop.People.Find(RunningShop.NameOf(Role.Owner))!.Id, "4071", "test", TestContext.Current.CancellationToken);
        var page = await browser.OpenAsync(shop, 820, 1180, touch: true, role: Role.Desk);
        await page.GotoAsync("/tablets");
        await page.GetByLabel("What the shop calls it").FillAsync("Bench 1");
        await page.GetByRole(AriaRole.Button, new() { Name = "Enrol this tablet and sign out" }).TapAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Group, new() { Name = "Who are you?" })).ToBeVisibleAsync();
        await LookAsync(page, address: null, 820);
        foreach (var target in await page.Locator("main .choice, main input[type=password], main .button, main button, .who a").AllAsync())
            Assert.InRange((await target.BoundingBoxAsync())!.Height, 48, double.MaxValue);
        await page.GetByText(RunningShop.NameOf(Role.Owner)).TapAsync();
        await page.GetByLabel("PIN").FillAsync("4071");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).TapAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Jobs");
    }

    [Theory]
    [InlineData(1024, 768)]
    [InlineData(390, 844)]
    public async Task At_a_tablet_hands_in_gloves_sign_in_in_their_language_and_are_at_their_bench(int width, int height)
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.PasswordOfAsync(Role.Cutter);
        await shop.People.SetPinAsync(shop.People.Find(RunningShop.NameOf(Role.Cutter))!.Id, "4071", "test", TestContext.Current.CancellationToken);
        var page = await browser.OpenAsync(shop, width, height, touch: true, role: Role.Desk);
        await page.GotoAsync("/tablets");
        await page.GetByLabel("What the shop calls it").FillAsync("Bench 1");
        await page.GetByRole(AriaRole.Button, new() { Name = "Enrol this tablet and sign out" }).TapAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Español" }).TapAsync();
        await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("lang", "es");
        await LookAsync(page, address: null, width);
        foreach (var target in await page.Locator(".names .choice, .pad button, .by-pin .main").AllAsync())
            Assert.InRange((await target.BoundingBoxAsync())!.Height, 72, double.MaxValue);
        await SignInAsync("9999");
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("El nombre y la contraseña o el PIN no coinciden.");
        await SignInAsync("4071");
        await page.WaitForURLAsync("**/cut");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Banco de corte");
        await LookAsync(page, "/me", width);
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Unidades" })).ToBeVisibleAsync();
        await page.GotoAsync("/cut/XXXX");
        await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("lang", "es");
        await page.GetByRole(AriaRole.Link, new() { Name = "A mi trabajo" }).TapAsync();
        await page.WaitForURLAsync("**/cut");

        // Signing out is not beside the scan field: it is behind the name.
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Salir" })).ToBeHiddenAsync();
        await page.Locator(".who summary").TapAsync();
        await LookAsync(page, address: null, width);
        await page.GetByRole(AriaRole.Button, new() { Name = "Salir" }).TapAsync();
        await page.WaitForURLAsync("**/sign-in");

        async Task SignInAsync(string pin)
        {
            await page.GetByText(RunningShop.NameOf(Role.Cutter)).TapAsync();
            foreach (var digit in pin)
                await page.GetByRole(AriaRole.Group, new() { Name = "Teclas de números" }).GetByText($"{digit}").TapAsync();
            await page.GetByRole(AriaRole.Button, new() { Name = "Entrar" }).TapAsync();
        }
    }

    /// <summary>A shop with a key and an enrolled tablet.</summary>
    public sealed class StaffedShop : SharedShop
    {
        protected override async Task FillAsync(RunningShop shop)
        {
            await new ApiKeyShelf(shop.Database).MakeAsync("Order desk program", KeyScope.TakeIn, "test", TestContext.Current.CancellationToken);
            await Bench.EnrolAsync(shop);
        }
    }

    private static (int Width, int Height)[] Sizes { get; } = [(1280, 800), (390, 844)];

    private static async Task LookAsync(IPage page, string? address, int width)
    {
        if (address is not null)
            Assert.Equal(200, (await page.GotoAsync(address))!.Status);
        var result = await page.RunAxe();
        Assert.Empty(result.Violations.Select(violation => $"{violation.Id}: {violation.Nodes[0].Html}"));
        Assert.Equal(width, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
    }
}
