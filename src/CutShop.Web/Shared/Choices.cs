using CutShop.Shop.Orders;
using CutShop.Takeoff.Tables;

using static CutShop.Web.Shared.HostWords;

namespace CutShop.Web.Shared;

/// <summary>What lists to choose from offer, in the reader's language.</summary>
public static class Choices
{
    private const string Received = "received";

    /// <summary>Shapes of posts.</summary>
    public static IReadOnlyDictionary<string, string> Shapes => new Dictionary<string, string> { ["square"] = T["Square"], ["round"] = T["Round"] };

    /// <summary>Ways of measuring a section.</summary>
    public static IReadOnlyDictionary<string, string> Spacings =>
        new Dictionary<string, string> { ["clear"] = T["FaceToFace"], ["centres"] = T["CentreToCentre"] };

    /// <summary>Rope materials.</summary>
    public static IReadOnlyDictionary<string, string> Materials { get; } = Rope.Materials.Keys.ToDictionary(name => name);

    /// <summary>Rope materials, or the job's.</summary>
    public static IReadOnlyDictionary<string, string> RowMaterials =>
        new Dictionary<string, string>(Materials.Prepend(new("", T["AsTheJob"])));

    /// <summary>The unit of a bare number, or none.</summary>
    public static IReadOnlyDictionary<string, string> Units =>
        new Dictionary<string, string>(TypedLength.Units.Select(unit => KeyValuePair.Create(unit.Key, T[unit.Value])).Append(new("", T["NoUnit"])));

    /// <summary>Yes or no.</summary>
    public static IReadOnlyDictionary<string, string> OneLot =>
        new Dictionary<string, string> { [""] = T["AnyLots"], ["yes"] = T["OneLotForAll"] };

    /// <summary>Where heights are measured from on drill tickets.</summary>
    public static IReadOnlyDictionary<string, string> Datums =>
        new Dictionary<string, string> { [""] = T["FromGround"], ["top"] = T["FromTop"], ["foot"] = T["FromFoot"] };

    /// <summary>Which jobs a list shows.</summary>
    public static IReadOnlyDictionary<string, string> Shown => new Dictionary<string, string>
    {
        ["open"] = T["ShownOpen"],
        ["late"] = T["ShownLate"],
        [Received] = T["ShownReceived"],
        ["all"] = T["ShownAll"],
    };

    /// <summary>Which jobs a list shows to those who do not release jobs.</summary>
    public static IReadOnlyDictionary<string, string> ShownAtBenches => Shown.Where(pair => pair.Key != Received).ToDictionary();
}
