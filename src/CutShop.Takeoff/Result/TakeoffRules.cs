namespace CutShop.Takeoff.Result;

/// <summary>The rules that a takeoff is worked out by.</summary>
public static class TakeoffRules
{
    /// <summary>
    /// Their number. It grows by one with each change that can give a job another length, bore, screw or warning; what is stored
    /// says by which rules it was made.
    /// </summary>
    public const int Number = 2;

    /// <summary>The number of the first ones, which shops that are older than stored parts were worked out by.</summary>
    public const int First = 1;
}
