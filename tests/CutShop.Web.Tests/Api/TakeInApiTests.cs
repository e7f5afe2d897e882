using System.Net;
using System.Text;

namespace CutShop.Web.Tests.Api;

public sealed class TakeInApiTests
{
    private const string NorthWalk = "lq-1042-north-walk.json";

    [Fact]
    public async Task A_job_is_taken_in_once_and_sent_again_it_is_as_before()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        using var first = await program.SendJobAsync(await RunningShop.DemoFileAsync(NorthWalk));
        Assert.Equal(HttpStatusCode.Created, first.StatusCode);
        Assert.Equal("/api/jobs/LQ-1042", first.Headers.Location!.OriginalString);
        Assert.Equal("taken in", (await first.JsonAsync()).TextAt("outcome"));
        using var again = await program.SendJobAsync(await RunningShop.DemoFileAsync(NorthWalk));
        Assert.Equal(HttpStatusCode.OK, again.StatusCode);
        Assert.Equal("as before", (await again.JsonAsync()).TextAt("outcome"));
        Assert.Equal("key take-in program", Assert.Single(new HistoryShelf(shop.Database).Of("job", 1)).Who);
    }

    [Fact]
    public async Task Another_job_under_the_same_number_is_a_conflict_and_changes_nothing()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        using (await program.SendJobAsync(await RunningShop.DemoFileAsync(NorthWalk))) { }
        using var other = await program.SendJobAsync(await OtherJobAsync());
        Assert.Equal(HttpStatusCode.Conflict, other.StatusCode);
        var problem = Assert.Single((await other.JsonAsync()).GetProperty("problems").EnumerateArray());
        Assert.Equal(("$.number", "LQ-1042"), (problem.TextAt("path"), problem.TextAt("value")));
        Assert.Equal("Lantern Quay boardwalk, north walk", Assert.Single(shop.AllJobs()).Customer);
    }

    [Fact]
    public async Task The_same_key_with_the_same_body_gives_the_first_answer_again_word_for_word()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        var body = await RunningShop.DemoFileAsync(NorthWalk);
        using var first = await program.SendJobAsync(body, "one");
        using var again = await program.SendJobAsync(body, "one");
        Assert.Equal(HttpStatusCode.Created, again.StatusCode);
        Assert.Equal(first.Headers.Location, again.Headers.Location);
        Assert.Equal(await first.TextAsync(), await again.TextAsync());
        Assert.Equal(1, shop.Database.Read(session => session.Value<long>("SELECT count(*) FROM history WHERE subject = 'job'")));
    }

    [Fact]
    public async Task Of_very_many_problems_the_first_hundred_are_listed_and_all_are_counted()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        var posts = string.Join(',', Enumerable.Repeat("{}", 5000));
        using var answer = await program.SendJobAsync(Encoding.UTF8.GetBytes($$"""{"number":"LQ-9","customer":"Quay","lines":[{"mark":"A","posts":[{{posts}}]}]}"""));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var problem = await answer.JsonAsync();
        Assert.Equal(100, problem.GetProperty("problems").GetArrayLength());
        Assert.Matches("^[0-9]{4,} things are wrong with the job file. The first 100 are listed.$", problem.TextAt("detail"));
        Assert.True((await answer.TextAsync()).Length < 100_000);
    }

    [Theory]
    [InlineData("/api/jobs", "application/json", "gzip")]
    [InlineData("/api/jobs/csv", "text/csv", "br")]
    public async Task A_packed_body_is_refused_and_one_as_it_is_is_not(string address, string type, string encoding)
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        foreach (var (sent, status) in new[] { (encoding, HttpStatusCode.UnsupportedMediaType), ("identity", HttpStatusCode.BadRequest) })
        {
            using var body = new ByteArrayContent("{}"u8.ToArray()) { Headers = { ContentType = new(type), ContentEncoding = { sent } } };
            using var answer = await program.PostAsync(new Uri(address, UriKind.Relative), body, TestContext.Current.CancellationToken);
            Assert.Equal(status, answer.StatusCode);
            if (status == HttpStatusCode.UnsupportedMediaType)
                Assert.Equal("Content-Encoding", Assert.Single((await answer.JsonAsync()).GetProperty("problems").EnumerateArray()).TextAt("path"));
        }
    }

    [Fact]
    public async Task The_same_key_with_another_body_is_refused()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        using (await program.SendJobAsync(await RunningShop.DemoFileAsync(NorthWalk), "one")) { }
        using var other = await program.SendJobAsync(await RunningShop.DemoFileAsync("lq-1043-beach-ramp.json"), "one");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, other.StatusCode);
        Assert.Equal("Idempotency-Key", Assert.Single((await other.JsonAsync()).GetProperty("problems").EnumerateArray()).TextAt("path"));
        Assert.Null(shop.Jobs.Find("LQ-1043"));
    }

    [Fact]
    public async Task One_programs_keys_are_not_anothers()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        using var first = await (await shop.WithKeyAsync(KeyScope.TakeIn)).SendJobAsync(await RunningShop.DemoFileAsync(NorthWalk), "one");
        using var second = await (await shop.WithKeyAsync(KeyScope.TakeIn)).SendJobAsync(await RunningShop.DemoFileAsync("lq-1043-beach-ramp.json"), "one");
        Assert.Equal(HttpStatusCode.Created, second.StatusCode);
    }

    [Fact]
    public async Task A_refused_request_may_come_again_under_its_key_once_it_is_put_right()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        using var wrong = await program.SendJobAsync("{}"u8.ToArray(), "one");
        Assert.Equal(HttpStatusCode.BadRequest, wrong.StatusCode);
        using var right = await program.SendJobAsync(await RunningShop.DemoFileAsync(NorthWalk), "one");
        Assert.Equal(HttpStatusCode.Created, right.StatusCode);
    }

    [Fact]
    public async Task Twelve_at_one_moment_under_one_key_are_one_job_and_one_answer()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        var body = await RunningShop.DemoFileAsync(NorthWalk);
        var answers = await Task.WhenAll(Enumerable.Range(0, 12).Select(_ => program.SendJobAsync(body, "one")));
        Assert.All(answers, answer => Assert.Equal(HttpStatusCode.Created, answer.StatusCode));
        Assert.Single(shop.AllJobs());
    }

    [Fact]
    public async Task Every_problem_of_a_job_file_is_told_as_the_command_line_tells_it()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        var body = Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(await RunningShop.DemoFileAsync(NorthWalk))
            .Replace("\"5 1/2 in\"", "5.5", StringComparison.Ordinal).Replace("\"due\"", "\"dew\"", StringComparison.Ordinal));
        using var answer = await program.SendJobAsync(body);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        var told = (await answer.JsonAsync()).GetProperty("problems").EnumerateArray()
            .Select(problem => (problem.TextAt("path")!, problem.TextAt("value")!, problem.TextAt("text")!)).ToList();
        Assert.True(told.Count > 2);
        Assert.Equal(JobFileReader.Read(body).Problems.Select(problem => (problem.Path, problem.Value, problem.Text)), told);
    }

    [Theory]
    [InlineData("text/plain")]
    [InlineData("text/csv")]
    [InlineData("application/x-www-form-urlencoded")]
    public async Task Another_content_type_is_refused(string contentType)
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        using var answer = await program.SendJobAsync(await RunningShop.DemoFileAsync(NorthWalk), contentType: contentType);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
    }

    [Fact]
    public async Task A_body_above_the_largest_file_is_refused_and_one_just_under_it_is_read()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        var body = new byte[JobFileReader.LargestFile + 1];
        Array.Fill(body, (byte)' ');
        // The server may close the connection on a body that it will not read, so only the length is announced.
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri("/api/jobs", UriKind.Relative)) { Content = new ByteArrayContent(body) };
        request.Content.Headers.ContentType = new("application/json");
        request.Headers.ExpectContinue = true;
        using var large = await program.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, large.StatusCode);
        (await RunningShop.DemoFileAsync(NorthWalk)).CopyTo(body, 0);
        using var largest = await program.SendJobAsync(body[..^1]);
        Assert.Equal(HttpStatusCode.Created, largest.StatusCode);
    }

    [Fact]
    public async Task A_script_in_a_customers_name_is_text_on_the_page()
    {
        await using var shop = await RunningShop.StartAsync();
        var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        var body = Encoding.UTF8.GetString(await RunningShop.DemoFileAsync(NorthWalk)).Replace("Lantern Quay boardwalk", "<script>alert(1)</script>", StringComparison.Ordinal);
        using (await program.SendJobAsync(Encoding.UTF8.GetBytes(body))) { }
        foreach (var address in new[] { "/", "/jobs/LQ-1042", "/jobs/LQ-1042/summary", "/jobs/LQ-1042/cut-tickets" })
        {
            var page = await shop.Client.GetStringAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
            Assert.DoesNotContain("<script>alert", page, StringComparison.OrdinalIgnoreCase);
        }
        using var list = await shop.Client.AskAsync("/");
        Assert.Contains("<script>alert(1)</script>", await list.TextAsync(), StringComparison.Ordinal);
    }

    private static async Task<byte[]> OtherJobAsync() => Encoding.UTF8.GetBytes(
        Encoding.UTF8.GetString(await RunningShop.DemoFileAsync(NorthWalk)).Replace("Lantern Quay boardwalk", "Somebody else", StringComparison.Ordinal));
}
