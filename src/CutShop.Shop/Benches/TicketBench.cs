using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Benches;

/// <summary>A ticket as its bench sees it.</summary>
public interface IBenchTicket
{
    /// <summary>The ticket.</summary>
    public long Id { get; }

    /// <summary>Its state, one of <see cref="TicketStates"/>.</summary>
    public string State { get; }

    /// <summary>Who has it at the bench, or null.</summary>
    public string? ClaimedBy { get; }
}

/// <summary>
/// What the benches have in common: one ticket is given to one person, who hands it back, finishes it or leaves it to another. Every
/// operation is one transaction with its line of history, and sent twice with the same key it counts once.
/// </summary>
/// <typeparam name="TWork">The bench's tickets.</typeparam>
/// <typeparam name="TMark">What identifies a ticket.</typeparam>
public abstract class TicketBench<TWork, TMark>
    where TWork : class, IBenchTicket
{
    private protected TicketBench(ShopDatabase database) => Database = database;

    private protected ShopDatabase Database { get; }

    private protected abstract Claims Claims { get; }

    /// <summary>The ticket of a mark, or null.</summary>
    public TWork? Find(TMark mark) => Database.Read(session => Find(session, mark));

    /// <summary>The ticket that someone has at the bench, or null.</summary>
    public TWork? Of(string who) => Database.Read(session => Claims.Of(session, who) is { } id ? Of(session, id) : null);

    /// <summary>What is at the benches now.</summary>
    public IReadOnlyList<TWork> AtTheBench() => Database.Read(AtTheBench);

    /// <summary>What was finished last, the newest first.</summary>
    public IReadOnlyList<TWork> Latest(int most = 10) => Database.Read(session => Latest(session, most));

    /// <summary>
    /// Gives the next ticket: the one that this person has already, else the first of the queue. The outcome is the ticket's address.
    /// </summary>
    public Task<BenchAnswer> NextAsync(string who, string requestKey, CancellationToken cancel = default) => Claims.NextAsync(
        Database,
        who,
        requestKey,
        session => Claims.Of(session, who) is { } mine
            ? BenchAnswer.Given(AddressOf(Of(session, mine)))
            : ClaimNext(session, who),
        cancel);

    /// <summary>Gives a certain ticket that waits, as when it is scanned.</summary>
    public Task<BenchAnswer> TakeAsync(TMark mark, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        mark,
        requestKey,
        (session, work) =>
        {
            Claims.HandBackForgotten(session);
            return Claims.HasAnother(session, work.Id, who) ?? Claim(session, work, who);
        },
        cancel);

    /// <summary>Hands a ticket back to the queue, while nothing is done that cannot be done again.</summary>
    public Task<BenchAnswer> HandBackAsync(TMark mark, string who, string requestKey, CancellationToken cancel = default) =>
        ForAsync(mark, requestKey, (session, work) => Claims.HandBack(session, work.Id, who), cancel);

    /// <summary>Takes a ticket over from the person who has it; the steps done stay done.</summary>
    public Task<BenchAnswer> TakeOverAsync(TMark mark, string who, string requestKey, CancellationToken cancel = default) =>
        ForAsync(mark, requestKey, (session, work) => Claims.TakeOver(session, work.Id, who), cancel);

    /// <summary>Undoes what was recorded by mistake, within the shift and with a reason: the ticket waits with nothing done.</summary>
    public Task<BenchAnswer> UndoAsync(TMark mark, string reason, string who, string requestKey, CancellationToken cancel = default) => WithReasonAsync(
        mark, reason, requestKey, (session, work) => Undo(session, work, BenchSettingsShelf.Read(session).Shift, reason, who), cancel);

    private protected abstract TWork? Find(ShopSession session, TMark mark);

    private protected abstract TWork Of(ShopSession session, long id);

    private protected abstract IReadOnlyList<TWork> AtTheBench(ShopSession session);

    private protected abstract IReadOnlyList<TWork> Latest(ShopSession session, int most);

    /// <summary>The ticket's page below its bench's.</summary>
    private protected abstract string AddressOf(TWork work);

    /// <summary>Claims the queue's next ticket, or says why there is none.</summary>
    private protected abstract BenchAnswer ClaimNext(ShopSession session, string who);

    /// <summary>Claims a ticket that was asked for, or says why not.</summary>
    private protected abstract Sentence? Claim(ShopSession session, TWork work, string who);

    private protected abstract Sentence? Undo(ShopSession session, TWork work, TimeSpan shift, string reason, string who);

    private protected abstract Sentence Unknown(TMark mark);

    private protected abstract Sentence AtTheBenchOf(TWork work, string other);

    private protected abstract Sentence TakeItFirst(TWork work);

    /// <summary>Why a ticket is not for this person to work on, or null.</summary>
    private protected Sentence? NotClaimedBy(TWork work, string who) => work.State == TicketStates.AtTheBench && work.ClaimedBy == who
        ? null
        : work.ClaimedBy is { } other ? AtTheBenchOf(work, other) : TakeItFirst(work);

    /// <summary>Works on a ticket once.</summary>
    private protected Task<BenchAnswer> ForAsync(
        TMark mark, string requestKey, Func<ShopSession, TWork, Sentence?> work, CancellationToken cancel) => Database.WriteAsync(
        session => BenchAnswer.Once(
            session,
            requestKey,
            () => Find(session, mark) is { } found ? BenchAnswer.Of(work(session, found), AddressOf(found)) : BenchAnswer.Refused(Unknown(mark))),
        cancel);

    /// <summary>The same, of a ticket that this person has at the bench.</summary>
    private protected Task<BenchAnswer> WhenClaimedAsync(
        TMark mark, string who, string requestKey, Func<ShopSession, TWork, Sentence?> work, CancellationToken cancel) =>
        ForAsync(mark, requestKey, (session, found) => NotClaimedBy(found, who) ?? work(session, found), cancel);

    /// <summary>The same, with a reason that is kept.</summary>
    private protected Task<BenchAnswer> WithReasonAsync(
        TMark mark, string reason, string requestKey, Func<ShopSession, TWork, Sentence?> work, CancellationToken cancel) =>
        ForAsync(mark, requestKey, (session, found) => BenchAnswer.NeedsReason(reason) ?? work(session, found), cancel);
}
