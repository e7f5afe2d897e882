using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Result;

/// <summary>A bore of a post that a change took out, as an older program stored it.</summary>
/// <param name="Run">The run that it took.</param>
/// <param name="Kind">Stopped, through, corner or knot.</param>
/// <param name="BitNm">Diameter of the bit.</param>
/// <param name="HeightNm">Height of the bore's centre above ground.</param>
/// <param name="Drillings">Its drillings.</param>
public sealed record OldBore(string Run, string Kind, Length BitNm, Length HeightNm, IReadOnlyList<OldDrilling> Drillings);

/// <summary>A drilling of an <see cref="OldBore"/>.</summary>
/// <param name="Face">The face in the words of that program, such as <c>toward A2</c>.</param>
/// <param name="DepthNm">Depth from that face.</param>
public sealed record OldDrilling(string Face, Length DepthNm);
