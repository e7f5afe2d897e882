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

    /// <summary>A sheet with what real sites have: a curve, a ring, a gate, holes that are there, and rope that shrinks.</summary>
    private const string RealSheet =
        """
        number,material,diameter,construction,colour,datum,bore,boring,longest,loses,manner
        LQ-10,manila,1 1/2 in,three-strand,tan,foot,level,site,600 ft,12.5%,hung-long

        line,closed,drop,boring,radius,chord,turns
        C,,31 in,shop,240 in,72 in,left
        R,yes,,,,,

        line,post,shape,across,girth,height,turn,corner,buried,boring,holes,clear,centres,clear at,drop
        A,A1,square,5 1/2 in,,42 in,,,30 in,,top: 1 13/16 in at 35 1/2 in raked; low: 1 3/4 in,72 in,,top: 71 1/2 in; low: 72 1/4 in,32 in
        ,A2,square,5 1/2 in,,42 in,40 left,through,30 in,shop,,72 in,,,
        ,A3,square,5 1/2 in,,42 in,,,30 in,,,,,,
        C,C1,round,,26 in,42 in,,,30 in,,,,,,
        ,C2,round,,26 in,42 in,,,30 in,,,,,,
        ,C3,round,,26 in,42 in,,,30 in,,,,,,
        R,R1,round,8 in,,42 in,120 left,,30 in,,,,70 in,,
        ,R2,round,8 in,,42 in,120 left,,30 in,,,,70 in,,
        ,R3,round,8 in,,42 in,120 left,,30 in,,,,70 in,,
        G,G1,square,5 1/2 in,,42 in,,,30 in,,,48 in,,,
        ,G2,square,5 1/2 in,,42 in,,,30 in,,,,,,

        line,row,height,heights,sag,start,finish,between,bore,unbroken,material,diameter,start pin,start length,start reach,start tucks,finish pin,finish length,finish reach,finish thimble
        A,top,36 in,A2: 35 in; A3: 34 1/2 in,5 in,stopped,stopped,bored,raked,yes,,,,,,,,,,
        ,low,18 in,,5 in,stopped,stopped,bored,,,,,,,,,,,,
        C,top,36 in,,4 in,stopped,stopped,beside,,,,,,,,,,,,
        R,top,36 in,,5 in,wrap 1,wrap 1,wrap 1,,,,,,,,,,,,
        G,top,36 in,,3 in,eye,,,,,nylon,1 in,1/2 in,4 in,1 1/2 in,5,5/8 in,4 in,1 1/2 in,3/4 in
        """;

    private const string SameRealJob =
        """
        { "number": "LQ-10", "datum": "foot", "bore": "level", "boring": "site", "longest": "600 ft",
          "rope": { "material": "manila", "diameter": "1 1/2 in", "construction": "three-strand", "colour": "tan" },
          "allowances": { "wetting": { "loses": "12.5%", "manner": "hung-long" } },
          "lines": [
            { "mark": "A",
              "posts": [
                { "mark": "A1", "shape": "square", "across": "5 1/2 in", "height": "42 in", "buried": "30 in",
                  "holes": { "top": { "across": "1 13/16 in", "height": "35 1/2 in", "bore": "raked" }, "low": { "across": "1 3/4 in" } } },
                { "mark": "A2", "shape": "square", "across": "5 1/2 in", "height": "42 in", "buried": "30 in", "turn": "40 left", "corner": "through", "boring": "shop" },
                { "mark": "A3", "shape": "square", "across": "5 1/2 in", "height": "42 in", "buried": "30 in" } ],
              "sections": [ { "clear": "72 in", "clearAt": { "top": "71 1/2 in", "low": "72 1/4 in" }, "drop": "32 in" }, { "clear": "72 in" } ],
              "rows": [
                { "mark": "top", "height": "36 in", "heights": { "A2": "35 in", "A3": "34 1/2 in" }, "sag": "5 in", "start": "stopped", "finish": "stopped", "bore": "raked", "unbroken": true },
                { "mark": "low", "height": "18 in", "sag": "5 in", "start": "stopped", "finish": "stopped" } ] },
            { "mark": "C", "drop": "31 in", "boring": "shop", "curve": { "radius": "240 in", "chord": "72 in", "turns": "left" },
              "posts": [
                { "mark": "C1", "shape": "round", "girth": "26 in", "height": "42 in", "buried": "30 in" },
                { "mark": "C2", "shape": "round", "girth": "26 in", "height": "42 in", "buried": "30 in" },
                { "mark": "C3", "shape": "round", "girth": "26 in", "height": "42 in", "buried": "30 in" } ],
              "rows": [ { "mark": "top", "height": "36 in", "sag": "4 in", "start": "stopped", "finish": "stopped", "between": "beside" } ] },
            { "mark": "R", "closed": true,
              "posts": [
                { "mark": "R1", "shape": "round", "across": "8 in", "height": "42 in", "buried": "30 in", "turn": "120 left" },
                { "mark": "R2", "shape": "round", "across": "8 in", "height": "42 in", "buried": "30 in", "turn": "120 left" },
                { "mark": "R3", "shape": "round", "across": "8 in", "height": "42 in", "buried": "30 in", "turn": "120 left" } ],
              "sections": [ { "centres": "70 in" }, { "centres": "70 in" }, { "centres": "70 in" } ],
              "rows": [ { "mark": "top", "height": "36 in", "sag": "5 in", "start": "wrap 1", "finish": "wrap 1", "between": "wrap 1" } ] },
            { "mark": "G",
              "posts": [
                { "mark": "G1", "shape": "square", "across": "5 1/2 in", "height": "42 in", "buried": "30 in" },
                { "mark": "G2", "shape": "square", "across": "5 1/2 in", "height": "42 in", "buried": "30 in" } ],
              "sections": [ { "clear": "48 in" } ],
              "rows": [ { "mark": "top", "height": "36 in", "sag": "3 in", "rope": { "material": "nylon", "diameter": "1 in" },
                "start": { "eye": { "pin": "1/2 in", "length": "4 in", "reach": "1 1/2 in", "tucks": 5 } },
                "finish": { "eye": { "pin": "5/8 in", "length": "4 in", "reach": "1 1/2 in", "thimble": "3/4 in" } } } ] } ] }
        """;

    [Fact]
    public async Task A_sheet_says_all_that_a_job_file_says()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        using var answer = await SendAsync(await shop.WithKeyAsync(KeyScope.TakeIn), RealSheet);
        Assert.Equal((HttpStatusCode.Created, ""), (answer.StatusCode, answer.IsSuccessStatusCode ? "" : await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)));
        var job = JobFileReader.Read(Encoding.UTF8.GetBytes(SameRealJob)).Job!;
        Assert.Equal(JobFileWriter.Write(job), JobFileWriter.Write(shop.Jobs.AsOrdered("LQ-10")!));
    }

    [Theory]
    [InlineData("12.5%", "12.5", 2, 10, "$.allowances.wetting.loses")]
    [InlineData("240 in,72 in,left", "240 in,72 in,up", 5, 7, "$.lines[1].curve.turns")]
    [InlineData("R,yes,", "R,perhaps,", 6, 2, "$.lines[2].closed")]
    [InlineData("R,yes,", "C,yes,", 6, 1, "$")]
    [InlineData("low: 1 3/4 in", "tip: 1 3/4 in", 9, 11, "$.lines[0].posts[0].holes.tip")]
    [InlineData("A3: 34 1/2 in", "A3: high", 22, 4, "$.lines[0].rows[0].heights.A3")]
    [InlineData("G,top,36 in,,3 in,eye,", "G,top,36 in,,3 in,knot,", 26, 6, "$")]
    [InlineData("1 1/2 in,5,5/8 in", "1 1/2 in,2,5/8 in", 26, 16, "$.lines[3].rows[0].start.eye.tucks")]
    [InlineData(",C2,round,,26 in,42 in,,,30 in,,,,,,", ",C2,round,,26 in,42 in,,,30 in,,,72 in,,,", 13, 12, "$.lines[1]")]
    public async Task What_is_wrong_with_what_real_sites_have_is_told_by_line_and_column(string right, string wrong, int line, int column, string path)
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        Assert.Contains(right, RealSheet, StringComparison.Ordinal);
        using var answer = await SendAsync(await shop.WithKeyAsync(KeyScope.TakeIn), RealSheet.Replace(right, wrong, StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains((line, column, path), (await answer.JsonAsync()).GetProperty("problems").EnumerateArray().Select(Place).ToList());
    }

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
    [InlineData("B2: wrap 2.5", "wrap 2.5", 15, 9, "$.lines[1].rows[0].at.wrap")]
    [InlineData("manila,1 1/2 in", "manilla,1 1/2 in", 2, 4, "$.rope.material")]
    [InlineData("2027-03-12", "12.3.2027", 2, 3, "$.due")]
    [InlineData("yes", "perhaps", 2, 8, "$.oneLot")]
    [InlineData("line,row,", "line,row,shade,", 12, 3, "$")]
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
