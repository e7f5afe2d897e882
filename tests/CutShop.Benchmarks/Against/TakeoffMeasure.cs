using System.Globalization;
using CutShop.Benchmarks.Takeoff;

namespace CutShop.Benchmarks.Against;

/// <summary>The command <c>takeoff</c> from its start to its end: a job file is read and taken off, and the result written.</summary>
internal sealed class TakeoffMeasure(ShopProgram program) : Measure
{
    private const int Posts = 10_000;

    private readonly string _file = Path.GetTempFileName();

    public override void Prepare()
    {
        File.WriteAllBytes(_file, GeneratedJob.OfPosts(Posts));
        if (program.Run("takeoff", _file).Length == 0)
            throw new InvalidOperationException($"{program.Name}: takeoff writes nothing.");
    }

    public override IEnumerable<Reading[]> Turn() =>
        [[new(string.Create(CultureInfo.InvariantCulture, $"takeoff of {Posts:N0} posts by the command, ms"), Time(() => program.Run("takeoff", _file)))]];

    public override void Dispose() => File.Delete(_file);
}
