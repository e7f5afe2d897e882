namespace CutShop.Shop.Store;

/// <summary>What happened, as the history stores it: a code, with the words that are made of it when somebody reads the line.</summary>
public sealed class HistoryCode
{
    internal HistoryCode(
        string code, Func<HistoryEntry, string> what, Func<HistoryEntry, string>? before = null, Func<HistoryEntry, string>? after = null)
    {
        (Code, What) = (code, what);
        Before = before ?? (line => line.BeforeLength?.ToString() ?? line.Before);
        After = after ?? (line => line.AfterLength?.ToString() ?? line.After);
    }

    /// <summary>What is stored: lower-case words with hyphens.</summary>
    public string Code { get; }

    /// <summary>What was done, in a few words.</summary>
    internal Func<HistoryEntry, string> What { get; }

    /// <summary>The state before: where nothing else is said, the length of the line or else its state as it is stored.</summary>
    internal Func<HistoryEntry, string> Before { get; }

    /// <summary>The state after, as <see cref="Before"/>.</summary>
    internal Func<HistoryEntry, string> After { get; }
}
