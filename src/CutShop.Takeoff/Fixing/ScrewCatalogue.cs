namespace CutShop.Takeoff;

/// <summary>The screws a shop uses.</summary>
/// <param name="Screws">The screws, the lightest size first and each size from short to long.</param>
public sealed record ScrewCatalogue(IReadOnlyList<Screw> Screws)
{
    /// <summary>
    /// The lightest size with a screw that reaches the best depth, and of that size the shortest; else the longest that
    /// fits between the least and the most. Null where none fits.
    /// </summary>
    /// <param name="purpose">What it is for.</param>
    /// <param name="rope">The rope's nominal diameter, which says how heavy a screw must be.</param>
    /// <param name="wanted">How far it must reach.</param>
    /// <param name="longerThan">Prefer a screw longer than this.</param>
    public Screw? Choose(FixingPurpose purpose, Length rope, ReachWanted wanted, Length longerThan = default)
    {
        var fitting = Screws
            .Where(screw => rope <= (purpose == FixingPurpose.Wrap ? screw.WrapRopeUpTo : screw.RopeUpTo))
            .Where(screw => screw.Reach >= wanted.Least && screw.Reach <= wanted.Most)
            .ToList();
        var longer = fitting.Where(screw => screw.Length > longerThan).ToList();
        var candidates = longer.Count > 0 ? longer : fitting;
        return candidates.FirstOrDefault(screw => screw.Reach >= wanted.Best) ?? candidates.MaxBy(screw => screw.Length);
    }
}
