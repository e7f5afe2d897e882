using CutShop.Shop.Store;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Tickets;

/// <summary>How something done at a bench went.</summary>
/// <param name="Said">Why nothing was changed, to be said in the reader's language; null where it is done.</param>
/// <param name="Outcome">The result, such as the code of the ticket that was given; empty where there is nothing to tell.</param>
public sealed record BenchAnswer(Sentence? Said, string Outcome = "")
{
    /// <summary>The longest reason that is kept, in characters.</summary>
    public const int LongestReason = 200;

    /// <summary>Why nothing was changed, in English, or null.</summary>
    public string? Problem => Said?.ToString();

    /// <summary>True where it is stored.</summary>
    public bool IsDone => Said is null;

    /// <summary>Nothing more to say.</summary>
    public static BenchAnswer Nothing { get; } = new(Said: null);

    internal static BenchAnswer Given(string outcome) => new(Said: null, outcome);

    internal static BenchAnswer Refused(Sentence why) => new(why);

    internal static BenchAnswer Of(Sentence? problem, string outcome) => problem is null ? Given(outcome) : Refused(problem);

    /// <summary>Does a request's work once.</summary>
    internal static BenchAnswer Once(ShopSession session, string requestKey, Func<BenchAnswer> work) =>
        RequestLog.Once(session, requestKey, () => Counted(session, work()), answer => answer.IsDone ? answer.Outcome : null, Given);

    private static BenchAnswer Counted(ShopSession session, BenchAnswer answer)
    {
        if (!answer.IsDone)
            session.Count(ShopCount.TapRefused);
        return answer;
    }

    /// <summary>Why a reason will not do, or null.</summary>
    internal static Sentence? NeedsReason(string reason) =>
        reason.Trim().Length is > 0 and <= LongestReason ? null : BenchReplies.Of("GiveReason", LongestReason);
}
