using CsCheck;
using CutShop.Testing.Fuzz;

namespace CutShop.Takeoff.Tests.Fuzz;

/// <summary>A short dose of what the benchmarks' command <c>fuzz</c> gives at length. A seed names the input that did harm.</summary>
public sealed class FuzzTests
{
    private static readonly JobFileMutations Files = new([.. Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "demo")).Order(StringComparer.Ordinal).Select(File.ReadAllBytes)]);

    [Fact]
    public void No_job_file_however_broken_does_harm() => Gen.Int.Sample(seed => Assert.Null(Harm.OfJobFile(Files.Make(seed))), iter: 5_000);

    [Fact]
    public void No_text_read_as_a_length_does_harm() => Gen.Int.Sample(seed => Assert.Null(Harm.OfLength(LengthStrings.Make(seed))), iter: 50_000);

    [Fact]
    public void No_text_read_as_a_code_does_harm() => Gen.Int.Sample(
        seed =>
        {
            var (meant, typed) = CodeStrings.Make(seed);
            Assert.Null(Harm.OfCode(meant, typed));
        },
        iter: 50_000);

    [Fact]
    public void The_inputs_are_of_both_sorts_taken_and_refused()
    {
        var lengths = Enumerable.Range(0, 5_000).Count(seed => LengthText.Parse(LengthStrings.Make(seed)).IsGood);
        Assert.InRange(lengths, 100, 4_900);
        var files = Enumerable.Range(0, 1_000).Count(seed => JobFileReader.Read(Files.Make(seed)).Job is not null);
        Assert.InRange(files, 10, 990);
        Assert.Contains(Enumerable.Range(0, 1_000), seed => PieceCode.Parse(CodeStrings.Make(seed).Typed).IsGood);
    }
}
