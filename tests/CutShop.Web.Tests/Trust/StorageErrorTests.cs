using System.Net;
using System.Text;
using System.Text.Json;
using CutShop.Testing.Stores;
using Microsoft.Data.Sqlite;

namespace CutShop.Web.Tests.Trust;

/// <summary>
/// The machine fails and not the program: the page says what is wrong and that nothing was stored, nothing is lost, and it goes on
/// by itself once that is mended.
/// </summary>
public sealed class StorageErrorTests
{
    private const string Full = "PRAGMA max_page_count = 1";
    private const string Roomy = "PRAGMA max_page_count = 1073741823";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [FileOnlyFact]
    public async Task A_full_disk_is_said_to_people_and_programs_and_mends_itself()
    {
        await using var shop = await RunningShop.StartAsync();
        using var desk = await shop.SignInAsync(Role.Desk);
        using var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        using (var first = await TakeInAsync(program, "lq-1042-north-walk.json"))
            Assert.Equal(HttpStatusCode.Created, first.StatusCode);

        await OnWriterAsync(shop, Full);
        var acknowledged = await ReceiveUntilRefusedAsync(desk, "The disk is full.", "Nothing was saved, and nothing that was confirmed is lost.");
        Assert.Equal(acknowledged, new CoilShelf(shop.Database).InHand().Count);
        var before = ShopDigest.Of(shop.Database.Path);

        await OnWriterAsync(shop, Full);
        using (var answer = await TakeInAsync(program, "lq-1043-beach-ramp.json"))
        {
            Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
            Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
            Assert.Contains("The disk is full.", JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Cancel)).RootElement.GetProperty("detail").GetString(), StringComparison.Ordinal);
        }
        Assert.Equal(before, ShopDigest.Of(shop.Database.Path));
        await OnWriterAsync(shop, Full);
        desk.DefaultRequestHeaders.Add("Cookie", ".AspNetCore.Culture=c=|uic=es");
        await ReceiveUntilRefusedAsync(desk, "El disco está lleno.", "No se guardó nada, y no se perdió nada de lo confirmado.");

        await OnWriterAsync(shop, Roomy);
        using (var answer = await TakeInAsync(program, "lq-1043-beach-ramp.json"))
            Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        Assert.Empty(ShopCheck.OfFile(shop.Database.Path, TimeProvider.System));
    }

    [FileOnlyFact]
    public async Task A_database_that_another_program_keeps_locked_is_said_and_can_be_read_meanwhile()
    {
        await using var shop = await RunningShop.StartAsync();
        using var desk = await shop.SignInAsync(Role.Desk);
        await using (var other = new SqliteConnection($"Data Source={shop.Database.Path};Pooling=False"))
        {
            await other.OpenAsync(Cancel);
            await using var begin = other.CreateCommand();
            begin.CommandText = "BEGIN IMMEDIATE";
            await begin.ExecuteNonQueryAsync(Cancel);
            using var page = await ReceiveAsync(desk);
            Assert.Equal(HttpStatusCode.ServiceUnavailable, page.StatusCode);
            Assert.Contains("Another program keeps the database busy", await page.TextAsync(), StringComparison.Ordinal);
            using var read = await desk.AskAsync("/stock");
            Assert.Equal(HttpStatusCode.OK, read.StatusCode);
        }
        using (var again = await ReceiveAsync(desk))
            Assert.NotEqual(HttpStatusCode.ServiceUnavailable, again.StatusCode);
        Assert.Single(new CoilShelf(shop.Database).InHand());
    }

    /// <summary>Hangs coils up until the disk takes no more; the last is refused with these words.</summary>
    /// <returns>How many were taken.</returns>
    private static async Task<int> ReceiveUntilRefusedAsync(HttpClient desk, params string[] said)
    {
        const int Enough = 500;
        for (var taken = 0; taken < Enough; taken++)
        {
            using var page = await ReceiveAsync(desk, Guid.NewGuid().ToString("N"));
            if (page.StatusCode != HttpStatusCode.ServiceUnavailable)
                continue;
            var text = await page.TextAsync();
            Assert.All(said, words => Assert.Contains(words, text, StringComparison.Ordinal));
            Assert.Contains("default-src 'none'", page.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
            return taken;
        }
        throw new InvalidOperationException("The disk took everything.");
    }

    private static Task<HttpResponseMessage> ReceiveAsync(HttpClient desk, string key = "the key") => desk.SendFormAsync(
        "/stock", ("RequestKey", key), ("Material", "Manila"), ("Diameter", "1 in"), ("Construction", "three-strand"), ("Lot", "L1"), ("CoilLength", "90 ft"), ("Place", ""));

    private static async Task<HttpResponseMessage> TakeInAsync(HttpClient program, string file)
    {
        using var content = new StringContent(Encoding.UTF8.GetString(await RunningShop.DemoFileAsync(file)), Encoding.UTF8, "application/json");
        return await program.PostAsync(new Uri("/api/jobs", UriKind.Relative), content, Cancel);
    }

    /// <summary>Sets something on the connection that writes go through, until a write fails on it.</summary>
    private static Task<int> OnWriterAsync(RunningShop shop, string pragma) => shop.Database.WriteAsync(session => session.All<long>(pragma).Count, Cancel);
}
