using System.Net;
using System.Text.Json;
using CutShop.Testing.Stores;
using Microsoft.Extensions.Time.Testing;

namespace CutShop.Web.Tests.Api;

public sealed class NewsApiTests
{
    [Fact]
    public async Task A_job_is_told_with_its_file_which_reads_back_as_the_same_job()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var stored = await shop.TakeInDemoAsync("lq-1043-beach-ramp.json");
        var program = await shop.WithKeyAsync(KeyScope.Read);
        var told = await program.JsonAtAsync("/api/jobs/LQ-1043");
        Assert.Equal(stored.Pieces.Count, told.GetProperty("job").GetProperty("pieces").GetInt32());
        var file = JobFileReader.Read(System.Text.Encoding.UTF8.GetBytes(told.GetProperty("file").GetRawText()));
        Assert.Equal(JobFileWriter.Write(stored.Takeoff.Job), JobFileWriter.Write(file.Job!));
    }

    [Fact]
    public async Task The_takeoff_is_the_one_that_the_command_line_prints()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var stored = await shop.TakeInDemoAsync("lq-1042-north-walk.json");
        using var printed = new MemoryStream();
        TakeoffJson.Write(stored.Takeoff, printed);
        using var answer = await (await shop.WithKeyAsync(KeyScope.Read)).AskAsync("/api/jobs/LQ-1042/takeoff");
        Assert.Equal("application/json", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal(printed.ToArray(), await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("/api/jobs/none")]
    [InlineData("/api/jobs/none/takeoff")]
    [InlineData("/api/jobs/none/tickets")]
    [InlineData("/api/jobs/none/labels.pdf")]
    [InlineData("/api/jobs/none/pieces.csv")]
    [InlineData("/api/nothing")]
    public async Task What_is_not_there_is_a_problem_with_404(string address)
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        using var answer = await (await shop.WithKeyAsync(KeyScope.Read)).AskAsync(address);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal(404, (await answer.JsonAsync()).GetProperty("status").GetInt32());
    }

    [Fact]
    public async Task A_reader_that_keeps_its_cursor_gets_every_change_once_and_in_order()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.Read);
        foreach (var file in new[] { "lq-1042-north-walk.json", "lq-1043-beach-ramp.json", "lq-1044-lamp-pier.json" })
            await shop.TakeInDemoAsync(file);
        var told = new List<string>();
        for (var (next, more) = ("0", true); more;)
        {
            var page = await program.JsonAtAsync($"/api/changes?since={next}&most=2");
            (next, more) = (page.GetProperty("next").GetString()!, page.GetProperty("more").GetBoolean());
            told.AddRange(page.GetProperty("changes").EnumerateArray().Select(change => change.TextAt("job")!));
        }
        Assert.Equal(["LQ-1042", "LQ-1043", "LQ-1044"], told);
    }

    [FileOnlyFact]
    public async Task After_a_restore_a_follower_is_told_to_start_again_and_then_misses_nothing()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.Read);
        await shop.TakeInDemoAsync("lq-1042-north-walk.json");
        var backups = new ShopBackups(shop.Database.Path, ShopFolder.BackupsIn(shop.Database.Folder), new FakeTimeProvider(DateTimeOffset.UtcNow.AddDays(-1)));
        var backup = backups.Make(keep: null).File.Path;
        await shop.TakeInDemoAsync("lq-1043-beach-ramp.json");
        foreach (var address in new[] { "/api/changes", "/api/jobs" })
        {
            var before = (await program.JsonAtAsync(address)).TextAt("next")!;
            Assert.True(new ShopRestore(shop.Database.Folder, TimeProvider.System).Restore(backup, force: false).IsGood);
            await shop.TakeInDemoAsync("lq-1044-lamp-pier.json");
            // Of before, of before there were epochs, and of a made-up epoch.
            foreach (var since in new[] { before, before.Split('-')[1], "000000000000-1" })
            {
                using var gone = await program.AskAsync($"{address}?since={since}");
                Assert.Equal(HttpStatusCode.Gone, gone.StatusCode);
                Assert.Contains("since=0", (await gone.JsonAsync()).TextAt("detail"), StringComparison.Ordinal);
            }
            var again = await program.JsonAtAsync($"{address}?since=0");
            var list = again.GetProperty(address == "/api/jobs" ? "jobs" : "changes").EnumerateArray().Select(line => line.TextAt(address == "/api/jobs" ? "number" : "job"));
            Assert.Equal(["LQ-1042", "LQ-1044"], list);
            Assert.Empty((await program.JsonAtAsync($"/api/changes?since={again.TextAt("next")}")).GetProperty("changes").EnumerateArray());
        }
    }

    [Fact]
    public async Task People_tablets_and_keys_are_not_told_of()
    {
        await using var shop = await RunningShop.StartAsync();
        await People.Bench.EnrolAsync(shop);
        var page = await (await shop.WithKeyAsync(KeyScope.Read)).JsonAtAsync("/api/changes");
        Assert.Empty(page.GetProperty("changes").EnumerateArray());
        Assert.True(shop.Database.Read(session => session.Value<long>("SELECT count(*) FROM history")) > 2);
    }

    [Fact]
    public async Task Jobs_since_a_cursor_are_those_taken_in_after_it()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.Read);
        await shop.TakeInDemoAsync("lq-1042-north-walk.json");
        var first = await program.JsonAtAsync("/api/jobs");
        await shop.TakeInDemoAsync("lq-1044-lamp-pier.json");
        var second = await program.JsonAtAsync($"/api/jobs?since={first.GetProperty("next").GetString()}");
        Assert.Equal(["LQ-1042"], Numbers(first));
        Assert.Equal(["LQ-1044"], Numbers(second));
        Assert.Empty(Numbers(await program.JsonAtAsync($"/api/jobs?since={second.GetProperty("next").GetString()}")));
    }

    [Theory]
    [InlineData("since=-1", "since")]
    [InlineData("since=x", "since")]
    [InlineData("since=3f9a0c1b2d4e-", "since")]
    [InlineData("since=3f9a0c1b2d4e-1-2", "since")]
    [InlineData("most=0", "most")]
    [InlineData("most=1001", "most")]
    public async Task A_cursor_or_count_that_makes_no_sense_is_told_by_name(string query, string path)
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.Read);
        foreach (var address in new[] { "/api/jobs", "/api/changes" })
        {
            using var answer = await program.AskAsync($"{address}?{query}");
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            Assert.Equal(path, Assert.Single((await answer.JsonAsync()).GetProperty("problems").EnumerateArray()).TextAt("path"));
        }
    }

    [Theory]
    [InlineData("/api/jobs/LQ-1042/tickets", "application/pdf", true)]
    [InlineData("/api/jobs/LQ-1042/tickets", "application/json", false)]
    [InlineData("/api/jobs/LQ-1042/tickets", "application/json;q=0.5, application/pdf", true)]
    [InlineData("/api/jobs/LQ-1042/tickets", "*/*", false)]
    [InlineData("/api/jobs/LQ-1042/tickets.pdf", "*/*", true)]
    [InlineData("/api/jobs/LQ-1042/labels", "application/pdf", true)]
    [InlineData("/api/jobs/LQ-1042/labels", "application/json", false)]
    [InlineData("/api/jobs/LQ-1042/labels.pdf", "application/json", true)]
    public async Task Tickets_and_labels_come_as_json_or_as_pdf(string address, string accept, bool isPdf)
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        await shop.TakeInDemoAsync("lq-1042-north-walk.json");
        var program = await shop.WithKeyAsync(KeyScope.Read);
        program.DefaultRequestHeaders.Add("Accept", accept);
        using var answer = await program.AskAsync(address);
        var bytes = await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);
        Assert.Equal(isPdf ? "application/pdf" : "application/json", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal(isPdf, bytes.AsSpan().StartsWith("%PDF-"u8));
    }

    [Fact]
    public async Task Tickets_tell_each_piece_and_each_post_with_something_to_bore()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var stored = await shop.TakeInDemoAsync("lq-1042-north-walk.json");
        var tickets = await (await shop.WithKeyAsync(KeyScope.Read)).JsonAtAsync("/api/jobs/LQ-1042/tickets");
        Assert.Equal(stored.Codes.Select(code => code.ToString()), tickets.GetProperty("cut").EnumerateArray().Select(ticket => ticket.TextAt("code")));
        Assert.Equal(
            stored.Takeoff.Bores.Select(bore => bore.Post.Mark).Distinct().Order(StringComparer.Ordinal),
            tickets.GetProperty("drill").EnumerateArray().Select(ticket => ticket.TextAt("post")).Order(StringComparer.Ordinal));
    }

    private static IEnumerable<string?> Numbers(JsonElement page) => page.GetProperty("jobs").EnumerateArray().Select(job => job.TextAt("number"));
}
