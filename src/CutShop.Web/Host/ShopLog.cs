using System.Globalization;
using CutShop.Web.Api;

namespace CutShop.Web.Host;

/// <summary>
/// The log on the console. Below a warning the framework tells addresses and what stands in forms, which hold codes of labels,
/// links and PINs: no setting makes it tell them.
/// </summary>
internal static class ShopLog
{
    private static readonly string[] Framework = ["Microsoft", "System"];

    public static void UseShopLog(this WebApplicationBuilder builder, bool asJson)
    {
        if (asJson)
        {
            builder.Logging.ClearProviders();
            builder.Logging.AddJsonConsole(options =>
            {
                options.UseUtcTimestamp = true;
                options.TimestampFormat = CultureInfo.InvariantCulture.DateTimeFormat.SortableDateTimePattern + "'Z'";
            });
        }
        // It warns that cookie keys lie unsealed in the shop's folder; the database lies there too, and the folder is the shop's to guard.
        builder.Logging.AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
        // Every request without a key would be a line.
        builder.Logging.AddFilter(typeof(KeyHandler).FullName, LogLevel.Warning);
        builder.Services.PostConfigure<LoggerFilterOptions>(Cap);
    }

    /// <summary>Every rule holds as it was set, with that one limit.</summary>
    private static void Cap(LoggerFilterOptions options)
    {
        var rules = options.Rules.Append(new LoggerFilterRule(null, null, options.MinLevel, null)).ToList();
        options.Rules.Clear();
        foreach (var rule in rules)
        {
            options.Rules.Add(new LoggerFilterRule(
                rule.ProviderName,
                rule.CategoryName,
                rule.LogLevel,
                (provider, category, level) => MayTell(category, level) && rule.Filter?.Invoke(provider, category, level) != false));
        }
    }

    private static bool MayTell(string? category, LogLevel level) =>
        level >= LogLevel.Warning || !Framework.Any(name => category?.StartsWith(name, StringComparison.Ordinal) == true);
}
