using System.Globalization;
using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>How something done at a bench went.</summary>
/// <param name="Said">Why nothing was changed, with its figures apart so that it can be said in another language; null where it is done.</param>
/// <param name="Outcome">What came of it, such as the code of the ticket that was given; empty where there is nothing to tell.</param>
public sealed record BenchAnswer(FormattableString? Said, string Outcome = "")
{
    /// <summary>The longest reason that is kept, in characters.</summary>
    public const int LongestReason = 200;

    /// <summary>Why nothing was changed, in English, or null.</summary>
    public string? Problem => Reply?.ToString() ?? Said?.ToString(CultureInfo.InvariantCulture);

    /// <summary>Why nothing was changed, as a sentence of a word list, or null.</summary>
    public Sentence? Reply { get; private init; }

    /// <summary>True where it is stored.</summary>
    public bool IsDone => Said is null && Reply is null;

    /// <summary>Nothing more to say.</summary>
    public static BenchAnswer Nothing { get; } = new((FormattableString?)null);

    internal static BenchAnswer Given(string outcome) => new(null, outcome);

    internal static BenchAnswer Refused(FormattableString why) => new(why);

    /// <summary>Refuses with a sentence of a word list.</summary>
    public static BenchAnswer Refused(Sentence why) => Nothing with { Reply = why };

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
    internal static FormattableString? NeedsReason(string reason) => reason.Trim().Length is > 0 and <= LongestReason
        ? null
        : (FormattableString)$"Say why, in at most {LongestReason} characters.";
}

/// <summary>A ticket's state inside a message, told apart from marks and codes because it is said in the reader's language.</summary>
/// <param name="State">waiting, at the bench, cut, drilled, packed or re-ordered.</param>
public sealed record StateWord(string State)
{
    /// <summary>The state in English.</summary>
    public override string ToString() => State;
}
