namespace CutShop.Web.Tests.Orders;

public sealed class QuotePageTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_quote_without_a_head_leads_to_where_it_is_set()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.KeepPricesAsync();
        var address = $"/quotes/{await shop.QuoteAsync(await shop.DraftAsync())}";
        var link = "href=\"/settings/letterhead\"";
        Assert.Contains(link, await PageAsync(shop.Client, address), StringComparison.Ordinal);
        Assert.Empty(await new LetterheadShelf(shop.Database).SetAsync(new("Lantern Quay Rope", ""), "test", Cancel));
        Assert.DoesNotContain(link, await PageAsync(shop.Client, address), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_change_of_a_cancelled_job_says_so_and_offers_no_quote_and_nothing_to_accept()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.KeepPricesAsync();
        var first = await shop.QuoteAsync(await shop.DraftAsync());
        using (await shop.Client.SendFormAsync($"/quotes/{first}")) { }
        var draft = await shop.DraftAsync(form => form with { Changes = form.Number });
        var quote = await shop.QuoteAsync(draft);
        Assert.Contains($"/drafts/{draft}/change?quote={quote}", await PageAsync(shop.Client, $"/quotes/{quote}"), StringComparison.Ordinal);
        Assert.Equal(ReleaseOutcome.Done, await new JobRelease(shop.Database).CancelAsync("LQ-5001", "a reason", "test", Cancel));

        const string Said = "Job LQ-5001 was cancelled and cannot change.";
        var quoted = await PageAsync(shop.Client, $"/quotes/{quote}");
        Assert.Contains(Said, quoted, StringComparison.Ordinal);
        Assert.DoesNotContain("Accept", quoted, StringComparison.Ordinal);
        var drafted = await PageAsync(shop.Client, $"/drafts/{draft}");
        Assert.Contains($"<p id=\"standing\" role=\"status\">{Said}</p>", drafted, StringComparison.Ordinal);
        Assert.DoesNotContain("value=\"quote\"", drafted, StringComparison.Ordinal);
        Assert.DoesNotContain("value=\"take-in\"", drafted, StringComparison.Ordinal);
    }

    private static Task<string> PageAsync(HttpClient client, string address) => client.GetStringAsync(new Uri(address, UriKind.Relative), Cancel);
}
