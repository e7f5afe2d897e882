using CutShop.Shop.Store;

namespace CutShop.Shop.Tickets;

/// <summary>A stored part is missing, cut off, or not as the program wrote it, so that nothing can be shown from it.</summary>
public sealed class DamagedPartException : Exception
{
    /// <summary>Says which part, and what is wrong with it.</summary>
    /// <param name="place">Job and piece, post or quote, such as <c>job LQ-1042, piece A-top-1</c>.</param>
    /// <param name="problem">What is wrong.</param>
    /// <param name="cause">What found it, or null.</param>
    public DamagedPartException(string place, string problem, Exception? cause = null)
        : base(StoreReplies.Say("PartIsDamaged", place, problem), cause) => (Place, Problem) = (place, problem);

    /// <summary>Job and piece, post or quote.</summary>
    public string Place { get; }

    /// <summary>What is wrong with it.</summary>
    public string Problem { get; }
}
