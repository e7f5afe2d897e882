using System.Globalization;
using CutShop.Shop.Store;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CutShop.Web.Api;

/// <summary>
/// Where a reader of news has got to, and how much it takes at once. A cursor is the history's epoch and a line of it; after a restore
/// lines are numbered again, so a cursor of another epoch is gone.
/// </summary>
/// <param name="Epoch">The epoch, read before the lines: a restore in between makes the answer's own cursor one of before.</param>
/// <param name="Since">The line of the last answer; 0 to start from the beginning.</param>
/// <param name="Most">How many at most.</param>
/// <param name="Problem">What is wrong with what was asked, or null.</param>
internal readonly record struct Cursor(string Epoch, long Since, int Most, ProblemHttpResult? Problem)
{
    public const int MostAtOnce = 1000;
    private const int Usual = 100;
    private const string Start = "0";

    public bool IsGood => Problem is null;

    public static Cursor Read(ShopDatabase database, string? since, string? most)
    {
        var epoch = HistoryEpoch.Of(database);
        var problems = new List<ProblemPlace>();
        var (of, line) = since is null or Start ? (epoch, 0) : Parse(since);
        if (line is null)
            problems.Add(new("since", since!, HostWords.Say("ApiCursor")));
        var count = Usual;
        if (most is not null && !(int.TryParse(most, NumberStyles.None, CultureInfo.InvariantCulture, out count) && count is >= 1 and <= MostAtOnce))
            problems.Add(new("most", most, HostWords.Say("ApiCount", MostAtOnce)));
        return new(epoch, line ?? 0, count, problems.Count > 0 ? ApiProblem.Of(StatusCodes.Status400BadRequest, HostWords.Say("ApiNotUnderstood"), problems)
            : of != epoch ? Gone(since!)
            : null);
    }

    /// <summary>The cursor to ask with next.</summary>
    /// <param name="line">The last line of the answer; null where there was none.</param>
    public string Next(long? line) => string.Create(CultureInfo.InvariantCulture, $"{Epoch}-{line ?? Since}");

    /// <summary>The epoch and the line. A number alone is of a program from before there were epochs: it is of none.</summary>
    private static (string Epoch, long? Line) Parse(string cursor)
    {
        var (epoch, text) = cursor.Split('-') switch
        {
            [var alone] => ("", alone),
            [{ Length: > 0 } one, var rest] => (one, rest),
            _ => ("", ""),
        };
        return long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var line) ? (epoch, line) : (epoch, null);
    }

    private static ProblemHttpResult Gone(string since) => ApiProblem.Of(
        StatusCodes.Status410Gone,
        HostWords.Say("ApiOldCursor"),
        new ProblemPlace("since", since, HostWords.Say("ApiNewCursor")));
}
