using System.Net;
using System.Text;
using System.Text.Json;

namespace CutShop.Web.Tests.Api;

public sealed class SheetTakeInTests
{
    private const string Sheet =
        """
        number,customer,due,material,diameter,shrink,round up,one lot
        LQ-9,"Quay, north",2027-03-12,manila,1 1/2 in,12.5%,1/4 in,yes

        line,post,shape,across,height,turn,clear,centres,rise,sag
        A,A1,square,5 1/2 in,42 in,,72 in,,,
        ,A2,square,5 1/2 in,42 in,90 left,,77 1/2 in,-2 in,4 in
        ,A3,square,5 1/2 in,42 in,,,,,
        B,B1,round,200 mm,42 in,,1.83 m,,,
        B,B2,round,200 mm,42 in,,2 m,,,
        B,B3,round,200 mm,42 in,,,,,

        line,row,height,sag,slack,start,finish,between,at,material,diameter
        A,top,36 in,6 in,,stopped,knot,,,,
        A,low,18 in,,3 in,stopped,stopped,,,polypropylene,1 in
        B,rope,30 in,6 in,,wrap 2,wrap 2,wrap 1,B2: wrap 2.5,,
        """;

    private const string SameJob =
        """
        { "number": "LQ-9", "customer": "Quay, north", "due": "2027-03-12", "oneLot": true,
          "rope": { "material": "manila", "diameter": "1 1/2 in" },
          "allowances": { "shrink": "12.5%", "roundUp": "1/4 in" },
          "lines": [
            { "mark": "A",
              "posts": [
                { "mark": "A1", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
                { "mark": "A2", "shape": "square", "across": "5 1/2 in", "height": "42 in", "turn": "90 left" },
                { "mark": "A3", "shape": "square", "across": "5 1/2 in", "height": "42 in" } ],
              "sections": [ { "clear": "72 in" }, { "centres": "77 1/2 in", "rise": "-2 in", "sag": "4 in" } ],
              "rows": [
                { "mark": "top", "height": "36 in", "sag": "6 in", "start": "stopped", "finish": "knot" },
                { "mark": "low", "height": "18 in", "slack": "3 in", "start": "stopped", "finish": "stopped",
                  "rope": { "material": "polypropylene", "diameter": "1 in" } } ] },
            { "mark": "B",
              "posts": [
                { "mark": "B1", "shape": "round", "across": "200 mm", "height": "42 in" },
                { "mark": "B2", "shape": "round", "across": "200 mm", "height": "42 in" },
                { "mark": "B3", "shape": "round", "across": "200 mm", "height": "42 in" } ],
              "sections": [ { "clear": "1.83 m" }, { "clear": "2 m" } ],
              "rows": [ { "mark": "rope", "height": "30 in", "sag": "6 in", "start": "wrap 2", "finish": "wrap 2",
                "between": "wrap 1", "at": { "B2": "wrap 2.5" } } ] } ] }
        """;

    [Theory]
    [InlineData(',', "\n")]
    [InlineData(',', "\r\n")]
    [InlineData(';', "\r\n")]
    public async Task A_sheet_is_the_job_that_its_job_file_is(char separator, string newLine)
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        var sheet = Sheet.Replace("\r\n", "\n", StringComparison.Ordinal).Replace("\n", newLine, StringComparison.Ordinal);
        if (separator != ',')
            sheet = sheet.Replace("Quay, north", "Quay~ north", StringComparison.Ordinal).Replace(',', separator).Replace('~', ',');
        using var answer = await SendAsync(program, sheet);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        var job = JobFileReader.Read(Encoding.UTF8.GetBytes(SameJob)).Job!;
        Assert.Equal(JobFileWriter.Write(job), JobFileWriter.Write(shop.Jobs.Find("LQ-9")!.Takeoff.Job));
        using var asFile = await program.SendJobAsync(Encoding.UTF8.GetBytes(SameJob));
        Assert.Equal("as before", (await asFile.JsonAsync()).TextAt("outcome"));
    }

    [Theory]
    [InlineData("A,A1,square,5 1/2 in,42 in", "A,A1,square,5.5,42 in", 5, 4, "$.lines[0].posts[0].across")]
    [InlineData(",77 1/2 in,-2 in", ",77 1/2 in,-2", 6, 9, "$.lines[0].sections[1].rise")]
    [InlineData("B,B3,round,200 mm,42 in,,,,,", "B,B3,round,200 mm,42 in,,1 m,,,", 10, 7, "$.lines[1]")]
    [InlineData("stopped,knot,,", "stopped,nott,,", 13, 7, "$.lines[0].rows[0].finish")]
    [InlineData("B2: wrap 2.5", "B2: wrap", 15, 9, "$.lines[1].rows[0].at.B2")]
    [InlineData("B2: wrap 2.5", "wrap 2.5", 15, 9, "$")]
    [InlineData("manila,1 1/2 in", "manilla,1 1/2 in", 2, 4, "$.rope.material")]
    [InlineData("2027-03-12", "12.3.2027", 2, 3, "$.due")]
    [InlineData("yes", "perhaps", 2, 8, "$.oneLot")]
    [InlineData("line,row,", "line,row,colour,", 12, 3, "$")]
    [InlineData("B,rope,", "C,rope,", 15, 1, "$")]
    [InlineData("A,A1,square,5 1/2 in,42 in,,72 in", "A,A1,square,5 1/2 in,42 in,,", 5, 7, "$.lines[0].sections[0].clear")]
    public async Task What_is_wrong_is_told_by_line_and_column(string right, string wrong, int line, int column, string path)
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        Assert.Contains(right, Sheet, StringComparison.Ordinal);
        using var answer = await SendAsync(program, Sheet.Replace(right, wrong, StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var places = (await answer.JsonAsync()).GetProperty("problems").EnumerateArray().Select(Place).ToList();
        Assert.Contains((line, column, path), places);
        Assert.Empty(shop.AllJobs());
    }

    [Theory]
    [InlineData("")]
    [InlineData("hello")]
    [InlineData("number\nLQ-1\nLQ-2")]
    [InlineData("number,\"customer\nLQ-1,x")]
    [InlineData("line,post\nA,A1")]
    [InlineData("line,row\nA,top")]
    public async Task A_sheet_that_is_no_job_is_refused_and_never_breaks_the_shop(string sheet)
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        using var answer = await SendAsync(await shop.WithKeyAsync(KeyScope.TakeIn), sheet);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.NotEmpty((await answer.JsonAsync()).GetProperty("problems").EnumerateArray());
    }

    private static (int, int, string?) Place(JsonElement problem) =>
        (problem.GetProperty("line").GetInt32(), problem.GetProperty("column").GetInt32(), problem.TextAt("path"));

    private static Task<HttpResponseMessage> SendAsync(HttpClient program, string sheet) =>
        program.SendJobAsync(Encoding.UTF8.GetBytes(sheet), contentType: "text/csv; charset=utf-8", address: "/api/jobs/csv");
}
