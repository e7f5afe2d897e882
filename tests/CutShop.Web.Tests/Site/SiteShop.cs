using System.Net.Http.Headers;
using CutShop.Web.Tests.Benches;

namespace CutShop.Web.Tests.Site;

/// <summary>What phones on site send.</summary>
internal static class SiteShop
{
    /// <summary>Sends a form with no cookie and no token, as a phone that kept it does.</summary>
    /// <param name="client">The client.</param>
    /// <param name="address">Where to.</param>
    /// <param name="json">True to ask for JSON.</param>
    /// <param name="photo">A file for the field "photo", or null.</param>
    /// <param name="values">The other fields.</param>
    public static async Task<HttpResponseMessage> TapAsync(
        this HttpClient client, string address, bool json, byte[]? photo, params (string Name, string Value)[] values)
    {
        using var form = new MultipartFormDataContent();
        foreach (var (name, value) in values)
            form.Add(new StringContent(value), name);
        if (photo is not null)
            form.Add(new ByteArrayContent(photo), "photo", "photo.jpg");
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(address, UriKind.Relative)) { Content = form };
        if (json)
            request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue("application/json"));
        // What is refused for its size is refused before all of it is sent.
        request.Headers.ExpectContinue = photo is not null;
        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    /// <summary>Marks a piece, or takes the mark off, seeing the other state.</summary>
    public static Task<HttpResponseMessage> MarkAsync(this HttpClient client, string code, InstalledState wanted, bool json = true, string? key = null, string at = "", string sure = "yes") => client.TapAsync(
        $"/p/{code}/installed",
        json,
        photo: null,
        ("state", InstalledWords.Of(wanted)),
        ("seen", InstalledWords.Of(wanted == InstalledState.Installed ? InstalledState.NotInstalled : InstalledState.Installed)),
        ("sure", sure),
        ("key", key ?? NewKey()),
        ("at", at));

    /// <summary>The demo's job with its first piece cut and packed.</summary>
    public static async Task<StoredJob> PlanAndPackAsync(this RunningShop shop)
    {
        var job = await shop.PlanDemoAsync();
        Assert.Null((await new CutBench(shop.Database).RecordCutAsync(job.Codes[0], "Cai", "cut", TestContext.Current.CancellationToken)).Problem);
        Assert.Null((await new PackingBench(shop.Database).PackAsync(job.Number, job.Codes[0], "Cai", "pack", TestContext.Current.CancellationToken)).Problem);
        return job;
    }

    public static string NewKey() => Guid.NewGuid().ToString("N");
}
