namespace CutShop.Web.Benches;

/// <summary>The result of a scan, shown across the whole screen, in the reader's language.</summary>
/// <param name="IsRight">True where what was scanned is what was wanted here.</param>
/// <param name="Heading">What it is, in a few words.</param>
/// <param name="Lines">What else to know: whose it is, where it belongs, what to do.</param>
public sealed record Verdict(bool IsRight, string Heading, params IReadOnlyList<string> Lines);
