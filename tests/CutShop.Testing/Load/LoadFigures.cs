namespace CutShop.Testing.Load;

/// <summary>What a run under load came to.</summary>
/// <param name="Taps">Requests of the tablets, in seconds each.</param>
/// <param name="Pages">Pages of the phones, in seconds each.</param>
/// <param name="Claims">Pieces that were given to a tablet.</param>
/// <param name="Cut">Pieces that were finished.</param>
/// <param name="Memory">What the server held in memory, by the time since the start.</param>
/// <param name="Errors">Answers that were no answers, and taps that were refused.</param>
/// <param name="Findings">Pieces given or finished twice, and what the check of the database found.</param>
internal sealed record LoadFigures(
    IReadOnlyList<double> Taps,
    IReadOnlyList<double> Pages,
    int Claims,
    int Cut,
    IReadOnlyList<(TimeSpan At, long Bytes)> Memory,
    IReadOnlyList<string> Errors,
    IReadOnlyList<string> Findings)
{
    /// <summary>The time that so large a share of requests took at most, in milliseconds.</summary>
    public static double Percentile(IReadOnlyList<double> seconds, double share) =>
        seconds.Count == 0 ? 0 : 1000 * seconds.Order().ElementAt((int)Math.Min(seconds.Count - 1, seconds.Count * share));

    /// <summary>The server's memory over a stretch of time, the mean in bytes; zero where none was measured.</summary>
    public double MemoryBetween(TimeSpan from, TimeSpan to) =>
        Memory.Where(sample => sample.At >= from && sample.At <= to).Select(sample => (double)sample.Bytes).DefaultIfEmpty().Average();
}
