using System.Diagnostics;
using CutShop.Testing.Trust;

namespace CutShop.Benchmarks.Against;

/// <summary>One version of the program, used by its command line.</summary>
/// <param name="Name">What it is called where it is printed.</param>
/// <param name="Path">Its <c>cutshop.dll</c>.</param>
/// <param name="IsOld">True for the version that the other one is held against.</param>
internal sealed record ShopProgram(string Name, string Path, bool IsOld)
{
    /// <summary>A command of it.</summary>
    public ProcessStartInfo Command(params string[] args) => ServerProcess.CommandOf(Path, args);

    /// <summary>Runs a command to its end.</summary>
    /// <returns>What it wrote.</returns>
    public string Run(params string[] args)
    {
        var (exitCode, written, trouble) = Finished.Of(Command(args));
        return exitCode == 0 ? written : throw new InvalidOperationException($"{Name}: {string.Join(' ', args)}: exit code {exitCode}: {trouble}");
    }
}
