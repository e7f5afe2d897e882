namespace CutShop.Shop.Stock;

/// <summary>The states of a cut plan.</summary>
public static class PlanStates
{
    /// <summary>Made, and nothing is changed by it yet.</summary>
    public const string Draft = "draft";

    /// <summary>The plan by which its rope is cut.</summary>
    public const string Accepted = "accepted";

    /// <summary>A later plan was accepted in its place.</summary>
    public const string Replaced = "replaced";
}
