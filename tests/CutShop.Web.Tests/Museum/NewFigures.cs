using System.Globalization;

namespace CutShop.Web.Tests.Museum;

/// <summary>
/// The figures that pages of an earlier release's job may have now though it never said them. Any other figure that was not there is a mistake: what the
/// shop promised is not to be told in other figures.
/// </summary>
internal sealed class NewFigures
{
    private readonly HashSet<string> _said;
    private readonly HashSet<string> _atTheDrill = [];

    /// <param name="said">All figures that the release said of the job, as its file keeps them.</param>
    /// <param name="takeoff">The job as it is stored.</param>
    public NewFigures(string said, JobTakeoff takeoff)
    {
        _said = [.. said.Split('\n').SelectMany(line => line.Replace("drawn: ", "", StringComparison.Ordinal).Split("; "))];
        foreach (var work in PostWork.Of(takeoff))
        {
            // The distance of each mark from the top, which stands beside its height since.
            foreach (var height in work.Drillings().Select(drilling => drilling.Mark).Concat(work.Bores.Select(bore => bore.Height)).Concat(work.Fixings.Select(fixing => fixing.Mark)))
                Add(_atTheDrill, work.Post.Height - height);
            // Pilots have a depth since.
            foreach (var fixing in work.Fixings)
                Add(_atTheDrill, fixing.PilotDepth);
        }
        // Whole millimetres at the benches, since.
        foreach (var tenths in _said.Where(figure => figure.EndsWith(" mm", StringComparison.Ordinal)).ToList())
        {
            if (decimal.TryParse(tenths.TrimStart('≈')[..^" mm".Length], NumberStyles.Number, CultureInfo.InvariantCulture, out var millimetres))
                _said.Add(string.Create(CultureInfo.InvariantCulture, $"{decimal.Round(millimetres, MidpointRounding.AwayFromZero)} mm"));
        }
    }

    /// <summary>True for a figure that the release said of the job somewhere, or that is named here for a page.</summary>
    public bool IsKnown(string page, string figure) =>
        _said.Contains(figure) || ((page.StartsWith("/drill/", StringComparison.Ordinal) || page.Contains("drill-tickets", StringComparison.Ordinal)) && _atTheDrill.Contains(figure));

    private static void Add(HashSet<string> figures, Length length)
    {
        figures.Add(LengthText.Inches(length).Replace(" in", "\"", StringComparison.Ordinal).Replace("≈ ", "≈", StringComparison.Ordinal));
        figures.Add(LengthText.Millimetres(length).Replace("≈ ", "≈", StringComparison.Ordinal));
        figures.Add(LengthText.Millimetres(length, decimals: 0).Replace("≈ ", "", StringComparison.Ordinal));
    }
}
