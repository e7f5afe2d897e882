using System.Globalization;
using System.Net;
using System.Threading.RateLimiting;

namespace CutShop.Web.Shared;

/// <summary>How often one address may guess: secrets on forms, codes of pieces; and how many photos it may send. Reading a sign-in form is not a guess.</summary>
public sealed class GuessLimits : IDisposable
{
    /// <summary>The policy of forms that take a password or a PIN.</summary>
    public const string Secrets = "secrets";

    /// <summary>The policy of pages that take a piece's code.</summary>
    public const string Codes = "codes";

    /// <summary>Forms with a secret, each minute from one address.</summary>
    public const int SecretsAMinute = 30;

    /// <summary>Piece codes, each minute from one address: a crew that scans a pallet of labels stays well under it.</summary>
    public const int CodesAMinute = 240;

    /// <summary>Photos, each minute from one address: more than a crew takes, and a minute's work for the machine at most.</summary>
    public const int PhotosAMinute = 30;

    private static readonly TimeSpan Window = TimeSpan.FromMinutes(1);

    private readonly PartitionedRateLimiter<HttpContext> _photos = PartitionedRateLimiter.Create<HttpContext, IPAddress>(context => AMinute(context, PhotosAMinute));

    /// <summary>Marks a request that the program makes of itself: it is no guess.</summary>
    public static void MarkOurs(HttpContext context) => context.Items[typeof(GuessLimits)] = true;

    /// <summary>True for a request that the program makes of itself.</summary>
    public static bool IsOurs(HttpContext context) => context.Items.ContainsKey(typeof(GuessLimits));

    /// <summary>Takes one of the photos that an address may send.</summary>
    public RateLimitLease Photo(HttpContext context) => _photos.AttemptAcquire(context);

    /// <inheritdoc/>
    public void Dispose() => _photos.Dispose();

    internal static void AddTo(IServiceCollection services) => services.AddSingleton<GuessLimits>().AddRateLimiter(options =>
    {
        options.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        options.OnRejected = (rejected, _) =>
        {
            rejected.HttpContext.Response.Headers.RetryAfter = SecondsToWait(rejected.Lease).ToString(CultureInfo.InvariantCulture);
            return ValueTask.CompletedTask;
        };
        options.AddPolicy(Secrets, context => HttpMethods.IsPost(context.Request.Method)
            ? AMinute(context, SecretsAMinute)
            : RateLimitPartition.GetNoLimiter(IPAddress.Any));
        options.AddPolicy(Codes, context => IsOurs(context) ? RateLimitPartition.GetNoLimiter(IPAddress.Any) : AMinute(context, CodesAMinute));
    });

    /// <summary>When an address that is over its limit may come again.</summary>
    public static int SecondsToWait(RateLimitLease lease)
    {
        ArgumentNullException.ThrowIfNull(lease);
        var wait = lease.TryGetMetadata(MetadataName.RetryAfter, out var left) ? left : Window;
        return (int)Math.Ceiling(wait.TotalSeconds);
    }

    private static RateLimitPartition<IPAddress> AMinute(HttpContext context, int most) => RateLimitPartition.GetFixedWindowLimiter(
        AddressGroup.Of(context),
        _ => new FixedWindowRateLimiterOptions { PermitLimit = most, Window = Window });
}
