using CutShop.Shop.Store;

namespace CutShop.Shop.People;

/// <summary>Signed-in sessions, each with a random id in its cookie. One that was signed out of is remembered for as long as a copy of its cookie could live.</summary>
public sealed class Sessions(ShopDatabase database)
{
    /// <summary>Longer than any cookie lives that is not renewed, and one of an ended session never is.</summary>
    private static readonly TimeSpan Remembered = TimeSpan.FromDays(1);

    /// <summary>The id of a new session.</summary>
    public static string Draw() => Secrets.DrawToken();

    /// <summary>The person of a session that is good: active, the stamp as it was, and not signed out.</summary>
    public Person? PersonOf(long personId, string stamp, string session) => database.Read(read =>
        PersonRows.ById(read, personId) is { IsActive: true } person && person.Stamp == stamp
            && !read.Value<bool>("SELECT EXISTS (SELECT 1 FROM ended_sessions WHERE session_hash = @hash)", new { hash = Secrets.HashOfToken(session) })
            ? person.ToPerson()
            : null);

    /// <summary>Ends a session. Safe to send twice.</summary>
    public Task EndAsync(string session, CancellationToken cancel = default) => database.WriteAsync(
        write =>
        {
            write.Execute("DELETE FROM ended_sessions WHERE ended_at <= @forgotten", new { forgotten = write.Now - Remembered });
            write.Execute(
                "INSERT INTO ended_sessions (session_hash, ended_at) VALUES (@hash, @Now) ON CONFLICT (session_hash) DO NOTHING",
                new { hash = Secrets.HashOfToken(session), write.Now });
            return true;
        },
        cancel);
}
