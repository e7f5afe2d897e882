using System.Globalization;
using System.Text;
using CsvHelper;

namespace CutShop.Web.Tests.Api;

public sealed class TablesApiTests
{
    [Fact]
    public async Task Pieces_bores_and_screws_read_back_from_their_tables_as_the_takeoff_has_them()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var job = await shop.TakeInDemoAsync("lq-1042-north-walk.json");
        var program = await shop.WithKeyAsync(KeyScope.Read);
        var pieces = await RowsAsync(program, "/api/jobs/LQ-1042/pieces.csv");
        Assert.Equal(job.Takeoff.Pieces.Select(piece => (piece.Run, Figure(piece.Cut), LengthText.FeetInches(piece.Cut))), pieces.Select(row => (row["run"], row["cut in"], row["cut"])));
        Assert.Equal(job.Codes.Select(code => code.ToString()), pieces.Select(row => row["code"]));
        var bores = await RowsAsync(program, "/api/jobs/LQ-1042/bores.csv");
        Assert.Equal(
            job.Takeoff.Bores.SelectMany(bore => bore.Operations.Select((operation, i) => (bore.Run, bore.Post.Mark, $"{i + 1}", Figure(operation.Depth)))),
            bores.Select(row => (row["run"], row["post"], row["drilling"], row["depth in"])));
        var fixings = await RowsAsync(program, "/api/jobs/LQ-1042/fixings.csv");
        Assert.Equal(
            job.Takeoff.Fixings.Select(fixing => (fixing.Run, fixing.Post.Mark, $"{fixing.Count}", Figure(fixing.Length))),
            fixings.Select(row => (row["run"], row["post"], row["count"], row["length in"])));
    }

    // RFC 4180: lines end in CR LF (2.1), the first names the columns (2.3), all have as many fields (2.4), a field with
    // a comma, a quote or a line break is in quotes (2.6) and a quote in it is doubled (2.7).
    [Fact]
    public async Task The_tables_are_quoted_as_the_standard_says()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        await TakeInAsync(program, "A \\\"B\\\", C");
        var text = await program.GetStringAsync(new Uri("/api/jobs/LQ-1042/pieces.csv", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Contains(",\"A \"\"B\"\", C\",", text, StringComparison.Ordinal);
        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("\n", text.Replace("\r\n", "", StringComparison.Ordinal), StringComparison.Ordinal);
        var counts = ByHand(text).Select(fields => fields.Count).Distinct().ToList();
        Assert.Single(counts);
        Assert.Contains(ByHand(text), fields => fields.Contains("A \"B\", C"));
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1")]
    [InlineData("-1")]
    [InlineData("@SUM(A1)")]
    public async Task A_mark_that_a_spreadsheet_would_take_for_a_formula_is_written_as_text(string mark)
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        await TakeInAsync(program, mark);
        foreach (var table in new[] { "pieces", "bores", "fixings" })
        {
            var fields = ByHand(await program.GetStringAsync(new Uri($"/api/jobs/LQ-1042/{table}.csv", UriKind.Relative), TestContext.Current.CancellationToken)).SelectMany(row => row).ToList();
            Assert.Contains("'" + mark, fields);
            Assert.DoesNotContain(fields, field => field.Length > 0 && "=+@".Contains(field[0], StringComparison.Ordinal));
            // A rake downhill is a number and stays one.
            Assert.All(fields.Where(field => field.StartsWith('-')), field => Assert.True(double.TryParse(field, CultureInfo.InvariantCulture, out _)));
        }
    }

    [Fact]
    public async Task A_rake_downhill_stays_a_number()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var job = await shop.TakeInDemoAsync("lq-1043-beach-ramp.json");
        var program = await shop.WithKeyAsync(KeyScope.Read);
        var rows = await RowsAsync(program, "/api/jobs/LQ-1043/bores.csv");
        Assert.Contains(job.Takeoff.Bores, bore => bore.RakeDegrees != 0);
        Assert.Equal(
            job.Takeoff.Bores.SelectMany(bore => bore.Operations.Select(_ => bore.RakeDegrees.ToString("F6", CultureInfo.InvariantCulture))),
            rows.Select(row => row["rake degrees"]));
    }

    private static string Figure(Length length) => length.Inches.ToString("F6", CultureInfo.InvariantCulture);

    private static async Task TakeInAsync(HttpClient program, string mark)
    {
        var body = Encoding.UTF8.GetString(await RunningShop.DemoFileAsync("lq-1042-north-walk.json")).Replace("\"A1\"", $"\"{mark}\"", StringComparison.Ordinal);
        using var answer = await program.SendJobAsync(Encoding.UTF8.GetBytes(body));
        Assert.Equal(System.Net.HttpStatusCode.Created, answer.StatusCode);
    }

    private static async Task<List<Dictionary<string, string>>> RowsAsync(HttpClient program, string address)
    {
        using var answer = await program.AskAsync(address);
        Assert.Equal("text/csv", answer.Content.Headers.ContentType!.MediaType);
        using var csv = CsvReader.Create(await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken), new CsvReaderOptions { MalformedData = CsvMalformedDataHandling.Throw, FieldCountMismatch = CsvFieldCountHandling.Throw });
        var rows = new List<Dictionary<string, string>>();
        while (csv.Read())
            rows.Add(csv.Headers.ToArray().Select((name, i) => (name, Value: csv.GetString(i))).ToDictionary(pair => pair.name, pair => pair.Value));
        Assert.NotEmpty(rows);
        return rows;
    }

    /// <summary>Reads the grammar of RFC 4180, section 2, letter by letter, apart from the library that wrote it.</summary>
    private static List<List<string>> ByHand(string text)
    {
        var rows = new List<List<string>>();
        var (row, field, isQuoted) = (new List<string>(), new StringBuilder(), false);
        for (var i = 0; i < text.Length; i++)
        {
            if (isQuoted && text[i] == '"' && i + 1 < text.Length && text[i + 1] == '"')
                field.Append(text[i++]);
            else if (text[i] == '"')
                isQuoted = !isQuoted;
            else if (isQuoted || text[i] is not (',' or '\r'))
                field.Append(text[i]);
            else
            {
                row.Add(field.ToString());
                field.Clear();
                if (text[i] == '\r')
                {
                    Assert.Equal('\n', text[++i]);
                    rows.Add(row);
                    row = [];
                }
            }
        }
        Assert.False(isQuoted);
        return rows;
    }
}
