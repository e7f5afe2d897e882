using CutShop.Shop.Store;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Tickets;

/// <summary>What the benches reply where they refuse a tap, in English and Spanish.</summary>
public static class BenchReplies
{
    /// <summary>The sentences.</summary>
    public static WordList List { get; } = new(typeof(BenchReplies));

    /// <summary>The state of a ticket or a coil as a word.</summary>
    public static Sentence State(string state) => Of(state switch
    {
        TicketStates.Waiting => "Waiting",
        TicketStates.AtTheBench => "AtTheBench",
        TicketStates.Cut => "Cut",
        TicketStates.Packed => "Packed",
        TicketStates.Drilled => "Drilled",
        TicketStates.ReOrdered => "ReOrdered",
        TicketStates.Cancelled => "Cancelled",
        TicketStates.Surplus => "Surplus",
        CoilStates.InStock => "InStock",
        CoilStates.UsedUp => "UsedUp",
        CoilStates.Retired => "Retired",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, message: null),
    });

    /// <summary>What was typed is not a length.</summary>
    public static Sentence NotALength(string typed) => Of("NotALength", typed);

    /// <summary>Nothing has the mark that was scanned or typed.</summary>
    public static Sentence NothingMarked(string scan) => Of("NothingMarked", scan);

    /// <summary>A post that was scanned at another job's parcel.</summary>
    public static Sentence PostOfAnotherJob(string post, string job) => Of("PostOfAnotherJob", post, job);

    internal static Sentence Of(string key, params IReadOnlyList<object?> values) => new(List, key, values);
}
