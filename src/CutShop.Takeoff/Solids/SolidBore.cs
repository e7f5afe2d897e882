using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Takeoff.Solids;

/// <summary>A bore in a post, with the rope that lies in it.</summary>
/// <param name="Row">The mark of its row.</param>
/// <param name="Kind">Stopped, through, corner or knot.</param>
/// <param name="Body">
/// What is bored out. It begins at the mouth by which the rope leaves, at a bore right through at the one that looks back along the line; a
/// mouth is cut by the post's face, on a round post by the plane that touches it there.
/// </param>
/// <param name="Rope">The rope in it: all of the bore, but at a corner the second rope ends at the side of the first.</param>
/// <param name="IsFirst">False for the bore of the rope that leaves a corner.</param>
public sealed record SolidBore(string Row, AtPostKind Kind, Cylinder Body, Cylinder Rope, bool IsFirst)
{
    /// <summary>From the height of its lowest point to that of its highest, in inches above ground; of a raked bore both are at its ends.</summary>
    public (double Low, double High) Heights { get; } = Body.Extent(Point3.Up);

    /// <summary>True where it comes out of the other face too.</summary>
    public bool IsThrough => Kind is AtPostKind.Through or AtPostKind.Knot;
}

/// <summary>The wood round a bore, each measured where there is least; zero or less where the bore breaks out.</summary>
/// <param name="Beside">
/// To the faces beside it: in a square post along the face at the mouth, in a round one square to the bore at the post's middle.
/// </param>
/// <param name="Above">To the top of the post; of a raked bore at the higher mouth.</param>
/// <param name="Below">To the ground; of a raked bore at the lower mouth.</param>
/// <param name="Beyond">Behind its end, along it; null where it goes right through.</param>
public readonly record struct BoreWood(Length Beside, Length Above, Length Below, Length? Beyond);
