using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>A face of a post with its holes, from the top down.</summary>
internal sealed record PostFace(Face Face, IReadOnlyList<PostHole> Holes);

/// <summary>A hole on a face.</summary>
/// <param name="Row">Its row's mark.</param>
/// <param name="Height">Height of its centre on the face above the ground.</param>
/// <param name="Across">Its diameter.</param>
/// <param name="Number">The number of its drilling on the ticket; null for the hole of a screw.</param>
internal sealed record PostHole(string Row, Length Height, Length Across, int? Number);
