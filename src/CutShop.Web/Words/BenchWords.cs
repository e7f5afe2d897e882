using CutShop.Shop;
using CutShop.Takeoff;

namespace CutShop.Web.Words;

/// <summary>Words of the pages of the benches, in English and Spanish.</summary>
public static class BenchWords
{
    /// <summary>The words.</summary>
    public static WordList List { get; } = new(typeof(BenchWords));

    internal static PageText T { get; } = new(List);

    internal static Sentence Of(string key, params IReadOnlyList<object?> values) => new(List, key, values);

    /// <summary>A sentence whose English is its key.</summary>
    internal static Sentence Of(FormattableString said) =>
        new(List, said.Format, [.. said.GetArguments().Select(value => value is StateWord word ? StateOf(word.State) : value)]);

    /// <summary>The state of a ticket or a coil.</summary>
    public static Sentence StateOf(string state) => Of(state switch
    {
        TicketStates.Waiting => "Waiting",
        TicketStates.AtTheBench => "AtTheBench",
        TicketStates.Cut => "Cut",
        TicketStates.Packed => "Packed",
        TicketStates.Drilled => "Drilled",
        TicketStates.ReOrdered => "ReOrdered",
        TicketStates.Cancelled => "Cancelled",
        TicketStates.Surplus => "Surplus",
        "in stock" => "InStock",
        "used up" => "UsedUp",
        "retired" => "Retired",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, message: null),
    });
}
