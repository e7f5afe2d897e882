using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Web.Site;

/// <summary>A section with the clear span that was typed for it.</summary>
/// <param name="Section">The section.</param>
/// <param name="Typed">What was typed; empty for as planned.</param>
/// <param name="Clear">The span; null where nothing, or none that it can have, was typed.</param>
/// <param name="Problem">What is wrong with what was typed, in the reader's language, or null.</param>
public sealed record MeasuredField(PieceSection Section, string Typed, Length? Clear, string? Problem)
{
    /// <summary>Its clear span as planned.</summary>
    public Length Planned => Section.Clear;
}
