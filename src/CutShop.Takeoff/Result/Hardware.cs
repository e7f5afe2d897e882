using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Result;

/// <summary>Kinds of hardware that hold rope in place of screws.</summary>
public enum HardwareKind
{
    /// <summary>A hook or a pin bolt that an eye hangs on.</summary>
    Hook,

    /// <summary>A thimble in an eye.</summary>
    Thimble,

    /// <summary>A staple or an eye bolt that holds a rope against a post beside it.</summary>
    Holder,
}

/// <summary>A piece of hardware.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Size">Diameter of a hook's pin, of a thimble's groove, or of the rope that a holder goes over.</param>
/// <param name="Reach">From the post's face to the middle of a hook's pin; zero for anything else.</param>
public sealed record Hardware(HardwareKind Kind, Length Size, Length Reach)
{
    /// <summary>What it is, without its sizes.</summary>
    public Sentence InWords => TakeoffWords.Of(Kind switch
    {
        HardwareKind.Hook => "Hook",
        HardwareKind.Thimble => "Thimble",
        HardwareKind.Holder => "Holder",
        _ => throw new InvalidOperationException($"No hardware is numbered {(int)Kind}."),
    });

    /// <summary>All that pieces hang by, each kind once with how many there are: hooks, then thimbles, then what holds rope beside a post.</summary>
    public static IReadOnlyList<(Hardware What, int Count)> Of(IEnumerable<Piece> pieces) =>
    [
        .. pieces.SelectMany(piece => piece.AtPosts.SelectMany(at => At(piece, at)))
            .CountBy(hardware => hardware)
            .OrderBy(kind => kind.Key.Kind).ThenBy(kind => kind.Key.Size).ThenBy(kind => kind.Key.Reach)
            .Select(kind => (kind.Key, kind.Value)),
    ];

    private static IEnumerable<Hardware> At(Piece piece, AtPost at)
    {
        if (at.Kind == AtPostKind.Beside)
            yield return new(HardwareKind.Holder, piece.Rope.Across, Length.Zero);
        if (at.Treatment.Eye is not { } eye)
            yield break;
        yield return new(HardwareKind.Hook, eye.Pin, eye.Reach);
        if (eye.Thimble is { } groove)
            yield return new(HardwareKind.Thimble, groove, Length.Zero);
    }
}
