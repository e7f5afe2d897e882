using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>What a section through a row's bores shows, height aside: two rows with equal values look the same in section.</summary>
internal sealed class BoredAlike : IEquatable<BoredAlike>
{
    private readonly object[] _seen;

    public BoredAlike(PostWork work, IReadOnlyList<Bore> bores) => _seen =
    [
        .. bores.SelectMany(bore => bore.Operations.Select(operation => (bore.Bit, bore.Wall, bore.RakeDegrees, operation.Face, operation.Depth))),
        .. work.Fixings.Where(fixing => bores.Any(bore => bore.Run == fixing.Run)).Select(fixing => (fixing.Face, fixing.Screw, fixing.Pilot)),
    ];

    public bool Equals(BoredAlike? other) => other is not null && _seen.SequenceEqual(other._seen);

    public override bool Equals(object? obj) => Equals(obj as BoredAlike);

    public override int GetHashCode() => _seen.Aggregate(0, (hash, seen) => HashCode.Combine(hash, seen));
}
