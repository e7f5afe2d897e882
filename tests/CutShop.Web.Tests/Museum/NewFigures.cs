using System.Globalization;

namespace CutShop.Web.Tests.Museum;

/// <summary>
/// The figures that pages of an earlier release's job may have now though it never said them. Any other figure that was not there is a mistake: what the
/// shop promised is not to be told in other figures.
/// </summary>
internal sealed class NewFigures
{
    private readonly HashSet<string> _said;
    private readonly HashSet<string> _atThePost = [];
    private readonly HashSet<string> _atTheCut = [];
    private readonly HashSet<string> _inTheParcel = [];

    /// <param name="said">All figures that the release said of the job, as its file keeps them.</param>
    /// <param name="takeoff">The job as it is stored.</param>
    public NewFigures(string said, JobTakeoff takeoff)
    {
        _said = [.. said.Split('\n').SelectMany(line => line.Replace("drawn: ", "", StringComparison.Ordinal).Split("; "))];
        foreach (var work in PostWork.Of(takeoff))
        {
            // The distance of each mark from the top, which stands beside its height since.
            foreach (var height in work.Drillings().Select(drilling => drilling.Mark).Concat(work.Bores.Select(bore => bore.Height)).Concat(work.Fixings.Select(fixing => fixing.Mark)))
                Add(_atThePost, work.Post.Height - height);
            // Pilots have a depth since.
            foreach (var fixing in work.Fixings)
                Add(_atThePost, fixing.PilotDepth);
        }
        // A parcel holds the job's screws since, with a tenth more, one at least.
        foreach (var screws in takeoff.Fixings.Where(fixing => fixing.Screw is not null).GroupBy(fixing => fixing.Screw!))
        {
            var needed = screws.Sum(fixing => fixing.Count);
            var spare = Math.Max(1, (needed + 9) / 10);
            _inTheParcel.Add(string.Create(CultureInfo.InvariantCulture, $"screw {needed + spare} of {screws.Key.Size} x {InInches(screws.Key.Length)}"));
            foreach (var count in new[] { needed, spare, needed + spare })
                _inTheParcel.Add(string.Create(CultureInfo.InvariantCulture, $"count {count}"));
        }
        // The bad stretches that one tap cuts out of a coil.
        foreach (var stretch in new[] { Length.Foot, Length.Foot * 3, Length.Foot * 6, Length.Millimetre * 300, Length.Metre, Length.Metre * 2 })
            Add(_atTheCut, stretch);
        // A measured length is shown in both units since.
        foreach (var inches in _said.Where(figure => figure.EndsWith('"')))
        {
            if (LengthText.Parse(inches) is { IsGood: true } measured)
                Add(_atTheCut, measured.Value);
        }
        // Whole millimetres at the benches, since.
        foreach (var tenths in _said.Where(figure => figure.EndsWith(" mm", StringComparison.Ordinal)).ToList())
        {
            if (decimal.TryParse(tenths.TrimStart('≈')[..^" mm".Length], NumberStyles.Number, CultureInfo.InvariantCulture, out var millimetres))
                _said.Add(string.Create(CultureInfo.InvariantCulture, $"{decimal.Round(millimetres, MidpointRounding.AwayFromZero)} mm"));
        }
    }

    /// <summary>True for a figure that the release said of the job somewhere, or that is named here for a page.</summary>
    public bool IsKnown(string page, string figure) => _said.Contains(figure)
        || (page.StartsWith("/cut/", StringComparison.Ordinal) && _atTheCut.Contains(figure))
        || (page.StartsWith("/pack/", StringComparison.Ordinal) && _inTheParcel.Contains(figure))
        || (IsOfPosts(page) && _atThePost.Contains(figure));

    private static bool IsOfPosts(string page) => page.StartsWith("/drill/", StringComparison.Ordinal) || page.StartsWith("/p/", StringComparison.Ordinal)
        || page.Contains("/drill-tickets", StringComparison.Ordinal) || page.Contains("/site-pack", StringComparison.Ordinal);

    private static void Add(HashSet<string> figures, Length length)
    {
        figures.Add(InInches(length));
        figures.Add(InInches(length, denominator: 16));
        figures.Add(LengthText.Millimetres(length).Replace("≈ ", "≈", StringComparison.Ordinal));
        figures.Add(LengthText.Millimetres(length, decimals: 0).Replace("≈ ", "", StringComparison.Ordinal));
    }

    private static string InInches(Length length, int denominator = 64) =>
        LengthText.Inches(length, denominator).Replace(" in", "\"", StringComparison.Ordinal).Replace("≈ ", "≈", StringComparison.Ordinal);
}
