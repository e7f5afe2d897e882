namespace CutShop.Shop;

/// <summary>Answers already given, kept in the transaction of the change they answer, so that a request sent twice counts once.</summary>
internal static class RequestLog
{
    /// <summary>The answer given to this request before, or null.</summary>
    public static string? Find(ShopSession session, string key) =>
        session.FirstOrDefault<string>("SELECT answer FROM requests WHERE key = @key", new { key });

    /// <summary>Keeps an answer with its request.</summary>
    public static void Keep(ShopSession session, string key, string answer) =>
        session.Execute("INSERT INTO requests (key, at, answer) VALUES (@key, @Now, @answer)", new { key, session.Now, answer });
}
