using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Orders;

public sealed class QuoteDeskTests
{
    private static readonly DateOnly Today = new(2027, 1, 11);

    // By hand: each row is three sections of 72 in with 6 in of sag, about 72 (1 + 8/3 (6/72)^2) = 73.3 in each, two stopped
    // ends of 2 3/4 in and two through bores of 5 1/2 in: 236.4 in, up to 236 1/2 in. Two rows: 473 in = 39 ft 5 in.
    // Rope 39.41666 ft x 2.125 = 83.76; 8 bores with a 1 9/16 in bit x 4.25 = 34.00; 2 pieces x 4.50 = 9.00; packing 35.00;
    // delivery 120.00. Sum 281.76; tax 6.25 % = 17.61; total 299.37.
    [Fact]
    public async Task A_quote_charges_rope_bores_cutting_packing_delivery_and_tax()
    {
        using var shop = new DeskShop();
        await shop.KeepPricesAsync(Today);
        var quote = shop.Quotes.Find(await shop.QuoteAsync(SmallJobs.FourPosts()))!;
        Assert.Equal(["83.76", "34.00", "9.00", "35.00", "120.00"], quote.Lines.Select(line => line.Amount.ToString()));
        Assert.Equal("39' 5\" = 12014.2 mm", quote.Lines[0].Quantity);
        Assert.Equal(("281.76", "17.61", "299.37"), (quote.Net.ToString(), quote.Tax.ToString(), quote.Total.ToString()));
        Assert.Equal(new DateOnly(2027, 2, 10), quote.ValidUntil);
    }

    [Fact]
    public async Task A_later_price_does_not_touch_a_quote()
    {
        using var shop = new DeskShop();
        await shop.KeepPricesAsync(Today);
        var id = await shop.QuoteAsync(SmallJobs.FourPosts());
        await shop.KeepPricesAsync(Today, "9.99");
        await shop.Prices.SetCurrencyAsync("€", "test", DeskShop.Cancel);
        var quote = shop.Quotes.Find(id)!;
        Assert.Equal("$299.37", quote.Total.With(quote.Currency));
    }

    [Fact]
    public async Task Asking_twice_on_a_day_by_the_same_prices_is_one_quote_and_other_prices_make_another()
    {
        using var shop = new DeskShop();
        await shop.KeepPricesAsync(Today);
        var draft = await shop.StartAsync(SmallJobs.FourPosts());
        var first = await shop.Quotes.MakeAsync(draft, 1, "test", DeskShop.Cancel);
        Assert.Equal(first, await shop.Quotes.MakeAsync(draft, 1, "test", DeskShop.Cancel));
        await shop.KeepPricesAsync(Today, "9.99");
        Assert.NotEqual(first, await shop.Quotes.MakeAsync(draft, 1, "test", DeskShop.Cancel));
    }

    [Fact]
    public async Task Without_prices_or_with_a_rope_that_has_none_there_is_no_quote_and_it_says_why()
    {
        using var shop = new DeskShop();
        var draft = await shop.StartAsync(SmallJobs.FourPosts() with { Rope = new() { Material = "hemp", Diameter = "1 1/2 in" } });
        Assert.Equal("No price list is in effect today. Add one first.", (await shop.Quotes.MakeAsync(draft, 1, "test", DeskShop.Cancel)).Problem?.ToString());
        await shop.KeepPricesAsync(Today);
        Assert.Equal("No price for: 1 1/2 in hemp rope. Add it to the prices first.", (await shop.Quotes.MakeAsync(draft, 1, "test", DeskShop.Cancel)).Problem?.ToString());
        Assert.Empty(shop.Quotes.OfDraft(draft));
    }

