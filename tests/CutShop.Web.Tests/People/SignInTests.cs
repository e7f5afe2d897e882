using System.Net;
using CutShop.Testing.Trust;
using Microsoft.Extensions.Time.Testing;

namespace CutShop.Web.Tests.People;

public sealed class SignInTests
{
    private static readonly DateTimeOffset Morning = new(2027, 3, 1, 7, 0, 0, TimeSpan.Zero);
    private static readonly SignInPlace Here = new("an address", IsKnown: false);

    [Fact]
    public async Task A_person_signs_in_goes_where_they_meant_to_and_signs_out()
    {
        await using var shop = await RunningShop.StartAsync();
        var client = shop.NewClient();
        using var asked = await client.AskAsync("/stock");
        Assert.Equal("/sign-in?back=%2Fstock", asked.Headers.Location!.OriginalString);
        using var signedIn = await client.SendFormAsync("/sign-in", ("name", " test  OWNER "), ("password", await shop.PasswordOfAsync(Role.Owner)), ("back", "/stock"));
        Assert.Equal("/stock", signedIn.Headers.Location!.OriginalString);
        using var stock = await client.AskAsync("/stock");
        Assert.Equal(HttpStatusCode.OK, stock.StatusCode);
        using var signedOut = await client.SendFormAsync("/sign-out");
        Assert.Equal("/sign-in", signedOut.Headers.Location!.OriginalString);
        using var after = await client.AskAsync("/stock");
        Assert.Equal(HttpStatusCode.Redirect, after.StatusCode);
    }

