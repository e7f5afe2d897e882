using System.Collections.Concurrent;

namespace CutShop.Testing.Load;

/// <summary>What all clients of a run write down together.</summary>
internal sealed class LoadNotes
{
    /// <summary>Who was given each piece.</summary>
    public ConcurrentDictionary<string, string> Claims { get; } = new();

    /// <summary>Pieces that were finished.</summary>
    public ConcurrentBag<string> Cut { get; } = [];

    /// <summary>What went wrong.</summary>
    public ConcurrentQueue<string> Errors { get; } = new();

    /// <summary>Pieces that two tablets were given.</summary>
    public ConcurrentQueue<string> GivenTwice { get; } = new();
}
