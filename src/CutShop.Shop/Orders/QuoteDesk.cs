using System.Globalization;
using CutShop.Shop.Jobs;
using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Orders;

/// <summary>Makes quotes from drafts and turns an accepted one into a job.</summary>
public sealed class QuoteDesk(ShopDatabase database, ShopTablesShelf tables)
{
    private const string Listed =
        "SELECT quotes.id, quotes.job_number, quotes.customer, made_on, valid_until, currency, total_e4 AS total, quotes.state FROM quotes";

    /// <summary>
    /// Quotes a draft by today's prices. Safe to send twice: the same draft on the same day by the same prices is one quote.
    /// </summary>
    /// <returns>The quote's number, or why there is none.</returns>
    public Task<DeskAnswer> MakeAsync(long draftId, long version, string who, CancellationToken cancel = default) =>
        database.WriteAsync(session => Make(session, draftId, version, who), cancel);

    /// <summary>Makes the quoted job, in one step with the quote. Safe to send twice.</summary>
    /// <returns>The job's number, or why there is none.</returns>
    public Task<DeskAnswer> AcceptAsync(long id, string who, CancellationToken cancel = default) =>
        database.WriteAsync(session => Accept(session, id, who), cancel);

    /// <summary>A quote, or null.</summary>
    public Quote? Find(long id) => database.Read(session => Find(session, id));

    /// <summary>The quotes made from a draft, the newest first.</summary>
    public IReadOnlyList<QuoteListed> OfDraft(long draftId) => database.Read(session => session.All<QuoteListed>(
        $"{Listed} WHERE draft_id = @draftId ORDER BY id DESC", new { draftId }));

    /// <summary>Quotes that can still be accepted, the newest first.</summary>
    public IReadOnlyList<QuoteListed> Open(int most = 50) => database.Read(session => session.All<QuoteListed>(
        $"""
        {Listed} JOIN drafts ON drafts.id = draft_id
        WHERE quotes.state = 'open' AND valid_until >= @Today AND drafts.state = 'open'
          AND NOT EXISTS (SELECT 1 FROM jobs WHERE number = quotes.job_number AND cancelled_at IS NOT NULL)
        ORDER BY quotes.id DESC LIMIT @most
        """,
        new { session.Today, most }));

    /// <summary>The quotes that were accepted for a job, the newest first: the one it came from, and those of its changes.</summary>
    public IReadOnlyList<QuoteListed> AcceptedFor(string number) => database.Read(session => session.All<QuoteListed>(
        $"{Listed} WHERE job_number = @number AND state = 'accepted' ORDER BY id DESC", new { number }));

    /// <summary>Marks a quote as accepted in the step that gives its job the form it quoted.</summary>
    /// <returns>Why not, or null.</returns>
    internal static Sentence? AcceptWithChange(ShopSession session, long id, long draftId, Job next, string who)
    {
        if (session.FirstOrDefault<QuotedChange>("SELECT draft_id, job_file, valid_until FROM quotes WHERE id = @id AND state = 'open'", new { id }) is not { } quote)
            return OrderReplies.Of("NoSuchOpenQuote");
        if (quote.ValidUntil < session.Today)
            return Expired(quote.ValidUntil);
        if (quote.DraftId != draftId || !JobFileWriter.IsOf(quote.JobFile, next))
            return OrderReplies.Of("DraftDiffersFromQuote", id);
        MarkAccepted(session, id, who);
        return null;
    }

    private static void MarkAccepted(ShopSession session, long id, string who)
    {
        session.Execute("UPDATE quotes SET state = 'accepted' WHERE id = @id", new { id });
        session.Record("quote", id, who, HistoryCodes.QuoteAccepted, "open", "accepted");
    }

    private static Sentence Expired(DateOnly lastDay) => OrderReplies.Of("QuoteExpired", IsoDate.Text(lastDay));

    private DeskAnswer Make(ShopSession session, long draftId, long version, string who)
    {
        if (DraftShelf.Find(session, draftId) is not { IsOpen: true } draft)
            return DeskAnswer.Refused(OrderReplies.Of("DraftNotOpen"));
        if (draft.Version != version)
            return DeskAnswer.Refused(OrderReplies.Of("DraftChangedBeforeQuote"));
        if (DraftReading.Of(draft.Form, tables.Current(session)).Takeoff is not { } takeoff)
            return DeskAnswer.Refused(OrderReplies.Of("DraftHasErrors"));
        if (JobChanging.IsCancelled(session, takeoff.Job.Number))
            return DeskAnswer.Refused(JobChanging.WasCancelled(takeoff.Job.Number));
        if (!draft.Form.IsChangeOf(takeoff.Job.Number) && JobChanging.OfNumber(session, takeoff.Job.Number) is { } stored)
            return DeskAnswer.Refused(OrderReplies.Of("SayWhetherItChanges", stored.Says));
        if (PriceBook.On(session, session.Today) is not { } prices)
            return DeskAnswer.Refused(OrderReplies.Of("NoPriceList"));
        var priced = Pricing.Of(takeoff, prices);
        if (!priced.IsWhole)
            return DeskAnswer.Refused(OrderReplies.Of("NoPriceFor", priced.Missing.Aggregate((some, next) => OrderReplies.Of("ListedTogether", some, next))));

        var made = session.FirstOrDefault<long?>(
            "SELECT id FROM quotes WHERE draft_id = @draftId AND draft_version = @version AND made_on = @Today AND price_list_id = @Id",
            new { draftId, version, session.Today, prices.Id });
        return DeskAnswer.Done(IdText(made ?? Insert(session, draft, takeoff, prices, priced, who)));
    }

