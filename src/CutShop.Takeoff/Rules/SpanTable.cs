namespace CutShop.Takeoff.Rules;

/// <summary>
/// What is answered to any measured spans of a piece within reach of its tables: for a phone without a network, which looks it up and adds it up. Every
/// figure is a whole number: lengths in sixteenths of an inch, rope to share in thousandths.
/// </summary>
/// <param name="Sections">The table of each section, in order; those of sections that are alike are one. None where too many differ.</param>
/// <param name="LeastShared">The sag of the tables' first row of <see cref="SpanTable.Arcs"/>; each next one is a sixteenth deeper.</param>
/// <param name="Rope">The rope of all sections, in thousandths.</param>
/// <remarks>
/// <see cref="SpanAdvice.Shared"/> is the last row whose rope, all sections together, is at most <paramref name="Rope"/>. There is none where the
/// first row takes more, or the last does not.
/// </remarks>
public sealed record SpanTables(IReadOnlyList<SpanTable> Sections, int LeastShared, int Rope);

/// <summary>A section's part of the advice for each span that it may have.</summary>
/// <param name="First">The first span; each next one is a sixteenth wider.</param>
/// <param name="Overs">For each span, <see cref="SectionAdvice.Over"/>.</param>
/// <param name="Sags">For each span, <see cref="SectionAdvice.Sag"/>.</param>
/// <param name="FirstSound">The first place at which the section's own sag is within its limits.</param>
/// <param name="LastSound">The last such place; before <paramref name="FirstSound"/> where there is none.</param>
/// <param name="Arcs">
/// For each sag that may be shared, the section's rope as planned, and then at the first span and every 2 in from there on; between two of
/// those it changes evenly. None where no sag can be shared.
/// </param>
public sealed record SpanTable(
    int First, IReadOnlyList<int> Overs, IReadOnlyList<int> Sags, int FirstSound, int LastSound, IReadOnlyList<IReadOnlyList<int>> Arcs);
