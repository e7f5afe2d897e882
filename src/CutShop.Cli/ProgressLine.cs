using System.Diagnostics;
using System.Globalization;

namespace CutShop.Cli;

/// <summary>A line on the screen, by standard error, that counts up while long work goes on; short work leaves no trace, and neither does it in a file or a pipe.</summary>
internal sealed class ProgressLine(string what) : IProgress<int>, IDisposable
{
    private static readonly TimeSpan ShowAfter = TimeSpan.FromMilliseconds(500);
    private static readonly TimeSpan ShowEvery = TimeSpan.FromMilliseconds(200);

    private readonly Stopwatch _sinceStart = Stopwatch.StartNew();
    private TimeSpan _lastShown;

    public void Report(int value)
    {
        var now = _sinceStart.Elapsed;
        if (Console.IsErrorRedirected || now < ShowAfter || now - _lastShown < ShowEvery)
            return;
        _lastShown = now;
        Console.Error.Write(string.Create(CultureInfo.InvariantCulture, $"\r{what}: {value} "));
    }

    public void Dispose()
    {
        if (_lastShown > TimeSpan.Zero)
            Console.Error.WriteLine();
    }
}
