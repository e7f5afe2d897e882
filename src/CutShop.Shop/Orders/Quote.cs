using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Orders;

/// <summary>A stored quote. Its figures are its own: later prices do not touch it.</summary>
/// <param name="Id">Its row and its number on paper.</param>
/// <param name="DraftId">The draft it was made from.</param>
/// <param name="Takeoff">The job as quoted.</param>
/// <param name="Lines">What is charged.</param>
/// <param name="Net">The sum of the lines.</param>
/// <param name="TaxShare">The share of tax.</param>
/// <param name="Tax">Tax on the sum.</param>
/// <param name="Total">Net and tax.</param>
/// <param name="Currency">The sign before amounts.</param>
/// <param name="MadeOn">The day it was made.</param>
/// <param name="ValidUntil">The last day it is valid.</param>
/// <param name="State">open or accepted.</param>
public sealed record Quote(
    long Id,
    long DraftId,
    JobTakeoff Takeoff,
    IReadOnlyList<QuoteLine> Lines,
    Money Net,
    Share TaxShare,
    Money Tax,
    Money Total,
    string Currency,
    DateOnly MadeOn,
    DateOnly ValidUntil,
    string State)
{
    /// <summary>True once it has become a job.</summary>
    public bool IsAccepted => State == "accepted";
}

/// <summary>How a step of the desk went.</summary>
/// <param name="Value">What it made; meaningless where there is a problem.</param>
/// <param name="Problem">Why nothing was changed, or null.</param>
public sealed record DeskAnswer(string Value, Sentence? Problem)
{
    /// <summary>True where it is done.</summary>
    public bool IsDone => Problem is null;

    internal static DeskAnswer Done(string value) => new(value, Problem: null);

    internal static DeskAnswer Refused(Sentence problem) => new("", problem);
}
