using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Benches;

/// <summary>How the benches work.</summary>
/// <param name="Over">How much longer than asked a measured piece may be.</param>
/// <param name="Under">How much shorter it may be; less than <paramref name="Over"/>, since a long piece can be trimmed.</param>
/// <param name="HandBackAfter">A ticket that nobody touches for so long goes back to the queue.</param>
/// <param name="Shift">How long after it what was done can be undone.</param>
/// <param name="SpareScrews">How many screws a parcel holds more than its job needs, in percent.</param>
public sealed record BenchSettings(Length Over, Length Under, TimeSpan HandBackAfter, TimeSpan Shift, int SpareScrews)
{
    /// <summary>What holds until the shop sets something else: 1/2 in over, 1/8 in under, 45 minutes, 10 hours, 10 % more screws (common practice, no source).</summary>
    public static BenchSettings Default { get; } =
        new(Length.FromSixtyFourths(32), Length.FromSixtyFourths(8), TimeSpan.FromMinutes(45), TimeSpan.FromHours(10), SpareScrews: 10);
}

/// <summary>Bench settings as typed.</summary>
/// <param name="Over">How much longer a piece may be.</param>
/// <param name="Under">How much shorter it may be.</param>
/// <param name="HandBackMinutes">Minutes until a ticket goes back by itself.</param>
/// <param name="ShiftHours">Hours in which what was done can be undone.</param>
/// <param name="SpareScrews">Percent more screws than are needed.</param>
public sealed record BenchTyped(string Over, string Under, string HandBackMinutes, string ShiftHours, string SpareScrews);
