namespace CutShop.Shop.Store;

/// <summary>The states of a coil.</summary>
public static class CoilStates
{
    internal const string InStock = "in stock";

    internal const string UsedUp = "used up";

    internal const string Retired = "retired";
}
