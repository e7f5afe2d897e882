using System.Collections.Concurrent;
using System.Text;
using CutShop.Testing.Trust;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace CutShop.Web.Tests.Host;

public sealed class TelemetryTests
{
    /// <summary>A collector that keeps what comes: OpenTelemetry's protocol, whose texts stand in it as UTF-8.</summary>
    [Fact]
    public async Task Where_an_endpoint_is_named_metrics_and_traces_go_there_without_addresses()
    {
        var cancel = TestContext.Current.CancellationToken;
        var came = new ConcurrentBag<(string Path, string Body)>();
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        await using var collector = builder.Build();
        collector.MapPost("/{**path}", async (HttpRequest request) =>
        {
            using var bytes = new MemoryStream();
            await request.Body.CopyToAsync(bytes, cancel);
            came.Add((request.Path, Encoding.UTF8.GetString(bytes.ToArray())));
        });
        await collector.StartAsync(cancel);

        string code;
        using (var shop = await ServedShop.StartAsync(new Dictionary<string, string>
        {
            ["OTEL_EXPORTER_OTLP_ENDPOINT"] = collector.Urls.First(),
            ["OTEL_EXPORTER_OTLP_PROTOCOL"] = "http/protobuf",
        }))
        {
            var link = await shop.SetUpAsync("Berrin", "seven green bollards");
            using var made = await shop.Client.SendFormAsync("/keys?handler=Make", ("name", "web shop"), ("scope", "take-in"));
            using var job = new HttpRequestMessage(HttpMethod.Post, new Uri("/api/jobs", UriKind.Relative));
            job.Headers.Authorization = new("Bearer", PageText.SecretIn(await made.TextAsync()));
            job.Content = new StringContent(KillRun.JobFile("LQ-1", "manila", "1 in"), Encoding.UTF8, "application/json");
            using (await shop.Client.SendAsync(job, cancel)) { }
            code = shop.Read(session => session.FirstOrDefault<string>("SELECT code FROM pieces"))!;
            using (await shop.Client.AskAsync($"/p/{code}?from=label")) { }
            Assert.Equal(0, await shop.Server.StopAsync());
            Assert.All(came, one => Assert.DoesNotContain(link, one.Body, StringComparison.Ordinal));
        }

        var metrics = string.Concat(came.Where(one => one.Path == "/v1/metrics").Select(one => one.Body));
        Assert.Contains("cutshop.jobs.taken_in", metrics, StringComparison.Ordinal);
        Assert.Contains("cutshop.write.wait", metrics, StringComparison.Ordinal);
        Assert.Contains("http.server.request.duration", metrics, StringComparison.Ordinal);
        var traces = string.Concat(came.Where(one => one.Path == "/v1/traces").Select(one => one.Body));
        Assert.Contains("p/{code}", traces, StringComparison.Ordinal);
        Assert.Contains(ProgramVersion.Text, traces, StringComparison.Ordinal);
        Assert.All(came, one => Assert.DoesNotContain(code, one.Body, StringComparison.Ordinal));
    }
}
