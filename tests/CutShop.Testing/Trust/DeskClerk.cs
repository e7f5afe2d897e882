using System.Globalization;
using System.Net;
using System.Text;

namespace CutShop.Testing.Trust;

/// <summary>Hangs a coil up, takes jobs of its rope in through the API, and has their cuts planned; then the same with the next rope.</summary>
internal sealed class DeskClerk(KillRun run, string name, string password, string apiKey) : ShopClient(run, name, password)
{
    private const int JobsARound = 3;

    private static readonly (string Material, string Diameter)[] Ropes =
        [.. from diameter in new[] { "1 in", "1 1/8 in", "1 1/4 in", "1 1/2 in", "1 5/8 in", "1 3/4 in" } from material in new[] { "Polypropylene", "Manila" } select (material, diameter)];

    private int _round;
    private int _job;

    protected override string FormPage => "/stock";

    protected override async Task DoSomethingAsync(CancellationToken cancel)
    {
        var (material, diameter) = Ropes[_round++ % Ropes.Length];
        await ReceiveAsync(material, diameter, cancel);
        for (var i = 0; i < JobsARound; i++)
            await TakeInAsync(material, diameter, cancel);
        await PlanAsync(material, diameter, cancel);
    }

    private async Task ReceiveAsync(string material, string diameter, CancellationToken cancel)
    {
        var key = Guid.NewGuid().ToString("N");
        var (_, _, to) = await FormAsync(
            "/stock", cancel, ("RequestKey", key), ("Material", material), ("Diameter", diameter), ("Construction", "three-strand"), ("Lot", "L1"), ("CoilLength", "90 ft"), ("Place", "rack 1"));
        if (to is null)
        {
            Run.Fault($"{Name}: a coil was refused");
            return;
        }
        Told.Write(key);
        Told.Coil(to["/stock/".Length..]);
    }

    private async Task TakeInAsync(string material, string diameter, CancellationToken cancel)
    {
        var number = string.Create(CultureInfo.InvariantCulture, $"LQ-{Name}-{++_job}");
        var key = Guid.NewGuid().ToString("N");
        var file = KillRun.JobFile(number, material.ToLowerInvariant(), diameter);
        var (status, _, _) = await SendAsync(
            () => new HttpRequestMessage(HttpMethod.Post, "/api/jobs")
            {
                Content = new StringContent(file, Encoding.UTF8, "application/json"),
                Headers = { { "Authorization", $"Bearer {apiKey}" }, { "Idempotency-Key", key } },
            },
            cancel);
        if (status != HttpStatusCode.Created)
            return;
        Told.Write($"api {Run.ApiKeyId} /api/jobs {key}");
        Told.Job(number);
    }

    /// <summary>A search ends with the program that ran it, and a draft that is out of date is refused: both are begun again another time.</summary>
    private async Task PlanAsync(string material, string diameter, CancellationToken cancel)
    {
        var (_, _, to) = await FormAsync("/plans", cancel, ("Material", material), ("Diameter", diameter), ("Construction", "three-strand"), ("Seconds", "1"));
        while (to is not null && to.StartsWith("/plans/search/", StringComparison.Ordinal))
        {
            await Task.Delay(TimeSpan.FromMilliseconds(30), cancel);
            var (_, body, next) = await GetAsync(to, cancel);
            to = next ?? (body.Contains("This page reloads by itself", StringComparison.Ordinal) ? to : null);
        }
        if (to is null || to == "/plans")
            return;
        if ((await FormAsync(to, cancel)).To == to)
            Told.Plan(to["/plans/".Length..]);
    }
}
