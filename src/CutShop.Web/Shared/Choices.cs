using CutShop.Shop.Orders;
using CutShop.Takeoff.Tables;

namespace CutShop.Web.Shared;

/// <summary>What the desk's lists offer.</summary>
public static class Choices
{
    private const string Received = "received";

    /// <summary>Shapes of posts.</summary>
    public static IReadOnlyDictionary<string, string> Shapes { get; } = new Dictionary<string, string> { ["square"] = "square", ["round"] = "round" };

    /// <summary>Ways of measuring a section.</summary>
    public static IReadOnlyDictionary<string, string> Spacings { get; } =
        new Dictionary<string, string> { ["clear"] = "face to face", ["centres"] = "centre to centre" };

    /// <summary>Rope materials.</summary>
    public static IReadOnlyDictionary<string, string> Materials { get; } = Rope.Materials.Keys.ToDictionary(name => name);

    /// <summary>Rope materials, or the job's.</summary>
    public static IReadOnlyDictionary<string, string> RowMaterials { get; } =
        new Dictionary<string, string>(Materials.Prepend(new("", "as the job")));

    /// <summary>The unit of a bare number, or none.</summary>
    public static IReadOnlyDictionary<string, string> Units { get; } =
        new Dictionary<string, string>(TypedLength.Units.Append(new("", "nothing: I type each unit")));

    /// <summary>Yes or no.</summary>
    public static IReadOnlyDictionary<string, string> OneLot { get; } =
        new Dictionary<string, string> { [""] = "any lots", ["yes"] = "one lot for all" };

    /// <summary>Which jobs a list shows.</summary>
    public static IReadOnlyDictionary<string, string> Shown { get; } = new Dictionary<string, string>
    {
        ["open"] = "open: to release, cut or drill",
        ["late"] = "late jobs",
        [Received] = "received, not released",
        ["all"] = "all jobs",
    };

    /// <summary>Which jobs a list shows to those who do not release jobs.</summary>
    public static IReadOnlyDictionary<string, string> ShownAtBenches { get; } = Shown.Where(pair => pair.Key != Received).ToDictionary();
}
