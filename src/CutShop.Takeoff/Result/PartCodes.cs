using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Result;

/// <summary>The codes that parts write for kinds of things. A code that was ever written keeps its meaning.</summary>
internal static class PartCodes
{
    public static Codes<AtPostKind> AtPost { get; } = new(
        ("stopped", AtPostKind.Stopped), ("through", AtPostKind.Through), ("corner", AtPostKind.Corner), ("knot", AtPostKind.Knot), ("wrap", AtPostKind.Wrap),
        ("join", AtPostKind.Join), ("beside", AtPostKind.Beside), ("eye", AtPostKind.Eye));

    public static Codes<TreatmentKind> Treatment { get; } = new(
        ("bored", TreatmentKind.Bored), ("stopped", TreatmentKind.Stopped), ("knot", TreatmentKind.Knot), ("wrap", TreatmentKind.Wrap),
        ("beside", TreatmentKind.Beside), ("eye", TreatmentKind.Eye));

    public static Codes<WettingManner> Wetting { get; } = new(
        ("preshrunk", WettingManner.Preshrunk), ("trimmed", WettingManner.Trimmed), ("hung-long", WettingManner.HungLong));

    public static Codes<PostShape> Shape { get; } = new(("square", PostShape.Square), ("round", PostShape.Round));

    public static Codes<Datum> Datum { get; } = new(("ground", JobFile.Datum.Ground), ("top", JobFile.Datum.Top), ("foot", JobFile.Datum.Foot));

    public static Codes<TurnSide> Side { get; } = new(("left", TurnSide.Left), ("right", TurnSide.Right));

    public static Codes<FaceSight> Sight { get; } = new(
        ("toward", FaceSight.Toward), ("away", FaceSight.AwayFrom), ("side", FaceSight.Side), ("around", FaceSight.Around));

    public static Codes<BitKind> Bit { get; } = new(
        ("threaded-forstner", BitKind.ThreadedForstner), ("spade", BitKind.Spade), ("hole-saw", BitKind.HoleSaw));

    public static Codes<FixingPurpose> Purpose { get; } = new(
        ("end", FixingPurpose.End),
        ("line", FixingPurpose.Line),
        ("corner-first", FixingPurpose.CornerFirst),
        ("corner-second", FixingPurpose.CornerSecond),
        ("wrap", FixingPurpose.Wrap),
        ("join", FixingPurpose.Join),
        ("beside", FixingPurpose.Beside),
        ("eye", FixingPurpose.Eye));

    public static Codes<ScrewKind> Screw { get; } = new(("deck", ScrewKind.DeckScrew), ("lag", ScrewKind.LagScrew));

    public static Codes<SpacingKind> Spacing { get; } = new(("clear", SpacingKind.Clear), ("centres", SpacingKind.Centres));

    public static Codes<RopeMaterial> Material { get; } = new(
        ("polypropylene", RopeMaterial.Polypropylene),
        ("polyester", RopeMaterial.Polyester),
        ("nylon", RopeMaterial.Nylon),
        ("polyethylene", RopeMaterial.Polyethylene),
        ("manila", RopeMaterial.Manila),
        ("sisal", RopeMaterial.Sisal),
        ("hemp", RopeMaterial.Hemp),
        ("jute", RopeMaterial.Jute),
        ("cotton", RopeMaterial.Cotton));
}

/// <summary>The codes of one kind of thing, both ways.</summary>
/// <typeparam name="T">The kind of thing.</typeparam>
internal sealed class Codes<T>(params (string Code, T Value)[] pairs)
    where T : struct, Enum
{
    private readonly Dictionary<string, T> _values = pairs.ToDictionary(pair => pair.Code, pair => pair.Value);
    private readonly Dictionary<T, string> _codes = pairs.ToDictionary(pair => pair.Value, pair => pair.Code);

    /// <summary>The code of a value.</summary>
    public string Of(T value) => _codes[value];

    /// <summary>The value of a code.</summary>
    /// <exception cref="InvalidDataException">There is no such code.</exception>
    public T Read(string? code) => code is not null && _values.TryGetValue(code, out var value)
        ? value
        : throw new InvalidDataException($"\"{code}\" is not one of {string.Join(", ", _values.Keys)}.");
}