    private static long Insert(ShopSession session, Draft draft, JobTakeoff takeoff, PriceList prices, Priced priced, string who)
    {
        var job = takeoff.Job;
        var id = session.Insert(
            """
            INSERT INTO quotes (draft_id, draft_version, job_number, customer, job_file, price_list_id, currency, tax_millionths,
              net_e4, tax_e4, total_e4, made_on, valid_until, state)
            VALUES (@draftId, @Version, @Number, @Customer, @file, @listId, @currency, @Millionths, @Net, @Tax, @Total, @Today, @until, 'open')
            """,
            new
            {
                draftId = draft.Id,
                draft.Version,
                job.Number,
                job.Customer,
                file = JobFileWriter.Write(job),
                listId = prices.Id,
                currency = PriceBook.Currency(session),
                prices.Tax.Millionths,
                priced.Net,
                priced.Tax,
                priced.Total,
                session.Today,
                until = session.Today.AddDays(prices.QuoteDays),
            });
        session.Execute(
            "INSERT INTO quote_lines (quote_id, position, what, quantity, price_e4, unit, amount_e4) VALUES (@id, @position, @What, @Quantity, @Price, @Unit, @Amount)",
            priced.Lines.Select((line, position) => new { id, position, line.What, line.Quantity, line.Price, line.Unit, line.Amount }));
        StoredParts.PutQuote(session, id, takeoff);
        session.Record("quote", id, who, HistoryCodes.QuoteMade, after: "open", details: new { totalE4 = priced.Total.TenThousandths });
        return id;
    }

    private static DeskAnswer Accept(ShopSession session, long id, string who)
    {
        if (Find(session, id) is not { } quote)
            return DeskAnswer.Refused(OrderReplies.Of("NoSuchQuote"));
        var number = quote.Takeoff.Job.Number;
        if (quote.IsAccepted)
            return DeskAnswer.Done(number);
        if (quote.ValidUntil < session.Today)
            return DeskAnswer.Refused(Expired(quote.ValidUntil));
        var draft = DraftShelf.Find(session, quote.DraftId)!;
        if (!draft.IsOpen)
            return DeskAnswer.Refused(draft.JobNumber is { } become ? OrderReplies.Of("DraftBecameJob", become) : OrderReplies.Of("DraftPutAway"));
        if (JobChanging.IsCancelled(session, number))
            return DeskAnswer.Refused(JobChanging.WasCancelled(number));
        if (JobIntake.Receive(session, quote.Takeoff, who) == IntakeOutcome.NumberTaken)
            return DeskAnswer.Refused(OrderReplies.Of("NumberTaken", number));
        MarkAccepted(session, id, who);
        DraftShelf.Close(session, quote.DraftId, number, who);
        return DeskAnswer.Done(number);
    }

    private static Quote? Find(ShopSession session, long id)
    {
        if (session.FirstOrDefault<QuoteRow>(
            """
            SELECT id, draft_id, currency, tax_millionths, net_e4 AS net, tax_e4 AS tax, total_e4 AS total, made_on, valid_until, state
            FROM quotes WHERE id = @id
            """,
            new { id }) is not { } row)
            return null;
        var lines = session.All<QuoteLine>(
            "SELECT what, quantity, price_e4 AS price, unit, amount_e4 AS amount FROM quote_lines WHERE quote_id = @id ORDER BY position", new { id });
        return new(
            row.Id,
            row.DraftId,
            StoredParts.Quote(session, id),
            lines,
            row.Net,
            Share.FromMillionths((int)row.TaxMillionths),
            row.Tax,
            row.Total,
            row.Currency,
            row.MadeOn,
            row.ValidUntil,
            row.State);
    }

    private static string IdText(long id) => id.ToString(CultureInfo.InvariantCulture);

    private sealed record QuotedChange(long DraftId, string JobFile, DateOnly ValidUntil);

    private sealed record QuoteRow(
        long Id,
        long DraftId,
        string Currency,
        long TaxMillionths,
        Money Net,
        Money Tax,
        Money Total,
        DateOnly MadeOn,
        DateOnly ValidUntil,
        string State);
}

/// <summary>A line in a list of quotes.</summary>
/// <param name="Id">Its number.</param>
/// <param name="JobNumber">The number of the job it quotes.</param>
/// <param name="Customer">Who asked for it.</param>
/// <param name="MadeOn">The day it was made.</param>
/// <param name="ValidUntil">The last day it is valid.</param>
/// <param name="Currency">The sign before amounts.</param>
/// <param name="Total">Net and tax.</param>
/// <param name="State">open or accepted.</param>
public sealed record QuoteListed(long Id, string JobNumber, string Customer, DateOnly MadeOn, DateOnly ValidUntil, string Currency, Money Total, string State);
