using System.Collections.Concurrent;

namespace CutShop.Takeoff.JobFile;

/// <summary>
/// Remembers posts and sections that were read and found right, by their text in the file, so that a job file that is read again and
/// again while somebody changes a little of it costs what changed. May be shared by many readers at once.
/// </summary>
public sealed class JobFileMemory
{
    /// <summary>Posts and sections of some dozens of jobs as large as are typed by hand.</summary>
    private const int Most = 20_000;

    private readonly ConcurrentDictionary<byte[], object> _read = new(new ByText());

    /// <summary>What was read of this text; null where it is not remembered.</summary>
    internal T? Find<T>(ReadOnlySpan<byte> text)
        where T : class => _read.GetAlternateLookup<ReadOnlySpan<byte>>().TryGetValue(text, out var read) ? read as T : null;

    /// <summary>Remembers what was read of a text; when there is too much, all else is forgotten.</summary>
    internal void Keep(ReadOnlySpan<byte> text, object read)
    {
        if (_read.Count >= Most)
            _read.Clear();
        _read[text.ToArray()] = read;
    }

    private sealed class ByText : IEqualityComparer<byte[]>, IAlternateEqualityComparer<ReadOnlySpan<byte>, byte[]>
    {
        public bool Equals(byte[]? x, byte[]? y) => x.AsSpan().SequenceEqual(y);

        public bool Equals(ReadOnlySpan<byte> alternate, byte[] other) => alternate.SequenceEqual(other);

        public int GetHashCode(byte[] obj) => GetHashCode(obj.AsSpan());

        public int GetHashCode(ReadOnlySpan<byte> alternate)
        {
            var hash = new HashCode();
            hash.AddBytes(alternate);
            return hash.ToHashCode();
        }

        public byte[] Create(ReadOnlySpan<byte> alternate) => alternate.ToArray();
    }
}
