using System.Globalization;
using System.Net;
using System.Threading.RateLimiting;
using CutShop.Web.OnSite;

namespace CutShop.Web;

/// <summary>How often one address may guess: secrets on forms, codes of pieces. Reading a sign-in form is not a guess.</summary>
public static class GuessLimits
{
    /// <summary>The policy of forms that take a password or a PIN.</summary>
    public const string Secrets = "secrets";

    /// <summary>The policy of pages that take a piece's code.</summary>
    public const string Codes = "codes";

    /// <summary>Forms with a secret, each minute from one address.</summary>
    public const int SecretsAMinute = 30;

    /// <summary>Piece codes, each minute from one address: a crew that scans a pallet of labels stays well under it.</summary>
    public const int CodesAMinute = 240;

    private static readonly TimeSpan Window = TimeSpan.FromMinutes(1);

    internal static void AddGuessLimits(this IServiceCollection services) => services.AddRateLimiter(options =>
    {
        options.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        options.OnRejected = (rejected, _) =>
        {
            rejected.HttpContext.Response.Headers.RetryAfter = SecondsToWait(rejected.Lease);
            return ValueTask.CompletedTask;
        };
        options.AddPolicy(Secrets, context => HttpMethods.IsPost(context.Request.Method)
            ? AMinute(context, SecretsAMinute)
            : RateLimitPartition.GetNoLimiter(IPAddress.Any));
        options.AddPolicy(Codes, context => OwnPages.Asks(context) ? RateLimitPartition.GetNoLimiter(IPAddress.Any) : AMinute(context, CodesAMinute));
    });

    private static string SecondsToWait(RateLimitLease lease)
    {
        var wait = lease.TryGetMetadata(MetadataName.RetryAfter, out var left) ? left : Window;
        return ((int)Math.Ceiling(wait.TotalSeconds)).ToString(CultureInfo.InvariantCulture);
    }

    private static RateLimitPartition<IPAddress> AMinute(HttpContext context, int most) => RateLimitPartition.GetFixedWindowLimiter(
        context.Connection.RemoteIpAddress ?? IPAddress.None,
        _ => new FixedWindowRateLimiterOptions { PermitLimit = most, Window = Window });
}
