using System.Collections.Concurrent;

namespace CutShop.Takeoff;

/// <summary>
/// Remembers posts and sections that were read and found right, by their text in the file, so that a job file that is read again and
/// again while somebody changes a little of it costs what changed. May be shared by many readers at once.
/// </summary>
public sealed class JobFileMemory
{
    /// <summary>Posts and sections of some dozens of jobs as large as are typed by hand.</summary>
    private const int Most = 20_000;

    private readonly ConcurrentDictionary<string, object> _read = new(StringComparer.Ordinal);

    /// <summary>What was read of this text; null where it is not remembered.</summary>
    internal T? Find<T>(string text)
        where T : class => _read.GetValueOrDefault(text) as T;

    /// <summary>Remembers what was read of a text; when there is too much, all else is forgotten.</summary>
    internal void Keep(string text, object read)
    {
        if (_read.Count >= Most)
            _read.Clear();
        _read[text] = read;
    }
}
