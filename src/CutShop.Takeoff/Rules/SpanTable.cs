namespace CutShop.Takeoff.Rules;

/// <summary>
/// A section's advice for each span that it may have, where only this section is measured: for a phone without a network, which looks it up. Every figure is a
/// whole number of sixteenths of an inch.
/// </summary>
/// <param name="First">The first span; each next one is a sixteenth wider.</param>
/// <param name="Overs">For each span, <see cref="SectionAdvice.Over"/>.</param>
/// <param name="Sags">For each span, <see cref="SectionAdvice.Sag"/>.</param>
/// <param name="Shared">For each span, <see cref="SpanAdvice.Shared"/>; -1 where there is none.</param>
/// <param name="FirstSound">The first place at which the section's own sag is within its limits.</param>
/// <param name="LastSound">The last such place; before <paramref name="FirstSound"/> where there is none.</param>
public sealed record SpanTable(
    int First, IReadOnlyList<int> Overs, IReadOnlyList<int> Sags, IReadOnlyList<int> Shared, int FirstSound, int LastSound);
