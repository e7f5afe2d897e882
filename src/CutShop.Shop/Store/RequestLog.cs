using System.Globalization;

namespace CutShop.Shop.Store;

/// <summary>Answers already given, kept in the transaction of the change they answer, so that a request sent twice counts once.</summary>
internal static class RequestLog
{
    /// <summary>Does a request's work once: a request that was done before is answered as it was then.</summary>
    /// <typeparam name="T">The kind of answer.</typeparam>
    /// <param name="session">The transaction.</param>
    /// <param name="key">The request's key.</param>
    /// <param name="work">What is done the first time.</param>
    /// <param name="kept">The answer as text, or null for a refusal, which is not kept: the request may come again once it is put right.</param>
    /// <param name="again">The answer from its text.</param>
    public static T Once<T>(ShopSession session, string key, Func<T> work, Func<T, string?> kept, Func<string, T> again)
    {
        if (AnswerOf(session, key) is { } text)
            return again(text);
        var answer = work();
        if (kept(answer) is { } told)
            session.Execute("INSERT INTO requests (key, at, answer) VALUES (@key, @Now, @told)", new { key, session.Now, told });
        return answer;
    }

    /// <summary>The answer that a request was given before, or null.</summary>
    public static string? AnswerOf(ShopSession session, string key) =>
        session.FirstOrDefault<string>("SELECT answer FROM requests WHERE key = @key", new { key });

    /// <summary>Does once what makes a row, and answers with the row's id.</summary>
    public static long Once(ShopSession session, string key, Func<long> work) =>
        Once(session, key, work, id => id.ToString(CultureInfo.InvariantCulture), text => long.Parse(text, CultureInfo.InvariantCulture));
}
