using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>A face of a post with its holes, from the top down.</summary>
internal sealed record PostFace(Face Face, IReadOnlyList<PostHole> Holes)
{
    /// <summary>What is written beside them: holes that are as high as each other are told once.</summary>
    public IReadOnlyList<PostHole> Labelled => [.. Holes.DistinctBy(hole => hole with { Right = Length.Zero })];
}

/// <summary>A hole on a face.</summary>
/// <param name="Row">Its row's mark.</param>
/// <param name="Height">Height of its centre on the face above the ground.</param>
/// <param name="Across">Its diameter.</param>
/// <param name="Right">How far it lies to the right of the face's middle.</param>
/// <param name="Number">The number of its drilling on the ticket; null for a hole that has none.</param>
/// <param name="IsThere">True for a hole that is there already; without a number it is a screw's else.</param>
internal sealed record PostHole(string Row, Length Height, Length Across, Length Right, int? Number, bool IsThere = false);