    [Theory]
    [InlineData("https://elsewhere.example/")]
    [InlineData("//elsewhere.example/")]
    [InlineData("/\\elsewhere.example/")]
    [InlineData("/\t/elsewhere.example/")]
    public async Task Signing_in_never_leads_to_another_site(string back)
    {
        await using var shop = await RunningShop.StartAsync();
        using var answer = await shop.NewClient().SendFormAsync("/sign-in", ("name", RunningShop.NameOf(Role.Owner)), ("password", await shop.PasswordOfAsync(Role.Owner)), ("back", back));
        Assert.Equal("/", answer.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task The_cookie_is_for_this_site_and_not_for_scripts()
    {
        await using var shop = await RunningShop.StartAsync();
        using var answer = await shop.NewClient().SendFormAsync("/sign-in", ("name", RunningShop.NameOf(Role.Owner)), ("password", await shop.PasswordOfAsync(Role.Owner)));
        var cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"), value => value.StartsWith("cutshop=", StringComparison.Ordinal));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=lax", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("expires", cookie, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("https", true)]
    [InlineData("http", false)]
    public async Task The_cookie_is_for_https_only_where_the_proxy_says_that_the_way_is_https(string scheme, bool isSecure)
    {
        await using var shop = await RunningShop.StartAsync();
        var client = shop.NewClient();
        client.DefaultRequestHeaders.Add("X-Forwarded-Proto", scheme);
        using var form = await client.AskAsync("/sign-in");
        var formCookie = Assert.Single(form.Headers.GetValues("Set-Cookie"));
        var token = PageText.TokenIn(await form.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        // The client would not send a cookie for https over http, so the form's cookie is sent by hand.
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri("/sign-in", UriKind.Relative))
        {
            Content = new FormUrlEncodedContent([KeyValuePair.Create("name", RunningShop.NameOf(Role.Owner)), KeyValuePair.Create("password", await shop.PasswordOfAsync(Role.Owner)), KeyValuePair.Create("__RequestVerificationToken", token)]),
        };
        if (isSecure)
            request.Headers.Add("Cookie", formCookie.Split(';')[0]);
        using var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
        var cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"), value => value.StartsWith("cutshop=", StringComparison.Ordinal));
        Assert.Equal(isSecure, cookie.Contains("; secure", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task After_five_wrong_tries_a_name_waits_twice_as_long_with_each_more_and_a_restart_does_not_forget_them()
    {
        var time = new FakeTimeProvider(Morning);
        await using var shop = await RunningShop.StartAsync(time);
        var (name, password) = (RunningShop.NameOf(Role.Owner), await shop.PasswordOfAsync(Role.Owner));
        for (var i = 1; i < SignIn.MostTries; i++)
            Assert.Contains(SignInModel.Wrong, await TryAsync(shop, name, "not the password"), StringComparison.Ordinal);
        await shop.RestartAsync();
        foreach (var (said, seconds) in new[] { ("30 seconds", 30), ("60 seconds", 60), ("2 minutes", 120), ("4 minutes", 240), ("8 minutes", 480), ("15 minutes", 900), ("15 minutes", 900) })
        {
            Assert.Contains($"Try again in {said}", await TryAsync(shop, name, "not the password"), StringComparison.Ordinal);
            time.Advance(TimeSpan.FromSeconds(seconds - 1));
            Assert.Contains($"{SignInModel.Locked} Try again in 1 second.", await TryAsync(shop, name, password), StringComparison.Ordinal);
            time.Advance(TimeSpan.FromSeconds(1));
        }
        Assert.Equal("", await TryAsync(shop, name, password));
        Assert.Contains(SignInModel.Wrong, await TryAsync(shop, name, "not the password"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_stranger_who_tries_a_name_elsewhere_holds_neither_another_address_nor_a_known_browser_up()
    {
        await using var shop = await RunningShop.StartAsync(new FakeTimeProvider(Morning));
        var (name, password) = (RunningShop.NameOf(Role.Desk), await shop.PasswordOfAsync(Role.Desk));
        var known = await shop.SignInAsync(Role.Desk, follow: false);
        using (await known.SendFormAsync("/sign-out")) { }
        for (var i = 0; i < SignIn.MostTries; i++)
            await TryAsync(shop, name, "not the password", "2001:db8:1:2::" + i);
        Assert.Contains(SignInModel.Locked, await TryAsync(shop, name, password, "2001:db8:1:2:ffff::1"), StringComparison.Ordinal);
        Assert.Equal("", await TryAsync(shop, name, password, "2001:db8:1:3::1"));
        for (var i = 0; i < SignIn.MostTriesAnywhere; i++)
            await TryAsync(shop, name, "not the password", $"198.51.100.{i}");
        Assert.Contains(SignInModel.Locked, await TryAsync(shop, name, password, "203.0.113.7"), StringComparison.Ordinal);
        using var signedIn = await known.SendFormAsync("/sign-in", ("name", name), ("password", password));
        Assert.Equal("/", signedIn.Headers.Location?.OriginalString);
    }

    [Fact]
    public async Task A_browser_is_known_to_nobody_else_nor_after_a_new_password_and_its_own_wrong_tries_count()
    {
        await using var shop = await RunningShop.StartAsync(new FakeTimeProvider(Morning));
        var (name, password) = (RunningShop.NameOf(Role.Desk), await shop.PasswordOfAsync(Role.Desk));
        var browser = await shop.SignInAsync(Role.Cutter, follow: false);
        for (var i = 0; i < SignIn.MostTries; i++)
            await TryAsync(shop, name, "not the password");
        Assert.Contains(SignInModel.Locked, await OnAsync(browser, name, password), StringComparison.Ordinal);

        var cutter = RunningShop.NameOf(Role.Cutter);
        for (var i = 0; i < SignIn.MostTries; i++)
            await OnAsync(browser, cutter, "not the password");
        Assert.Contains(SignInModel.Locked, await OnAsync(browser, cutter, await shop.PasswordOfAsync(Role.Cutter)), StringComparison.Ordinal);

        var next = PeopleShelf.DrawPassword();
        Assert.True((await shop.People.SetPasswordAsync(shop.People.Find(cutter)!.Id, next, "test", TestContext.Current.CancellationToken)).IsDone);
        for (var i = 0; i < SignIn.MostTries; i++)
            await TryAsync(shop, cutter, "not the password");
        Assert.Contains(SignInModel.Locked, await OnAsync(browser, cutter, next), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_copy_of_the_cookie_is_worth_nothing_once_its_session_was_signed_out()
    {
        await using var shop = await RunningShop.StartAsync();
        var cookies = new CookieContainer();
        var client = shop.NewClient(cookies);
        using (await client.SendFormAsync("/sign-in", ("name", RunningShop.NameOf(Role.Owner)), ("password", await shop.PasswordOfAsync(Role.Owner)))) { }
        var stolen = cookies.GetCookies(shop.Address)["cutshop"]!.Value;
        Assert.Equal(HttpStatusCode.OK, await WithCookieAsync(shop, stolen));
        using (await client.SendFormAsync("/sign-out")) { }
        Assert.Equal(HttpStatusCode.Redirect, await WithCookieAsync(shop, stolen));
        await shop.RestartAsync();
        Assert.Equal(HttpStatusCode.Redirect, await WithCookieAsync(shop, stolen));
        // The owner's other browser goes on.
        using var other = await shop.Client.AskAsync("/people");
        Assert.Equal(HttpStatusCode.OK, other.StatusCode);
    }

    [Fact]
    public async Task A_hash_of_fewer_rounds_is_made_again_when_its_person_signs_in_and_nothing_ends()
    {
        await using var shop = await RunningShop.StartAsync();
        var password = await shop.PasswordOfAsync(Role.Desk);
        // As an older version of this program kept it: form 3 of the framework's hasher, with its usual rounds.
        var old = new Microsoft.AspNetCore.Identity.PasswordHasher<Person>(Microsoft.Extensions.Options.Options.Create(new Microsoft.AspNetCore.Identity.PasswordHasherOptions { IterationCount = 100_000 })).HashPassword(null!, password);
        var id = shop.People.Find(RunningShop.NameOf(Role.Desk))!.Id;
        await shop.Database.WriteAsync(session => session.Execute("UPDATE people SET password_hash = @old WHERE id = @id", new { old, id }), TestContext.Current.CancellationToken);
        var stamp = shop.People.Find(id)!.Stamp;
        Assert.Equal(100_000, RoundsOf(shop, id));
        Assert.Contains(SignInModel.Wrong, await TryAsync(shop, RunningShop.NameOf(Role.Desk), "not the password"), StringComparison.Ordinal);
        Assert.Equal(100_000, RoundsOf(shop, id));
        Assert.Equal("", await TryAsync(shop, RunningShop.NameOf(Role.Desk), password));
        // OWASP, Password Storage Cheat Sheet: 210,000 rounds of PBKDF2-HMAC-SHA512.
        Assert.Equal(210_000, RoundsOf(shop, id));
        Assert.Equal(stamp, shop.People.Find(id)!.Stamp);
        Assert.Equal("", await TryAsync(shop, RunningShop.NameOf(Role.Desk), password));
    }

    [Fact]
    public async Task A_name_that_nobody_has_is_answered_word_for_word_as_one_that_somebody_has()
    {
        await using var shop = await RunningShop.StartAsync(new FakeTimeProvider(Morning));
        await shop.PasswordOfAsync(Role.Cutter);
        for (var i = 1; i <= SignIn.MostTries + 1; i++)
        {
            var known = await TryAsync(shop, RunningShop.NameOf(Role.Cutter), "not the password");
            var unknown = await TryAsync(shop, "Nobody Atall", "not the password");
            Assert.Contains(i < SignIn.MostTries ? SignInModel.Wrong : SignInModel.Locked, known, StringComparison.Ordinal);
            Assert.Equal(Plain(known, RunningShop.NameOf(Role.Cutter)), Plain(unknown, "Nobody Atall"));
        }
    }

    [Fact]
    public async Task Many_tries_at_one_moment_get_no_further_than_five()
    {
        await using var shop = await RunningShop.StartAsync(new FakeTimeProvider(Morning));
        var password = await shop.PasswordOfAsync(Role.Cutter);
        var signIn = new SignIn(shop.Database);
        var guesses = Enumerable.Range(0, 12).Select(i => signIn.WithPasswordAsync(RunningShop.NameOf(Role.Cutter), $"guess {i}", Here));
        var answers = await Task.WhenAll(guesses);
        Assert.Equal(SignIn.MostTries - 1, answers.Count(answer => answer.Outcome == SignInOutcome.Wrong));
        Assert.Equal(SignInOutcome.Locked, (await signIn.WithPasswordAsync(RunningShop.NameOf(Role.Cutter), password, Here, TestContext.Current.CancellationToken)).Outcome);
    }

    [Fact]
    public async Task A_new_password_from_the_owner_unlocks_the_name()
    {
        await using var shop = await RunningShop.StartAsync(new FakeTimeProvider(Morning));
        await shop.PasswordOfAsync(Role.Driller);
        var name = RunningShop.NameOf(Role.Driller);
        for (var i = 0; i < SignIn.MostTries; i++)
            await TryAsync(shop, name, "not the password");
        using var reset = await shop.Client.SendFormAsync($"/people/{shop.People.Find(name)!.Id}?handler=Password");
        Assert.Equal("", await TryAsync(shop, name, PageText.SecretIn(await reset.TextAsync())));
    }

    [Fact]
    public async Task Two_hours_of_nothing_sign_a_person_out_and_work_in_between_keeps_them_in()
    {
        var time = new FakeTimeProvider(Morning);
        await using var shop = await RunningShop.StartAsync(time);
        var client = await shop.SignInAsync(Role.Desk, follow: false);
        for (var i = 0; i < 3; i++)
        {
            time.Advance(SignedIn.DeskRest - TimeSpan.FromMinutes(1));
            using var still = await client.AskAsync("/me");
            Assert.Equal(HttpStatusCode.OK, still.StatusCode);
        }
        time.Advance(SignedIn.DeskRest + TimeSpan.FromSeconds(1));
        using var gone = await client.AskAsync("/me");
        Assert.Equal(HttpStatusCode.Redirect, gone.StatusCode);
    }

    [Fact]
    public async Task A_restart_signs_nobody_out()
    {
        await using var shop = await RunningShop.StartAsync();
        var client = await shop.SignInAsync(Role.Cutter, follow: false);
        await shop.RestartAsync();
        using var answer = await client.AskAsync("/me");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Theory]
    [InlineData("Password")]
    [InlineData("Pin")]
    [InlineData("Role", "role", "driller")]
    [InlineData("Switch", "on", "false")]
    public async Task A_change_by_the_owner_ends_what_is_signed_in(string handler, string field = "none", string value = "")
    {
        await using var shop = await RunningShop.StartAsync();
        var client = await shop.SignInAsync(Role.Cutter, follow: false);
        var id = shop.People.Find(RunningShop.NameOf(Role.Cutter))!.Id;
        using var change = await shop.Client.SendFormAsync($"/people/{id}?handler={handler}", (field, value));
        Assert.Equal(HttpStatusCode.OK, change.StatusCode);
        using var after = await client.AskAsync("/me");
        Assert.Equal(HttpStatusCode.Redirect, after.StatusCode);
    }

    [Fact]
    public async Task A_form_without_its_token_changes_nothing()
    {
        await using var shop = await RunningShop.StartAsync();
        using var form = new FormUrlEncodedContent([KeyValuePair.Create("name", "Intruder"), KeyValuePair.Create("role", "owner")]);
        using var answer = await shop.Client.PostAsync(new Uri("/people", UriKind.Relative), form, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Null(shop.People.Find("Intruder"));
    }

    [Fact]
    public async Task The_thirty_first_try_within_a_minute_from_one_address_is_too_many()
    {
        await using var shop = await RunningShop.StartEmptyAsync(new FakeTimeProvider(Morning));
        for (var i = 0; i < GuessLimits.SecretsAMinute; i++)
        {
            using var answer = await PostAloneAsync(shop.Stranger);
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        }
        using var last = await PostAloneAsync(shop.Stranger);
        Assert.Equal(HttpStatusCode.TooManyRequests, last.StatusCode);
        using var form = await shop.Stranger.AskAsync("/sign-in");
        Assert.Equal(HttpStatusCode.OK, form.StatusCode);
    }

    private static Task<HttpResponseMessage> PostAloneAsync(HttpClient client) =>
        client.PostAsync(new Uri("/sign-in", UriKind.Relative), content: null, TestContext.Current.CancellationToken);

    /// <summary>The page that is shown, or nothing where the person is in.</summary>
    private static async Task<string> TryAsync(RunningShop shop, string name, string password, string? from = null)
    {
        using var client = shop.NewClient();
        if (from is not null)
            client.DefaultRequestHeaders.Add("X-Forwarded-For", from);
        return await OnAsync(client, name, password);
    }

    private static async Task<string> OnAsync(HttpClient client, string name, string password)
    {
        using var answer = await client.SendFormAsync("/sign-in", ("name", name), ("password", password));
        return answer.StatusCode == HttpStatusCode.Redirect ? "" : await answer.TextAsync();
    }

    private static async Task<HttpStatusCode> WithCookieAsync(RunningShop shop, string cookie)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/me") { Headers = { { "Cookie", $"cutshop={cookie}" } } };
        using var client = new HttpClient(new HttpClientHandler { UseCookies = false, AllowAutoRedirect = false }) { BaseAddress = shop.Address };
        using var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }

    /// <summary>The rounds that a stored hash says: four bytes behind its mark and the name of its function.</summary>
    private static int RoundsOf(RunningShop shop, long id) => System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(
        Convert.FromBase64String(shop.Database.Read(session => session.Value<string>("SELECT password_hash FROM people WHERE id = @id", new { id }))).AsSpan(5));

    private static string Plain(string page, string name) => System.Text.RegularExpressions.Regex.Replace(
        page.Replace(name, "NAME", StringComparison.Ordinal), "(?<=RequestVerificationToken\" type=\"hidden\" value=\")[^\"]+", "", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(1));
}
