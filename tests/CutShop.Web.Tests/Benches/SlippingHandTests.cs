using System.Net;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace CutShop.Web.Tests.Benches;

/// <summary>Taps that bounce, scans that come where a button has the focus, and tablets that change hands.</summary>
public sealed class SlippingHandTests(HeadlessBrowser browser)
{
    /// <summary>How long what has just appeared takes no tap, in milliseconds.</summary>
    private const int Rest = 800;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_tap_that_bounces_onto_the_step_that_the_page_then_shows_records_nothing()
    {
        await using var shop = await RunningShop.StartAsync();
        var (page, code) = await AtTheBenchAsync(shop);
        await page.TouchAsync("Done: pull and mark");
        var done = page.GetByRole(AriaRole.Button, new() { Name = "Done: prepare the ends and cut cold", Exact = true });
        await Assertions.Expect(done).ToBeEnabledAsync();
        var finger = await MiddleOfAsync(done);
        await StopClockAsync(page);
        await page.Touchscreen.TapAsync(finger.X, finger.Y);
        var figure = page.Locator(".measures button.main");
        await Assertions.Expect(figure).ToBeVisibleAsync();
        await Assertions.Expect(figure).ToBeDisabledAsync();
        // The worst bounce lands on the figure that counts.
        var bounce = await MiddleOfAsync(figure);
        await page.Touchscreen.TapAsync(bounce.X, bounce.Y);
        await page.Clock.RunForAsync(Rest - 1);
        await Assertions.Expect(figure).ToBeDisabledAsync();
        await page.Touchscreen.TapAsync(bounce.X, bounce.Y);
        await page.Clock.RunForAsync(1);
        await Assertions.Expect(figure).ToBeEnabledAsync();
        Assert.Equal((2, null), (new CutBench(shop.Database).Find(code)!.Steps, new CutBench(shop.Database).Find(code)!.Measured));
        await figure.TapAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Done: label" })).ToBeVisibleAsync();
        Assert.NotNull(new CutBench(shop.Database).Find(code)!.Measured);
    }

    [Fact]
    public async Task A_bounce_without_a_network_ticks_one_step_and_enter_on_what_has_just_appeared_none()
    {
        await using var shop = await RunningShop.StartAsync();
        var (page, code) = await AtTheBenchAsync(shop);
        var first = page.GetByRole(AriaRole.Button, new() { Name = "Done: pull and mark", Exact = true });
        await Assertions.Expect(first).ToBeEnabledAsync();
        var finger = await MiddleOfAsync(first);
        await page.Context.SetOfflineAsync(true);
        await StopClockAsync(page);
        await page.Touchscreen.TapAsync(finger.X, finger.Y);
        var second = page.GetByRole(AriaRole.Button, new() { Name = "Done: prepare the ends and cut cold", Exact = true });
        await Assertions.Expect(second).ToBeVisibleAsync();
        await Assertions.Expect(second).ToBeDisabledAsync();
        await page.Touchscreen.TapAsync(finger.X, finger.Y);
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#unsent li")).ToHaveCountAsync(1);
        await page.Clock.RunForAsync(Rest);
        await second.TapAsync();
        await Assertions.Expect(page.Locator("#unsent li")).ToHaveCountAsync(2);
        await page.Context.SetOfflineAsync(false);
        await page.Clock.ResumeAsync();
        await Assertions.Expect(page.Locator("#unsent")).ToBeHiddenAsync();
        await Assertions.Expect(page.Locator(".measures button.main")).ToBeVisibleAsync();
        Assert.Equal(2, new CutBench(shop.Database).Find(code)!.Steps);
    }