    [Fact]
    public async Task A_change_of_a_cancelled_job_is_neither_quoted_nor_accepted_nor_taken_in()
    {
        using var shop = new DeskShop();
        await shop.KeepPricesAsync(Today);
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        var draft = await shop.StartAsync(SmallJobs.FourPosts() with { Changes = "LQ-3001" }, "a change");
        var quote = await shop.Quotes.MakeAsync(draft, 1, "test", DeskShop.Cancel);
        Assert.Null(quote.Problem);
        Assert.Single(shop.Quotes.Open());

        await shop.Release.CancelAsync("LQ-3001", "a reason", "test", DeskShop.Cancel);
        var before = shop.Dump();
        const string Said = "Job LQ-3001 was cancelled and cannot change.";
        Assert.Equal(Said, (await shop.Quotes.MakeAsync(draft, 1, "test", DeskShop.Cancel)).Problem?.ToString());
        Assert.Equal(Said, (await shop.Quotes.AcceptAsync(long.Parse(quote.Value, System.Globalization.CultureInfo.InvariantCulture), "test", DeskShop.Cancel)).Problem?.ToString());
        Assert.Equal(Said, (await shop.Intake.TakeInAsync(draft, 1, "test", DeskShop.Cancel)).Problem?.ToString());
        Assert.Empty(shop.Quotes.Open());
        Assert.Equal(before, shop.Dump());
    }

    [Fact]
    public async Task An_accepted_quote_is_a_received_job_once_however_often_it_is_sent()
    {
        using var shop = new DeskShop();
        await shop.KeepPricesAsync(Today);
        var id = await shop.QuoteAsync(SmallJobs.FourPosts());
        Assert.Equal(new DeskAnswer("LQ-3001", Problem: null), await shop.Quotes.AcceptAsync(id, "test", DeskShop.Cancel));
        var after = shop.Dump();
        Assert.Equal(new DeskAnswer("LQ-3001", Problem: null), await shop.Quotes.AcceptAsync(id, "test", DeskShop.Cancel));
        Assert.Equal(after, shop.Dump());
        var job = shop.Jobs.Find("LQ-3001")!;
        Assert.Null(job.ReleasedAt);
        Assert.Equal(2, job.Pieces.Count);
        Assert.Equal("taken in", shop.Drafts.Find(1)!.State);
    }

    [Fact]
    public async Task A_quote_stands_through_its_last_day_and_not_after()
    {
        using var shop = new DeskShop();
        await shop.KeepPricesAsync(Today);
        var id = await shop.QuoteAsync(SmallJobs.FourPosts());
        var other = await shop.QuoteAsync(SmallJobs.FourPosts("LQ-3002"), "another draft");
        // 30 days on, at 23:59 of 2027-02-10.
        shop.Time.Advance(TimeSpan.FromDays(30) + TimeSpan.FromHours(14.98));
        Assert.True((await shop.Quotes.AcceptAsync(other, "test", DeskShop.Cancel)).IsDone);
        shop.Time.Advance(TimeSpan.FromMinutes(2));
        Assert.Equal("This quote was valid until 2027-02-10. Make a new one from the draft.", (await shop.Quotes.AcceptAsync(id, "test", DeskShop.Cancel)).Problem?.ToString());
    }

    [Fact]
    public async Task A_quote_whose_number_another_job_took_meanwhile_is_refused()
    {
        using var shop = new DeskShop();
        await shop.KeepPricesAsync(Today);
        var id = await shop.QuoteAsync(SmallJobs.FourPosts());
        await shop.ReleasedJobAsync(SmallJobs.FourPosts() with { Customer = "somebody else" });
        var before = shop.Dump();
        Assert.StartsWith("Another job has the number LQ-3001.", (await shop.Quotes.AcceptAsync(id, "test", DeskShop.Cancel)).Problem?.ToString(), StringComparison.Ordinal);
        Assert.Equal(before, shop.Dump());
    }

    [Fact]
    public async Task Accepting_stores_all_or_nothing_whichever_statement_breaks()
    {
        using var shop = new DeskShop();
        await shop.KeepPricesAsync(Today);
        var id = await shop.QuoteAsync(SmallJobs.FourPosts());
        var statements = await shop.BreakEachStatementAsync(() => shop.Quotes.AcceptAsync(id, "test", DeskShop.Cancel));
        // A job, 2 pieces, 4 posts, each of them with its part, tickets of both kinds, 3 lines of history, 2 states.
        Assert.Equal(2 + 4 + 8 + 2 + 3 + 2, statements);
        Assert.NotNull(shop.Jobs.Find("LQ-3001"));
    }
}
