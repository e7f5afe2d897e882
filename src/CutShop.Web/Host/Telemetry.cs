using System.Diagnostics;
using CutShop.Shop.Store;
using CutShop.Web.Shared;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace CutShop.Web.Host;

/// <summary>Sends metrics and traces by OpenTelemetry's protocol where its usual setting names an endpoint; else nothing is collected.</summary>
internal static class Telemetry
{
    private const string Endpoint = "OTEL_EXPORTER_OTLP_ENDPOINT";

    private static readonly string[] Meters = [ShopMeter.Name, "Microsoft.AspNetCore.Hosting", "Microsoft.AspNetCore.Server.Kestrel", "System.Runtime"];

    /// <summary>Tags of a request's trace that hold its address as it was asked.</summary>
    private static readonly string[] Addresses = ["url.path", "url.query", "url.full"];

    public static void AddTelemetry(this WebApplicationBuilder builder)
    {
        if (string.IsNullOrEmpty(builder.Configuration[Endpoint]))
            return;
        builder.Services.AddOpenTelemetry()
            .ConfigureResource(resource => resource.AddService("cutshop", serviceVersion: ProgramVersion.Text))
            .WithMetrics(metrics => metrics.AddMeter(Meters).AddOtlpExporter())
            .WithTracing(traces => traces
                .AddAspNetCoreInstrumentation(options => options.EnrichWithHttpResponse = (activity, _) => LeaveAddressOut(activity))
                .AddOtlpExporter());
    }

    /// <summary>An address may hold the code of a label or a link that makes an owner; the route says enough.</summary>
    private static void LeaveAddressOut(Activity activity)
    {
        foreach (var tag in Addresses)
            activity.SetTag(tag, null);
    }
}
