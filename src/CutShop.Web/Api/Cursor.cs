using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CutShop.Web;

/// <summary>Where a reader of news has got to, and how much it takes at once.</summary>
/// <param name="Since">The cursor of the last answer; 0 to start from the beginning.</param>
/// <param name="Most">How many at most.</param>
/// <param name="Problem">What is wrong with what was asked, or null.</param>
internal readonly record struct Cursor(long Since, int Most, ProblemHttpResult? Problem)
{
    public const int MostAtOnce = 1000;
    private const int Usual = 100;

    public bool IsGood => Problem is null;

    public static Cursor Read(string? since, string? most)
    {
        var problems = new List<ProblemPlace>();
        long from = 0;
        if (since is not null && !long.TryParse(since, NumberStyles.None, CultureInfo.InvariantCulture, out from))
            problems.Add(new("since", since, "accepted: the cursor \"next\" of an earlier answer, or 0"));
        var count = Usual;
        if (most is not null && !(int.TryParse(most, NumberStyles.None, CultureInfo.InvariantCulture, out count) && count is >= 1 and <= MostAtOnce))
            problems.Add(new("most", most, $"accepted: a whole number from 1 to {MostAtOnce}"));
        return new(from, count, problems.Count == 0 ? null : ApiProblem.Of(StatusCodes.Status400BadRequest, "The question is not understood.", problems));
    }
}
