using CutShop.Shop.Orders;
using CutShop.Takeoff.JobFile;
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

    /// <summary>How the posts of a line stand.</summary>
    public static IReadOnlyDictionary<string, string> Courses =>
        new Dictionary<string, string> { [""] = T["InALine"], [DraftLine.OnCurve] = T["OnACurve"], [DraftLine.Closed] = T["InARing"] };

    /// <summary>Which way a curve turns, seen walking along it.</summary>
    public static IReadOnlyDictionary<string, string> Sides =>
        new Dictionary<string, string> { [""] = T["Choose"], [JobWord.Of(TurnSide.Left)] = T["ToTheLeft"], [JobWord.Of(TurnSide.Right)] = T["ToTheRight"] };

    /// <summary>What the bores of a corner do.</summary>
    public static IReadOnlyDictionary<string, string> Corners =>
        new Dictionary<string, string> { [""] = T["BoresMeet"], [JobWord.Of(CornerKind.Through)] = T["BoredThrough"] };

    /// <summary>Whether the bores of a job follow the slope.</summary>
    public static IReadOnlyDictionary<string, string> Slopes =>
        new Dictionary<string, string> { [""] = T["AlongTheSlope"], [JobWord.Of(BoreSlope.Level)] = T["Level"] };

    /// <summary>Whether the bores of a row follow the slope, or as the job says.</summary>
    public static IReadOnlyDictionary<string, string> RowSlopes => new Dictionary<string, string>
    {
        [""] = T["AsTheJob"],
        [JobWord.Of(BoreSlope.Raked)] = T["AlongTheSlope"],
        [JobWord.Of(BoreSlope.Level)] = T["Level"],
    };

    /// <summary>Who bores the posts of a job.</summary>
    public static IReadOnlyDictionary<string, string> Borers =>
        new Dictionary<string, string> { [""] = T["TheShop"], [JobWord.Of(BoredBy.Site)] = T["OnSite"] };

    /// <summary>Who bores the posts of a line.</summary>
    public static IReadOnlyDictionary<string, string> LineBorers => PartBorers("AsTheJob");

    /// <summary>Who bores a post.</summary>
    public static IReadOnlyDictionary<string, string> PostBorers => PartBorers("AsTheLine");

    /// <summary>When natural rope is let shrink; empty for a share that is added.</summary>
    public static IReadOnlyDictionary<string, string> Manners => new Dictionary<string, string>
    {
        [""] = T["AsShrinkageSays"],
        [JobWord.Of(WettingManner.Preshrunk)] = T["PreshrunkFirst"],
        [JobWord.Of(WettingManner.Trimmed)] = T["TrimmedAfter"],
        [JobWord.Of(WettingManner.HungLong)] = T["HungLongDry"],
    };

    /// <summary>Whether the runs of a row may be broken where they are longer than the longest cut.</summary>
    public static IReadOnlyDictionary<string, string> Unbroken => new Dictionary<string, string> { [""] = T["MayBeJoined"], ["yes"] = T["InOnePiece"] };

    /// <summary>Which jobs a list shows.</summary>
    public static IReadOnlyDictionary<string, string> Shown => new Dictionary<string, string>
    {
        ["open"] = T["ShownOpen"],
        ["late"] = T["ShownLate"],
        [Received] = T["ShownReceived"],
        ["all"] = T["ShownAll"],
    };

    private static Dictionary<string, string> PartBorers(string asWhole) =>
        new() { [""] = T[asWhole], [JobWord.Of(BoredBy.Shop)] = T["TheShop"], [JobWord.Of(BoredBy.Site)] = T["OnSite"] };

    /// <summary>Which jobs a list shows to those who do not release jobs.</summary>
    public static IReadOnlyDictionary<string, string> ShownAtBenches => Shown.Where(pair => pair.Key != Received).ToDictionary();
}
