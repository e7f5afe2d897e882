using CutShop.Shop.Benches;
using CutShop.Takeoff.Lengths;

namespace CutShop.Web.Benches;

/// <summary>A length that is asked about before it is taken.</summary>
/// <param name="Typed">As it was typed.</param>
/// <param name="Read">As it was read.</param>
/// <param name="Is">Why it is asked about.</param>
/// <param name="Others">What else it may mean, with its unit, where it had none: each about what was asked.</param>
public sealed record TapeQuestion(string Typed, Length Read, TapeReading Is, IReadOnlyList<(string Text, Length Length)> Others);
