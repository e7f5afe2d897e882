using System.Globalization;
using CutShop.Paper.Allowed;

namespace CutShop.Web.Tests.Museum;

/// <summary>
/// The figures that pages of an earlier release's job may have now though it never said them. Any other figure that was not there is a mistake: what the
/// shop promised is not to be told in other figures.
/// </summary>
internal sealed class NewFigures
{
    /// <summary>How a day is typed, beside the field for the day on which a job's rope is set again.</summary>
    private const string DayOfReSetting = "2027-05-01";

    private readonly HashSet<string> _said;
    private readonly HashSet<string> _atThePost = [];
    private readonly HashSet<string> _atTheCut = [];
    private readonly HashSet<string> _inTheParcel = [];
    private readonly HashSet<string> _asked = [];
    private readonly HashSet<string> _shrinking = [];

    /// <param name="said">All figures that the release said of the job, as its file keeps them.</param>
    /// <param name="takeoff">The job as it is stored.</param>
    public NewFigures(string said, JobTakeoff takeoff)
    {
        // Whether a railing is allowed there is asked since, with figures of its own.
        foreach (var settings in new[] { PaperSettings.Default, PaperSettings.Default with { Units = UnitsFirst.Millimetres } })
        {
            var asked = new Sheet("", "", "", AllowedHere.Of(takeoff, takeoff.Job.Lines, settings));
            _asked.UnionWith(new FigureText([]).OfPage($"<main>{HtmlSheets.Article(asked)}</main>").SelectMany(line => line.Split("; ")));
        }
        // Of natural rope it is said how much it shrinks, and how much of it is trimmed, to the next quarter of an inch.
        foreach (var piece in takeoff.Pieces)
        {
            Add(_shrinking, piece.Shrinks.RoundUpTo(Length.FromSixtyFourths(16)));
            Add(_shrinking, piece.Trim.RoundUpTo(Length.FromSixtyFourths(16)));
        }
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
        || (IsOfPosts(page) && _atThePost.Contains(figure))
        || (IsOfPiece(page) && _shrinking.Contains(figure))
        || (IsOfRailing(page) && _asked.Contains(figure))
        || (page.StartsWith("/jobs/", StringComparison.Ordinal) && page.Count(letter => letter == '/') == 2 && figure == DayOfReSetting);

    private static bool IsOfPiece(string page) => page.StartsWith("/cut/", StringComparison.Ordinal) || page.StartsWith("/p/", StringComparison.Ordinal)
        || page.StartsWith("label ", StringComparison.Ordinal) || page.Contains("/cut-tickets", StringComparison.Ordinal) || page.Contains("/site-pack", StringComparison.Ordinal);

    private static bool IsOfRailing(string page) => page.EndsWith("/summary", StringComparison.Ordinal) || page.EndsWith("/line", StringComparison.Ordinal)
        || page.Contains("/site-pack", StringComparison.Ordinal);

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
