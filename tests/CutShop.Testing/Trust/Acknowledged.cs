using System.Collections.Concurrent;

namespace CutShop.Testing.Trust;

/// <summary>Everything that the server has told its clients is done, to be held against the database after each kill.</summary>
internal sealed class Acknowledged
{
    private readonly ConcurrentDictionary<string, bool> _keys = new();
    private readonly ConcurrentDictionary<string, bool> _jobs = new();
    private readonly ConcurrentDictionary<string, bool> _coils = new();
    private readonly ConcurrentDictionary<string, bool> _plans = new();
    private readonly ConcurrentDictionary<string, TicketSeen> _tickets = new();
    private long _writes;

    /// <summary>Writes that were acknowledged.</summary>
    public long Writes => Interlocked.Read(ref _writes);

    public void Write(string key)
    {
        _keys[key] = true;
        Interlocked.Increment(ref _writes);
    }

    public void Job(string number) => _jobs[number] = true;

    public void Coil(string mark) => _coils[mark] = true;

    public void Plan(string id)
    {
        _plans[id] = true;
        Interlocked.Increment(ref _writes);
    }

    /// <summary>A ticket of which only this client knows is about to be changed: until the answer comes it is one or the other.</summary>
    public void Trying(string ticket, string becomes) => _tickets[ticket] = (_tickets.GetValueOrDefault(ticket) ?? new(null, null)) with { Maybe = becomes };

    /// <summary>The change was acknowledged.</summary>
    public void Is(string ticket, string state) => _tickets[ticket] = new(state, null);

    /// <summary>The ticket is back in the queue, where others may take it.</summary>
    public void Forget(string ticket) => _tickets.TryRemove(ticket, out _);

    /// <summary>What was acknowledged and is not in the database, in words.</summary>
    public IReadOnlyList<string> Lost(ShopDatabase database) => database.Read(session =>
    {
        var keys = session.All<string>("SELECT key FROM requests").ToHashSet();
        var jobs = session.All<string>("SELECT number FROM jobs").ToHashSet();
        var coils = session.All<string>("SELECT mark FROM coils").ToHashSet();
        var plans = session.All<string>("SELECT CAST(id AS TEXT) AS id FROM cut_plans WHERE state IN ('accepted', 'replaced')").ToHashSet();
        var tickets = session.All<(string Name, string State)>(
            """
            SELECT code AS name, state || ' ' || steps AS state FROM cut_tickets JOIN pieces ON pieces.id = piece_id
            UNION ALL
            SELECT number || '/' || mark, state || ' ' || steps FROM drill_tickets JOIN posts ON posts.id = post_id JOIN jobs ON jobs.id = job_id
            """).ToDictionary(ticket => ticket.Name, ticket => ticket.State);
        return (IReadOnlyList<string>)
        [
            .. Missing("request", _keys.Keys, keys),
            .. Missing("job", _jobs.Keys, jobs),
            .. Missing("coil", _coils.Keys, coils),
            .. Missing("accepted plan", _plans.Keys, plans),
            .. _tickets.Where(seen => seen.Value.Sure is not null && tickets.GetValueOrDefault(seen.Key) is var now && now != seen.Value.Sure && now != seen.Value.Maybe)
                .Select(seen => $"ticket {seen.Key}: acknowledged {seen.Value.Sure}, stored {tickets.GetValueOrDefault(seen.Key) ?? "nothing"}"),
        ];
    });

    private static IEnumerable<string> Missing(string what, IEnumerable<string> told, HashSet<string> stored) =>
        told.Where(one => !stored.Contains(one)).Select(one => $"{what} {one}");

    private sealed record TicketSeen(string? Sure, string? Maybe);
}