    [Fact]
    public async Task A_scan_is_a_scan_whatever_has_the_focus_and_without_a_network_it_is_refused_in_words()
    {
        await using var shop = await RunningShop.StartAsync();
        var (page, code) = await AtTheBenchAsync(shop);
        var bench = new CutBench(shop.Database);
        await page.Context.SetOfflineAsync(true);
        foreach (var step in new[] { "pull and mark", "prepare the ends and cut cold" })
            await page.TouchAsync($"Done: {step}");
        await Assertions.Expect(page.Locator(".measures button.main")).ToBeEnabledAsync();
        await Assertions.Expect(page.Locator("#scanned")).ToBeFocusedAsync();
        await page.Locator(".measures button").First.FocusAsync();
        await page.Keyboard.TypeAsync("C-017");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#unsent li")).ToHaveCountAsync(3);
        await Assertions.Expect(page.Locator("#unsent li").Last).ToContainTextAsync("C-017");
        await page.Locator("#scan").FillAsync(code.Plain);
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#refused")).ToHaveTextAsync($"No network: nothing was looked up for \"{code.Plain}\". Scan it again when the network is back.");
        await Assertions.Expect(page.Locator("#scan")).ToHaveValueAsync("");
        await page.Context.SetOfflineAsync(false);
        await Assertions.Expect(page.Locator("#unsent")).ToBeHiddenAsync();
        var verdict = page.Locator(".verdict");
        await Assertions.Expect(verdict).ToHaveClassAsync("verdict wrong");
        await page.Keyboard.PressAsync("Escape");
        Assert.Equal((2, null), (bench.Find(code)!.Steps, bench.Find(code)!.Measured));

        await Assertions.Expect(page.Locator(".measures button.main")).ToBeEnabledAsync();
        await page.Locator(".measures button").First.FocusAsync();
        await page.Keyboard.TypeAsync("LQ-1043 B1");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(verdict).ToHaveClassAsync("verdict wrong");
        await Assertions.Expect(verdict).ToContainTextAsync("This is post B1 of LQ-1043");
        Assert.Null(bench.Find(code)!.Measured);
    }

