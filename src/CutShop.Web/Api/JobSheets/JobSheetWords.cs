using CutShop.Takeoff.Words;

namespace CutShop.Web.Api;

/// <summary>What is said of a job's sheet that is wrong.</summary>
internal static class JobSheetWords
{
    public static WordList List { get; } = new(typeof(JobSheetWords));

    /// <summary>In English, as the API answers whatever language a browser asks for.</summary>
    public static string Say(string key, params IReadOnlyList<object?> values) => List.InEnglish(key, values);
}
