using System.Net;
using System.Text;
using System.Text.Json;
using CutShop.Testing.Trust;

namespace CutShop.Web.Tests.Host;

public sealed class LogTests
{
    private const string Password = "seven green bollards";
    private const string WrongPassword = "eight green bollards";
    private const string Pin = "40719358";
    private const string WrongPin = "40719359";

    /// <summary>All that could make a program of this kind tell more.</summary>
    private static readonly Dictionary<string, string> Talkative = new()
    {
        ["Logging__LogLevel__Default"] = "Trace",
        ["Logging__LogLevel__Microsoft.AspNetCore"] = "Trace",
        ["Logging__Console__LogLevel__Default"] = "Trace",
        ["Logging__Console__LogLevel__Microsoft.AspNetCore.Mvc"] = "Trace",
        ["ASPNETCORE_ENVIRONMENT"] = "Development",
    };

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task No_password_PIN_key_link_or_code_of_a_label_is_ever_in_the_log()
    {
        using var shop = await ServedShop.StartAsync(Talkative, "--json-log");
        var secrets = new List<string> { Password, WrongPassword, Pin, WrongPin };
        var link = await shop.SetUpAsync("Berrin", Password);
        using (await shop.Client.SendFormAsync("/me?handler=Pin", ("proof", Password), ("pin", Pin))) { }
        using (var made = await shop.Client.SendFormAsync("/keys?handler=Make", ("name", "web shop"), ("scope", "take-in")))
            secrets.Add(PageText.SecretIn(await made.TextAsync()));
        secrets.AddRange(await TakeInAsync(shop, secrets[^1]));
        await AtATabletAsync(shop);

        await shop.Server.StopAsync(); // its log is whole once it has ended
        var log = string.Join('\n', shop.Server.Said.Where(line => line.StartsWith('{')));
        Assert.Contains("was not authenticated", log, StringComparison.Ordinal);
        Assert.All(secrets, secret => Assert.DoesNotContain(secret, shop.Said, StringComparison.OrdinalIgnoreCase));
        // Once, on the console, for whoever starts the program; not in the log.
        Assert.Equal(2, shop.Said.Split(link).Length);
        Assert.DoesNotContain(link, log, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Failed_sign_ins_and_locks_are_in_the_log_by_person_and_address_and_a_name_that_nobody_has_is_not()
    {
        using var shop = await ServedShop.StartAsync(environment: null, "--json-log");
        await shop.SetUpAsync("Berrin", Password);
        using (await shop.Client.SendFormAsync("/sign-out")) { }
        shop.Client.DefaultRequestHeaders.Add("X-Forwarded-For", "203.0.113.7");
        for (var i = 0; i < CutShop.Shop.People.SignIn.MostTries + 1; i++)
            using (await shop.Client.SendFormAsync("/sign-in", ("name", "berrin"), ("password", WrongPassword))) { }
        using (await shop.Client.SendFormAsync("/sign-in", ("name", Password), ("password", "Berrin"))) { }
        await shop.Server.StopAsync(); // its log is whole once it has ended
        var events = shop.Server.Said.Where(line => line.StartsWith('{')).Select(line => JsonDocument.Parse(line).RootElement).ToList();
        string[] Of(string start) => [.. events.Select(one => one.GetProperty("Message").GetString()!).Where(message => message.StartsWith(start, StringComparison.Ordinal))];
        Assert.Equal(
            [.. Enumerable.Repeat("A sign-in failed: the name of Berrin, by password, from 203.0.113.7", 4), "A sign-in failed: the name of nobody, by password, from 203.0.113.7"],
            Of("A sign-in failed"));
        Assert.All(Of("A sign-in is locked"), message => Assert.Matches("^A sign-in is locked: the name of Berrin, by password, from 203.0.113.7, for (29|30) s$", message));
        Assert.Equal(2, Of("A sign-in is locked").Length);
        Assert.Contains(events, one => one.GetProperty("LogLevel").GetString() == "Warning" && one.GetProperty("State").TryGetProperty("Address", out var address) && address.GetString() == "203.0.113.7");
        Assert.DoesNotContain(Password, shop.Said, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task With_json_each_event_of_the_log_is_a_line_that_says_when_how_grave_and_where()
    {
        using var shop = await ServedShop.StartAsync(Talkative, "--json-log");
        using (await shop.Client.AskAsync("/api/jobs")) { }
        await shop.Server.StopAsync(); // its log is whole once it has ended
        var line = JsonDocument.Parse(shop.Server.Said.First(said => said.StartsWith('{') && said.Contains("KeyHandler", StringComparison.Ordinal) && said.Contains("not authenticated", StringComparison.Ordinal)));
        Assert.Equal("Debug", line.RootElement.GetProperty("LogLevel").GetString());
        Assert.Equal("CutShop.Web.Api.KeyHandler", line.RootElement.GetProperty("Category").GetString());
        Assert.True(DateTime.TryParse(line.RootElement.GetProperty("Timestamp").GetString(), System.Globalization.CultureInfo.InvariantCulture, out _));
    }

    /// <summary>Takes a job in by key, and asks for each of its pieces as a phone does.</summary>
    private static async Task<IReadOnlyList<string>> TakeInAsync(ServedShop shop, string key)
    {
        using var job = new HttpRequestMessage(HttpMethod.Post, new Uri("/api/jobs", UriKind.Relative));
        job.Headers.Authorization = new("Bearer", key);
        job.Content = new StringContent(Encoding.UTF8.GetString(await RunningShop.DemoFileAsync("lq-1042-north-walk.json")), Encoding.UTF8, "application/json");
        using (var taken = await shop.Client.SendAsync(job, Cancel))
            Assert.Equal(HttpStatusCode.Created, taken.StatusCode);
        using (var stranger = new HttpRequestMessage(HttpMethod.Get, new Uri("/api/jobs", UriKind.Relative)) { Headers = { { "Authorization", $"Bearer {key}x" } } })
        using (var answer = await shop.Client.SendAsync(stranger, Cancel))
            Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        var codes = shop.Read(session => session.All<string>("SELECT code FROM pieces ORDER BY id LIMIT 8"));
        Assert.NotEmpty(codes);
        foreach (var code in codes)
        {
            using var page = await shop.Client.AskAsync($"/p/{code}");
            Assert.Equal(HttpStatusCode.OK, page.StatusCode);
            using (await shop.Client.AskAsync($"/p?code={code}")) { }
            using (await shop.Client.AskAsync($"/scan?text={code}")) { }
            using (await shop.Client.AskAsync($"/cut/{code}")) { }
        }
        return codes;
    }

    /// <summary>Enrols the browser as a tablet, and signs in there with what is wrong and what is right.</summary>
    private static async Task AtATabletAsync(ServedShop shop)
    {
        using (await shop.Client.SendFormAsync("/sign-out")) { }
        using (await shop.Client.SendFormAsync("/sign-in", ("name", "Berrin"), ("password", WrongPassword))) { }
        using (await shop.Client.SendFormAsync("/sign-in", ("name", "Berrin"), ("password", Password))) { }
        using (var enrolled = await shop.Client.SendFormAsync("/tablets?handler=Enrol", ("name", "Bench 1")))
            Assert.Equal(HttpStatusCode.Redirect, enrolled.StatusCode);
        using (await shop.Client.SendFormAsync("/sign-in", ("way", "pin"), ("name", "Berrin"), ("pin", WrongPin))) { }
        using var signedIn = await shop.Client.SendFormAsync("/sign-in", ("way", "pin"), ("name", "Berrin"), ("pin", Pin));
        Assert.Equal(HttpStatusCode.Redirect, signedIn.StatusCode);
    }
}
