using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Benches;

/// <summary>Who has which ticket of a bench: one ticket a person, handed back by a tap, by itself after a while, or taken over.</summary>
/// <param name="table">The bench's table of tickets.</param>
/// <param name="handBack">The move back to the queue.</param>
/// <param name="mayHandBack">SQL that is true while a ticket may go back: nothing is done yet that cannot be done again.</param>
/// <param name="backSet">What handing back sets, as SQL that starts with a comma.</param>
internal sealed class Claims(string table, TicketMove handBack, string mayHandBack, string backSet)
{
    /// <summary>SQL that ends a claim.</summary>
    public const string Free = ", claimed_by = NULL, claimed_at = NULL, touched_at = NULL";

    /// <summary>SQL that begins one.</summary>
    public const string Take = ", claimed_by = @who, claimed_at = @now, touched_at = @now";

    /// <summary>The ticket that someone has at the bench, or null.</summary>
    public long? Of(ShopSession session, string who) => session.FirstOrDefault<long?>(
        $"SELECT id FROM {table} WHERE state = '{TicketStates.AtTheBench}' AND claimed_by = @who ORDER BY claimed_at LIMIT 1", new { who });

    /// <summary>Why someone cannot have a ticket beside the one they have, or null where they have none but this.</summary>
    public Sentence? HasAnother(ShopSession session, long id, string who) =>
        Of(session, who) is { } other && other != id ? BenchReplies.Of("HasAnother") : null;

    /// <summary>
    /// Gives someone the next ticket, beside others who take one at the same time. Where that finds none to give, it is asked once
    /// more with nobody else at work, and that answer counts: a ticket that another was looking at is not overlooked.
    /// </summary>
    /// <param name="database">The shop.</param>
    /// <param name="who">Who asks.</param>
    /// <param name="requestKey">The request's key.</param>
    /// <param name="give">Gives a ticket, or says why there is none.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public async Task<BenchAnswer> NextAsync(
        ShopDatabase database, string who, string requestKey, Func<ShopSession, BenchAnswer> give, CancellationToken cancel)
    {
        var beside = await database.TakeTicketAsync(
            who,
            session => BenchAnswer.Once(
                session,
                requestKey,
                () => Forgotten(session, BenchSettingsShelf.Read(session).HandBackAfter).Count == 0
                    ? give(session)
                    : BenchAnswer.Refused(BenchReplies.Of("ForgottenFirst"))),
            cancel).ConfigureAwait(false);
        return beside.IsDone
            ? beside
            : await database.WriteAsync(
                session => BenchAnswer.Once(
                    session,
                    requestKey,
                    () =>
                    {
                        HandBackForgotten(session);
                        return give(session);
                    }),
                cancel).ConfigureAwait(false);
    }

    /// <summary>Hands back every ticket that nobody has touched for as long as the shop has set, or that a clock which was ahead has touched.</summary>
    public void HandBackForgotten(ShopSession session)
    {
        var after = BenchSettingsShelf.Read(session).HandBackAfter;
        var unused = handBack with { What = HistoryCodes.HandedBackUnused };
        foreach (var (id, who) in Forgotten(session, after))
            unused.Do(session, id, who, Free + backSet, details: new { minutes = (long)after.TotalMinutes });
    }

    private IReadOnlyList<(long Id, string Who)> Forgotten(ShopSession session, TimeSpan after) => session.All<(long, string)>(
        $"SELECT id, claimed_by FROM {table} WHERE state = '{TicketStates.AtTheBench}' AND (touched_at < @limit OR touched_at > @ahead) AND {mayHandBack}",
        new { limit = session.Now - after, ahead = session.Now + after });

    /// <summary>Hands a ticket back to the queue.</summary>
    public Sentence? HandBack(ShopSession session, long id, string who)
    {
        if (session.Value<long>($"SELECT count(*) FROM {table} WHERE id = @id AND state = '{TicketStates.AtTheBench}' AND NOT ({mayHandBack})", new { id }) == 1)
            return BenchReplies.Of("MeasureFirst");
        return handBack.Try(session, id, who, Free + backSet);
    }

    /// <summary>Gives a ticket at the bench to someone else, as far as it is.</summary>
    public Sentence? TakeOver(ShopSession session, long id, string who)
    {
        if (HasAnother(session, id, who) is { } busy)
            return busy;
        var had = session.Value<string>($"SELECT coalesce(claimed_by, '') FROM {table} WHERE id = @id", new { id });
        if (session.Execute($"UPDATE {table} SET claimed_by = @who, claimed_at = @Now, touched_at = @Now WHERE id = @id AND state = '{TicketStates.AtTheBench}'", new { id, who, session.Now }) == 0)
            return BenchReplies.Of("NotAtTheBench");
        session.Record(handBack.Subject, id, who, HistoryCodes.TakenOver, from: had);
        return null;
    }
}
