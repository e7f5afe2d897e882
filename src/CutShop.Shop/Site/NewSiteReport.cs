using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Site;

/// <summary>A report as an installer sends it.</summary>
/// <param name="Kind">What is wrong.</param>
/// <param name="Note">What else there is to say; at most <see cref="LongestNote"/> characters.</param>
/// <param name="Photo">The name of its stored photo, or null.</param>
/// <param name="At">When it was tapped, UTC; null stands for now.</param>
public sealed record NewSiteReport(SiteReportKind Kind, string Note, string? Photo, DateTimeOffset? At)
{
    /// <summary>The spans measured of it, by the section's index, to be kept with the report; null where none were.</summary>
    public IReadOnlyDictionary<int, Length>? Clear { get; init; }

    /// <summary>The longest note, in characters.</summary>
    public const int LongestNote = 500;
}
