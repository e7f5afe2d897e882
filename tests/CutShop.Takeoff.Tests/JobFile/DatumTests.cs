namespace CutShop.Takeoff.Tests.JobFile;

/// <summary>Where heights are told from: what the file says of it, and that it changes no figure of the takeoff.</summary>
public sealed class DatumTests
{
    [Theory]
    [InlineData("", Datum.Ground)]
    [InlineData("ground", Datum.Ground)]
    [InlineData("top", Datum.Top)]
    [InlineData("foot", Datum.Foot)]
    public void A_file_says_where_heights_are_told_from_and_is_written_so_again(string said, Datum datum)
    {
        var json = FromFoot("30 in");
        json = said.Length == 0 ? json.Replace("\"datum\": \"foot\", ", "", StringComparison.Ordinal) : json.Replace("\"foot\"", $"\"{said}\"", StringComparison.Ordinal);
        var job = Sample.Read(json).Job!;
        Assert.Equal(datum, job.Datum);
        Assert.All(job.Posts, post => Assert.Equal(30, post.Buried!.Value.Inches));
        var again = Sample.Read(JobFileWriter.Write(job)).Job!;
        Assert.Equal(job.Datum, again.Datum);
        Assert.Equal(job.Posts, again.Posts);
    }

    // By hand: a post 42 in over the ground and 30 in below it; a mark at 36 in.
    [Theory]
    [InlineData(Datum.Ground, 36)]
    [InlineData(Datum.Top, 6)]
    [InlineData(Datum.Foot, 66)]
    public void A_height_is_told_from_the_datum(Datum datum, double inches)
    {
        var post = Sample.Read(FromFoot("30 in")).Job!.Posts.First();
        Assert.Equal(inches, post.HeightFrom(datum, LengthText.Parse("36 in").OrThrow()).Inches);
    }

    [Fact]
    public void A_post_that_stands_on_the_ground_has_its_foot_there()
    {
        var post = Sample.Read(FromFoot("0 in")).Job!.Posts.First();
        Assert.Equal(36, post.HeightFrom(Datum.Foot, LengthText.Parse("36 in").OrThrow()).Inches);
    }

    [Fact]
    public void The_takeoff_is_the_same_whatever_heights_are_told_from()
    {
        var plain = Sample.Line(Sample.PlainRow);
        Assert.Equal(Written(plain), Written(FromFoot("30 in")));
        Assert.Equal(Written(plain), Written(FromFoot("30 in").Replace("\"foot\"", "\"top\"", StringComparison.Ordinal)));
    }

    /// <summary>Each post and the frame hold it, so that tickets of a stored job are told as they were promised; pieces do not.</summary>
    [Fact]
    public void Parts_keep_what_heights_are_told_from()
    {
        var takeoff = Sample.Takeoff(FromFoot("30 in"));
        foreach (var work in PostWork.Of(takeoff))
        {
            var again = PartText.ReadPost(PartText.Write(work), PartText.Format);
            Assert.Equal((Datum.Foot, 30.0), (again.Datum, again.Post.Buried!.Value.Inches));
            Assert.All(again.Bores, bore => Assert.Equal(again.Post, bore.Post));
        }
        var job = PartText.ReadTakeoff(PartText.Write(takeoff), PartText.Format).Job;
        Assert.Equal(takeoff.Job.Datum, job.Datum);
        Assert.Equal(takeoff.Job.Posts, job.Posts);
        var plain = Sample.Takeoff(Sample.Line(Sample.PlainRow));
        Assert.Equal(PieceWork.Of(plain).Select(PartText.Write), PieceWork.Of(takeoff).Select(PartText.Write));
    }

    [Fact]
    public void A_part_that_is_older_is_told_from_the_ground() => Assert.Equal(
        Datum.Ground,
        PartText.ReadPost("""{"post":"A1","line":"A","after":"A2","size":{"shape":"square","across_nm":139700000,"height_nm":1066800000},"runs":[]}""", 2).Datum);

    private static string FromFoot(string buried) => Sample.Line(Sample.PlainRow)
        .Replace("\"number\": \"T-1\", ", "\"number\": \"T-1\", \"datum\": \"foot\", ", StringComparison.Ordinal)
        .Replace("\"height\": \"42 in\"", $"\"height\": \"42 in\", \"buried\": \"{buried}\"", StringComparison.Ordinal);

    private static string Written(string json)
    {
        using var stream = new MemoryStream();
        TakeoffJson.Write(Sample.Takeoff(json), stream);
        return System.Text.Encoding.UTF8.GetString(stream.ToArray());
    }
}
