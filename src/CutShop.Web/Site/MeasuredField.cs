using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;

namespace CutShop.Web.Site;

/// <summary>A section with the clear span that was typed for it.</summary>
/// <param name="Section">The section.</param>
/// <param name="Planned">Its clear span as planned.</param>
/// <param name="Typed">What was typed; empty for as planned.</param>
/// <param name="Problem">What is wrong with that, in the reader's language, or null.</param>
/// <param name="Result">What comes of it; null where nothing or no length was typed.</param>
public sealed record MeasuredField(PieceSection Section, Length Planned, string Typed, string? Problem, MeasuredSpan? Result);
