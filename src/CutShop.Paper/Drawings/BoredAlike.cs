using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>What a section through a row's bores shows, height aside: two rows with equal values look the same in section.</summary>
internal sealed class BoredAlike : IEquatable<BoredAlike>
{
    private readonly object[] _seen;

    public BoredAlike(PostWork work, IReadOnlyList<Bore> bores) => _seen =
    [
        .. bores.SelectMany(bore => PostWays.MouthsOf(work, bore).Select(mouth => (bore.Bit, bore.Wall, bore.RakeDegrees, bore.IsExisting, mouth.Face, mouth.Depth))),
        .. work.ScrewHoles.Where(fixing => bores.Contains(PostWays.BoreOf(work, fixing))).Select(fixing => (fixing.Face, fixing.Driven)),
    ];

    public bool Equals(BoredAlike? other) => other is not null && _seen.SequenceEqual(other._seen);

    public override bool Equals(object? obj) => Equals(obj as BoredAlike);

    public override int GetHashCode() => _seen.Aggregate(0, (hash, seen) => HashCode.Combine(hash, seen));
}
