using System.Text;
using CsCheck;
using CutShop.Testing.Fuzz;

namespace CutShop.Takeoff.Tests.JobFile;

/// <summary>Whatever the bytes, reading gives a job or at least one problem, and a job that was read can be taken off.</summary>
public class BrokenFilePropertyTests
{
    private static readonly byte[] Good = Encoding.UTF8.GetBytes(Sample.Example("pier"));

    private static readonly string[] Tokens =
    [
        "\"", "{", "}", "[", "]", ":", ",", "null", "true", "0", "-1", "1e999", "1e-999", "\"\"", "\"wrap 2\"", "\"72 in\"", "\"0 in\"", "\"-5 in\"",
        "\"1 m\"", "\"999 m\"", "\"0.000001 mm\"", "\"knot\"", "\"bored\"", "\"\\ud800\"", "\"\\u0000\"", "\"179.999 left\"", "\"wrap 1000\"", "\\", "\n",
    ];

    [Fact]
    public void Bytes_changed_anywhere_give_a_job_or_a_problem() =>
        Gen.Select(Gen.Int[0, Good.Length - 1], Gen.Byte).Array[1, 4].Sample(
            changes =>
            {
                var bytes = Good.ToArray();
                foreach (var (at, value) in changes)
                    bytes[at] = value;
                Check(bytes);
            },
            iter: 20_000);

    [Fact]
    public void A_file_cut_off_anywhere_is_a_problem()
    {
        var end = Good.AsSpan().LastIndexOf((byte)'}');
        for (var length = 0; length <= end; length++)
        {
            var reading = JobFileReader.Read(Good.AsMemory(0, length));
            Assert.Null(reading.Job);
            Assert.Single(reading.Problems);
        }
    }

    [Fact]
    public void Random_bytes_give_a_problem() =>
        Gen.Byte.Array[0, 200].Sample(bytes => Assert.NotEmpty(JobFileReader.Read(bytes).Problems), iter: 5_000);

    [Fact]
    public void Tokens_put_anywhere_give_a_job_or_a_problem() =>
        Gen.Select(Gen.Int[0, Good.Length - 1], Gen.OneOf(Tokens)).Array[1, 3].Sample(
            changes =>
            {
                var text = Encoding.UTF8.GetString(Good);
                foreach (var (at, token) in changes)
                    text = text.Insert(at, token);
                Check(Encoding.UTF8.GetBytes(text));
            },
            iter: 20_000);

    [Fact]
    public void Values_changed_for_others_give_a_job_or_a_problem() =>
        Gen.Select(Gen.Int[0, 1000], Gen.OneOf(Tokens)).Array[1, 3].Sample(
            changes =>
            {
                var parts = Encoding.UTF8.GetString(Good).Split('"');
                foreach (var (at, token) in changes)
                    parts[((at * 2) + 1) % (parts.Length - 1)] = token.Trim('"');
                Check(Encoding.UTF8.GetBytes(string.Join('"', parts)));
            },
            iter: 20_000);

    [Fact]
    public void Pieces_of_the_file_left_out_or_doubled_give_a_job_or_a_problem() =>
        Gen.Select(Gen.Int[0, Good.Length], Gen.Int[0, Good.Length], Gen.Int[0, Good.Length]).Sample(
            (a, b, c) =>
            {
                var (start, end) = (Math.Min(a, b), Math.Max(a, b));
                Check([.. Good[..start], .. Good[end..]]);
                Check([.. Good[..c], .. Good[start..end], .. Good[c..]]);
            },
            iter: 5_000);

    private static void Check(byte[] bytes)
    {
        var reading = JobFileReader.Read(bytes);
        Assert.Equal(reading.Job is null, reading.Problems.Count > 0);
        if (reading.Job is { } job)
            TakeoffJson.Write(JobTakeoff.Of(job, ShopTables.Standard), Stream.Null);
        Assert.All(reading.Problems, problem => Assert.StartsWith("$", problem.Path, StringComparison.Ordinal));
        Assert.All(reading.Problems, problem => Assert.NotEmpty(problem.Text));
    }
}
