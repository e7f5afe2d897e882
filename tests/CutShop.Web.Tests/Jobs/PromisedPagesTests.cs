using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using CutShop.Testing.Rendering;
using CutShop.Testing.Trust;
using CutShop.Web.Tests.Benches;
using CutShop.Web.Tests.Orders;

namespace CutShop.Web.Tests.Jobs;

/// <summary>Pages and printed tickets show what was promised, also after a change took it out, and never a part that is damaged.</summary>
public sealed class PromisedPagesTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_piece_whose_row_is_taken_out_while_it_is_at_the_bench_shows_what_it_was()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.PlanDemoAsync();
        var low = job.Pieces.First(piece => piece.Run == "A-low-1");
        await ChangeAsync(shop, form => WithoutRow(form, 2));
        var page = await PageAsync(shop, $"/cut/{low.Code.Plain}");
        Assert.Contains("A-low-1", page, StringComparison.Ordinal);
        Assert.Contains(LengthText.FeetInches(low.Cut), WebUtility.HtmlDecode(page).Replace('\u00a0', ' '), StringComparison.Ordinal);
        Assert.Contains("This piece is no longer wanted. Do not cut it.", page, StringComparison.Ordinal);
        using var ticket = await shop.Client.GetAsync(new Uri($"/cut/{low.Code.Plain}/ticket.pdf", UriKind.Relative), Cancel);
        Assert.Equal((HttpStatusCode.OK, "application/pdf"), (ticket.StatusCode, ticket.Content.Headers.ContentType!.MediaType));
        var words = Poppler.WordsOf(await ticket.Content.ReadAsByteArrayAsync(Cancel));
        Assert.Contains("CANCELLED", words, StringComparison.Ordinal);
        Assert.Contains("A-low-1", words, StringComparison.Ordinal);

        // The accepted plan still lists it, struck out, on the page and on paper.
        var plan = await PageAsync(shop, $"/plans/{low.Place!.Plan}");
        Assert.Contains("CANCELLED since: do not cut", plan, StringComparison.Ordinal);
        Assert.Contains($"<s>{low.Code}</s>", plan, StringComparison.Ordinal);
        using var paper = await shop.Client.GetAsync(new Uri($"/plans/{low.Place.Plan}.pdf", UriKind.Relative), Cancel);
        Assert.Contains("CANCELLED since", Poppler.WordsOf(await paper.Content.ReadAsByteArrayAsync(Cancel)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_post_that_is_taken_out_shows_its_ticket_and_the_post_that_has_its_mark_leads_to_it()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        await ChangeAsync(shop, form => DraftEdits.RemovePost(form, 0, 8));
        var gone = await PageAsync(shop, "/drill/LQ-1042/A9");
        Assert.Contains("This post is no longer wanted in this form. Do not drill it from this ticket.", gone, StringComparison.Ordinal);
        Assert.Contains("toward A8", gone, StringComparison.Ordinal);
        // A8 ends the line now, so it has a new ticket and its old one beside it.
        var last = await PageAsync(shop, "/drill/LQ-1042/A8");
        Assert.Contains("An earlier ticket for this post is cancelled.", last, StringComparison.Ordinal);
        using var pdf = await shop.Client.GetAsync(new Uri("/drill/LQ-1042/A9/ticket.pdf", UriKind.Relative), Cancel);
        Assert.Contains("CANCELLED", Poppler.WordsOf(await pdf.Content.ReadAsByteArrayAsync(Cancel)), StringComparison.Ordinal);
        using var never = await shop.Client.GetAsync(new Uri("/drill/LQ-1042/A77", UriKind.Relative), Cancel);
        Assert.Equal(HttpStatusCode.NotFound, never.StatusCode);
    }

    [Theory]
    [InlineData("UPDATE piece_parts SET part = replace(part, '\"cut_nm\":', '\"cut_nm\":1')")]
    [InlineData("UPDATE piece_parts SET part = substr(part, 1, 100)")]
    [InlineData("DELETE FROM piece_parts")]
    public async Task A_damaged_part_of_a_piece_answers_503_in_words_and_never_a_figure(string sql)
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        await shop.Database.WriteAsync(session => session.Execute(sql), Cancel);
        var code = job.Pieces[0].Code.Plain;
        foreach (var address in (string[])[$"/cut/{code}", $"/p/{code}", $"/p/{code}/line", "/jobs/LQ-1042", "/jobs/LQ-1042/cut-tickets.pdf", "/jobs/LQ-1042/labels.pdf"])
        {
            using var answer = await shop.Client.GetAsync(new Uri(address, UriKind.Relative), Cancel);
            var page = await answer.Content.ReadAsStringAsync(Cancel);
            Assert.Equal((address, HttpStatusCode.ServiceUnavailable), (address, answer.StatusCode));
            Assert.Contains("job LQ-1042, piece A-top-1", page, StringComparison.Ordinal);
            Assert.Contains("cutshop check", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_damaged_part_of_a_post_answers_503_and_other_posts_answer()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        await shop.Database.WriteAsync(session => session.Execute("UPDATE post_parts SET part = replace(part, 'depth_nm\":69', 'depth_nm\":79') WHERE mark = 'A1'"), Cancel);
        using var answer = await shop.Client.GetAsync(new Uri("/drill/LQ-1042/A1", UriKind.Relative), Cancel);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        Assert.Contains("post A1", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        await PageAsync(shop, "/drill/LQ-1042/A2");
    }

    [Fact]
    public async Task The_page_of_a_change_says_what_differs_and_what_can_be_saved()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        await shop.Database.WriteAsync(session => session.Execute("UPDATE drill_tickets SET state = 'drilled' WHERE post_id IN (SELECT id FROM posts WHERE mark IN ('A2', 'A9'))"), Cancel);
        var draft = await DraftAsync(shop, form => DraftEdits.AddPost(WithoutRow(form, 2), 0, 8));
        Assert.DoesNotContain("Old price", await PageAsync(shop, $"/drafts/{draft}/change"), StringComparison.Ordinal);
        await shop.KeepPricesAsync();
        var page = await PageAsync(shop, $"/drafts/{draft}/change");
        var prices = Regex.Match(page, @"Old price</th><td[^>]*>\$(?<old>[0-9,.]+)<.*New price</th><td[^>]*>\$(?<new>[0-9,.]+)<.*Difference</th><td[^>]*><strong>(?<sign>[+−])\$(?<apart>[0-9,.]+)<", RegexOptions.Singleline | RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1));
        Assert.True(prices.Success, page);
        var (old, becomes, apart) = (Amount("old"), Amount("new"), Amount("apart"));
        Assert.Equal(becomes - old, prices.Groups["sign"].Value == "+" ? apart : -apart);
        Assert.NotEqual(0, apart);
        Assert.Contains("Row low: the old hole stays and takes no rope.", page, StringComparison.Ordinal);
        // The end post of a stopped row becomes a line post: half of 5 1/2 in and 1/8 in more.
        Assert.Contains("Row middle, toward A8: drill 1/8", page, StringComparison.Ordinal);
        Assert.Contains("Row middle: drill on from the face toward A10", page, StringComparison.Ordinal);
        Assert.Contains("Bore, row low: stopped → none", page, StringComparison.Ordinal);

        decimal Amount(string name) => decimal.Parse(prices.Groups[name].Value, NumberStyles.Number, CultureInfo.InvariantCulture);
    }

    [Fact]
    public async Task Jobs_that_todays_rules_make_different_are_listed_and_offered_as_a_change()
    {
        await using var shop = await RunningShop.StartAsync();
        await shop.TakeInDemoAsync(BenchShop.NorthWalk);
        Assert.Contains("No open job would be different under today's rules.", await PageAsync(shop, "/jobs/by-rules"), StringComparison.Ordinal);
        await OtherRules.MakeAsync(shop.Database, "LQ-1042", Cancel);
        Assert.Contains("pieces 9, posts", await PageAsync(shop, "/jobs/by-rules"), StringComparison.Ordinal);
        const string Address = "/jobs/LQ-1042/by-rules";
        Assert.Contains("Cut length: ", await PageAsync(shop, Address), StringComparison.Ordinal);
        var token = new JobChanging(shop.Database, new ShopTablesShelf(shop.Database, ShopTables.Standard)).CompareWithRules("LQ-1042")!.Token;
        using var answer = await shop.Client.SendFormAsync(Address, ("token", token));
        Assert.Equal("/jobs/LQ-1042", answer.RequestMessage!.RequestUri!.AbsolutePath);
        Assert.Contains("No open job would be different under today's rules.", await PageAsync(shop, "/jobs/by-rules"), StringComparison.Ordinal);
    }

    private static async Task<string> PageAsync(RunningShop shop, string address)
    {
        using var answer = await shop.Client.GetAsync(new Uri(address, UriKind.Relative), Cancel);
        Assert.Equal((address, HttpStatusCode.OK), (address, answer.StatusCode));
        return WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));
    }

    private static async Task<long> DraftAsync(RunningShop shop, Func<DraftForm, DraftForm> change)
    {
        var form = change(DraftOf.Job(shop.Jobs.AsOrdered("LQ-1042")!));
        return await new DraftShelf(shop.Database).StartAsync(form with { Changes = form.Number }, "test", "the change", Cancel);
    }

    private static async Task ChangeAsync(RunningShop shop, Func<DraftForm, DraftForm> change)
    {
        var draft = await DraftAsync(shop, change);
        var tables = new ShopTablesShelf(shop.Database, ShopTables.Standard);
        var next = DraftReading.Of(new DraftShelf(shop.Database).Find(draft)!.Form, ShopTables.Standard).Takeoff!.Job;
        Assert.Null((await new DraftIntake(shop.Database, tables).AcceptChangeAsync(draft, new JobChanging(shop.Database, tables).Compare(next)!.Token, "test", cancel: Cancel)).Problem);
    }

    private static DraftForm WithoutRow(DraftForm form, int row)
    {
        var line = form.Lines[0];
        return form with { Lines = [line with { Rows = [.. line.Rows.Where((_, i) => i != row)] }] };
    }
}