    [Fact]
    public async Task A_tap_waits_for_the_person_who_made_it_whoever_signs_in_between()
    {
        await using var shop = await RunningShop.StartAsync();
        var (page, code) = await AtTheBenchAsync(shop);
        var bench = new CutBench(shop.Database);
        await page.Context.SetOfflineAsync(true);
        await page.TouchAsync("Done: pull and mark");
        await Assertions.Expect(page.Locator("#unsent li")).ToHaveCountAsync(1);
        await BecomeAsync(page, shop, Role.Owner);
        await page.Context.SetOfflineAsync(false);
        await Assertions.Expect(page.Locator(".who summary")).ToHaveTextAsync(RunningShop.NameOf(Role.Owner));
        await Assertions.Expect(page.Locator("#unsent")).ToHaveTextAsync("1 tap of Test cutter waits here. It is sent when Test cutter signs in on this tablet.");
        await page.GotoAsync("/drill");
        await page.TouchAsync("Next post");
        await page.WaitForURLAsync("**/drill/*/*");
        await Assertions.Expect(page.Locator("#unsent")).ToContainTextAsync("1 tap of Test cutter waits here.");
        Assert.Equal(0, bench.Find(code)!.Steps);

        await BecomeAsync(page, shop, Role.Cutter);
        await page.GotoAsync("/drill");
        await page.WaitForURLAsync($"**/cut/{code.Plain}");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Done: prepare the ends" })).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#unsent")).ToBeHiddenAsync();
        Assert.Equal(1, bench.Find(code)!.Steps);
        var ticked = Assert.Single(new JobFeed(shop.Database).ChangesSince(0, 1000), change => change.Code == "cut-step-tapped");
        Assert.Equal("Test cutter", ticked.Who);
    }

    [Fact]
    public async Task The_shop_refuses_a_tap_that_says_it_is_another_persons()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.PlanDemoAsync();
        await shop.PasswordOfAsync(Role.Cutter);
        var (cutter, owner) = (shop.People.Find(RunningShop.NameOf(Role.Cutter))!.Id, shop.People.Find(RunningShop.NameOf(Role.Owner))!.Id);
        Assert.Equal(HttpStatusCode.Conflict, await SendAsync(cutter));
        Assert.Empty(new CutBench(shop.Database).AtTheBench());
        Assert.Equal(HttpStatusCode.OK, await SendAsync(owner));
        Assert.Single(new CutBench(shop.Database).AtTheBench());

        async Task<HttpStatusCode> SendAsync(long person)
        {
            shop.Client.DefaultRequestHeaders.Remove(OfItsPersonAttribute.TappedBy);
            shop.Client.DefaultRequestHeaders.Add(OfItsPersonAttribute.TappedBy, $"{person}");
            using var answer = await shop.Client.SendFormAsync("/cut?handler=Next", ("key", "k"));
            return answer.StatusCode;
        }
    }

    [Fact]
    public async Task A_length_is_tapped_with_gloves_or_typed()
    {
        await using var shop = await RunningShop.StartAsync();
        var (page, code) = await AtTheBenchAsync(shop);
        foreach (var step in new[] { "pull and mark", "prepare the ends and cut cold" })
            await page.TouchAsync($"Done: {step}");
        var field = page.GetByLabel("Another length");
        var pad = page.Locator(".pad");
        await Assertions.Expect(field).ToBeVisibleAsync();
        await Assertions.Expect(pad).ToBeHiddenAsync();
        await field.TapAsync();
        foreach (var key in new[] { "1", "9", "ft", "1", "0", "15/16" })
            await PressAsync(key);
        await Assertions.Expect(field).ToHaveValueAsync("19' 10 15/16\"");
        await PressAsync("1/4");
        await Assertions.Expect(field).ToHaveValueAsync("19' 10 1/4\"");
        await PressAsync("Delete the last");
        await Assertions.Expect(field).ToHaveValueAsync("19' 10");
        foreach (var key in await pad.Locator("button").AllAsync())
            Assert.True((await key.BoundingBoxAsync())! is { Height: >= 72, Width: >= 60 });
        await field.FillAsync("60 in");
        await page.TouchAsync("Enter");
        await Assertions.Expect(page.GetByText("You typed 60 in, ")).ToBeVisibleAsync();

        var person = shop.People.Find(RunningShop.NameOf(Role.Cutter))!;
        await shop.People.SetUnitsAsync(person.Id, millimetresFirst: true, "test", Cancel);
        await page.GotoAsync($"/cut/{code.Plain}");
        await field.TapAsync();
        await Assertions.Expect(pad.Locator("button")).ToHaveCountAsync(12);
        foreach (var key in "1524")
            await PressAsync($"{key}");
        await page.TouchAsync("Enter");
        await Assertions.Expect(page.GetByText("You typed 1524, ")).ToBeVisibleAsync();

        Task PressAsync(string key) => pad.GetByRole(AriaRole.Button, new() { Name = key, Exact = true }).TapAsync();
    }

    [Theory]
    [InlineData(390, 844)]
    [InlineData(1024, 768)]
    public async Task Who_reads_millimetres_reads_whole_ones_at_the_bench_and_the_largest_figure_stays_in_its_box(int width, int height)
    {
        await using var shop = await RunningShop.StartAsync();
        var (page, code) = await AtTheBenchAsync(shop, width, height);
        var person = shop.People.Find(RunningShop.NameOf(Role.Cutter))!;
        await InBoxesAsync(page);
        await shop.People.SetUnitsAsync(person.Id, millimetresFirst: true, "test", Cancel);
        await page.GotoAsync($"/cut/{code.Plain}");
        var text = await page.Locator("main").InnerTextAsync();
        Assert.Matches(@"\d\smm", text);
        Assert.DoesNotMatch(@"≈[^""]*mm|\.\d\smm", text);
        await InBoxesAsync(page);
    }

    [Fact]
    public async Task A_scan_at_the_parcel_is_answered_across_the_screen_and_says_where_the_piece_belongs()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.PlanDemoAsync(BeachRamp);
        var other = await shop.PlanDemoAsync();
        var bench = new CutBench(shop.Database);
        Assert.Null((await bench.RecordCutAsync(job.Codes[0], "Ada", "k1", Cancel)).Problem);
        var page = await browser.OpenAsync(shop, touch: true, role: Role.Cutter);
        await page.GotoAsync($"/pack/{job.Number}");
        var verdict = page.Locator(".verdict");

        await ScanAsync(job.Codes[0].Plain);
        await Assertions.Expect(verdict).ToHaveClassAsync("verdict right");
        await Assertions.Expect(verdict).ToContainTextAsync($"{job.Pieces[0].Run} · ");
        await Assertions.Expect(verdict).ToContainTextAsync($"{job.Number} · {job.Takeoff.Job.Customer}");
        var box = (await verdict.BoundingBoxAsync())!;
        Assert.Equal((1280, 800), (box.Width, box.Height));
        Assert.Empty((await page.RunAxe()).Violations.Select(violation => violation.Id));

        // The next scan takes its place, and a tap closes it.
        await ScanAsync(other.Codes[0].Plain);
        await Assertions.Expect(verdict).ToHaveClassAsync("verdict wrong");
        await Assertions.Expect(verdict).ToContainTextAsync($"The piece {other.Codes[0]} belongs to job {other.Number}.");
        await Assertions.Expect(verdict).ToContainTextAsync($"{other.Pieces[0].Run} · ");
        await Assertions.Expect(verdict).ToContainTextAsync($"{other.Number} · {other.Takeoff.Job.Customer}");
        await verdict.TapAsync();
        await Assertions.Expect(verdict).ToHaveCountAsync(0);

        var plain = job.Codes[0].Plain;
        await ScanAsync($"{plain[..^1]}{(plain[^1] == '2' ? '3' : '2')}");
        await Assertions.Expect(verdict).ToContainTextAsync("the last character does not match the others");
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(verdict).ToHaveCountAsync(0);

        await new LabelShelf(shop.Database).ReplaceAsync(other.Codes[1], "lost", "Ada", "k2", Cancel);
        await ScanAsync($"HTTPS://SHOP.EXAMPLE/P/{other.Codes[1].Plain}");
        await Assertions.Expect(verdict).ToContainTextAsync($"The label {other.Codes[1]} is no longer valid: {other.Pieces[1].Run} of job {other.Number} has a new label, {shop.Jobs.Find(other.Number)!.Codes[1]}.");

        async Task ScanAsync(string text)
        {
            await Assertions.Expect(page.Locator("#piece")).ToBeFocusedAsync();
            await page.Keyboard.TypeAsync(text);
            await page.Keyboard.PressAsync("Enter");
        }
    }

    [Fact]
    public async Task Without_the_scripts_a_scan_at_the_parcel_is_answered_on_the_page()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.PlanDemoAsync(BeachRamp);
        using var answer = await shop.Client.SendFormAsync($"/pack/{job.Number}?handler=Pack", ("key", "k"), ("scan", job.Codes[0].Plain));
        Assert.Contains("<div class=\"verdict wrong\" role=\"alert\">", await answer.TextAsync(), StringComparison.Ordinal);
    }

    private const string BeachRamp = "lq-1043-beach-ramp.json";

    private static async Task InBoxesAsync(IPage page)
    {
        Assert.Empty(await page.EvaluateAsync<string[]>(
            """
            [...document.querySelectorAll(".bench-figures .huge")].filter(figure => {
              const range = document.createRange();
              range.selectNodeContents(figure);
              const [text, box] = [range.getBoundingClientRect(), figure.parentElement.getBoundingClientRect()];
              return text.right > box.right - 6 || text.left < box.left + 6 || figure.getClientRects().length > 1;
            }).map(figure => figure.textContent)
            """));
    }

    private static async Task BecomeAsync(IPage page, RunningShop shop, Role role)
    {
        await page.Context.ClearCookiesAsync();
        foreach (System.Net.Cookie cookie in (await shop.CookiesOfAsync(role)).GetCookies(shop.Address))
            await page.Context.AddCookiesAsync([new() { Name = cookie.Name, Value = cookie.Value, Url = shop.Address.ToString(), HttpOnly = cookie.HttpOnly }]);
    }

    private static async Task<(float X, float Y)> MiddleOfAsync(ILocator button)
    {
        var box = (await button.BoundingBoxAsync())!;
        return (box.X + (box.Width / 2), box.Y + (box.Height / 2));
    }

    /// <summary>Time stands still for the page until it is told to go on.</summary>
    private static async Task StopClockAsync(IPage page)
    {
        await page.Clock.InstallAsync();
        await page.Clock.PauseAtAsync(DateTime.UtcNow.AddHours(1));
    }

    /// <summary>A cutter's page with a piece at the bench.</summary>
    private async Task<(IPage Page, PieceCode Code)> AtTheBenchAsync(RunningShop shop, int width = 1280, int height = 800)
    {
        await shop.PlanDemoAsync(BeachRamp);
        var page = await browser.OpenAsync(shop, width, height, touch: true, role: Role.Cutter);
        await page.GotoAsync("/cut");
        await page.TouchAsync("Next piece");
        await page.WaitForURLAsync("**/cut/*");
        return (page, PieceCode.Parse(page.Url[^12..]).OrThrow());
    }
}
