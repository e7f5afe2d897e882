using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using CutShop.Testing.Stores;

namespace CutShop.Web.Tests.Host;

/// <summary>What no database or no text takes is refused by the field that holds it, whichever way it comes in and wherever the database is.</summary>
public sealed class NulCharacterTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_NUL_in_a_form_or_an_address_is_refused_by_its_field_and_nothing_is_stored(bool onServer)
    {
        await using var shop = await StartAsync(onServer);
        await RefusedAsync(
            await shop.Client.SendFormAsync(
                "/stock", ("RequestKey", "k"), ("Material", "Manila"), ("Diameter", "1 in"), ("Construction", "three-strand"), ("Lot", "L\0"), ("CoilLength", "90 ft"), ("Place", "")),
            "The field \"Lot\" holds a NUL character");
        await RefusedAsync(await shop.Client.SendFormAsync("/settings/address", ("Address", "https://shop.example\0")), "The field \"Address\" holds");
        await RefusedAsync(await shop.Client.SendFormAsync("/people", ("Name", "Ada"), ("N\0", "")), "The field \"N\uFFFD\" holds");
        var job = await shop.TakeInDemoAsync("lq-1043-beach-ramp.json");
        foreach (var form in new HttpContent[] { new FormUrlEncodedContent([new("note", "\0")]), new MultipartFormDataContent { { new StringContent("\0"), "note" } } })
        {
            using (form)
                await RefusedAsync(await shop.Stranger.PostAsync(new Uri($"/p/{job.Codes[0].Plain}/report", UriKind.Relative), form, Cancel), "The field \"note\" holds");
        }
        foreach (var address in new[] { "/?text=%00", "/?text=a%00b", "/scan?text=%00" })
            await RefusedAsync(await shop.Client.AskAsync(address), "The field \"text\" holds a NUL character");
        Assert.Empty(new CoilShelf(shop.Database).InHand());
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_NUL_or_half_a_character_in_what_programs_send_is_refused_by_its_place(bool onServer)
    {
        await using var shop = await StartAsync(onServer);
        using var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        var file = Encoding.UTF8.GetString(await RunningShop.DemoFileAsync("lq-1043-beach-ramp.json"));
        foreach (var (escape, said) in new[] { ("\\u0000", "a NUL character"), ("\\ud800", "half a surrogate pair"), ("\\udc00", "half a surrogate pair") })
        {
            foreach (var field in new[] { "number", "customer" })
            {
                var broken = file.Replace($"\"{field}\": \"", $"\"{field}\": \"{escape}", StringComparison.Ordinal);
                Assert.NotEqual(file, broken);
                Assert.Contains(($"$.{field}", said), await ProblemsAsync(await SendAsync(program, "/api/jobs", broken, "application/json")));
            }
        }
        Assert.Contains(
            ("$.customer", "a NUL character"),
            await ProblemsAsync(await SendAsync(program, "/api/jobs/csv", "number,customer,material,diameter\nLQ-9,\"Quay\0\",manila,1 in\n", "text/csv")));
        Assert.Contains(("since", "a NUL character"), await ProblemsAsync(await program.AskAsync("/api/changes?since=%00")));
        Assert.Empty(shop.AllJobs());
    }

    private static Task<RunningShop> StartAsync(bool onServer) => RunningShop.StartAsync(store: onServer ? TestStore.OnServer() : TestStore.InFile());

    private static async Task RefusedAsync(HttpResponseMessage answer, string said)
    {
        using (answer)
        {
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            var text = await answer.TextAsync();
            Assert.True(text.Contains(said, StringComparison.Ordinal), text[text.IndexOf("<main", StringComparison.Ordinal)..]);
        }
    }

    private static async Task<HttpResponseMessage> SendAsync(HttpClient program, string address, string text, string type)
    {
        using var content = new ByteArrayContent(Encoding.UTF8.GetBytes(text));
        content.Headers.ContentType = new MediaTypeHeaderValue(type);
        return await program.PostAsync(new Uri(address, UriKind.Relative), content, Cancel);
    }

    /// <summary>Where something is wrong, and what it is up to the words of what is accepted.</summary>
    private static async Task<IReadOnlyList<(string Path, string Text)>> ProblemsAsync(HttpResponseMessage answer)
    {
        using (answer)
        {
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            using var json = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Cancel));
            return [.. json.RootElement.GetProperty("problems").EnumerateArray().Select(problem => (problem.GetProperty("path").GetString()!, problem.GetProperty("text").GetString()!.Split(';')[0]))];
        }
    }
}
