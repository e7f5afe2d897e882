using CutShop.Takeoff.Words;

namespace CutShop.CutPlan;

/// <summary>The sentences about a cut plan: how good it is proved to be, and why there is none.</summary>
public static class CutPlanWords
{
    /// <summary>The sentences.</summary>
    public static WordList List { get; } = new(typeof(CutPlanWords));

    /// <summary>In English, as plans are stored.</summary>
    internal static string Say(string key, params IReadOnlyList<object?> values) => List.InEnglish(key, values);
}
