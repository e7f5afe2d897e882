using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Labels;

/// <summary>What a label says.</summary>
/// <param name="Address">The address in the code.</param>
/// <param name="Code">The piece's code.</param>
/// <param name="JobNumber">The job.</param>
/// <param name="Piece">The piece.</param>
public sealed record PieceLabel(string Address, PieceCode Code, string JobNumber, Piece Piece)
{
    /// <summary>True where its job was cancelled, which the label says.</summary>
    public bool IsCancelled { get; init; }

    /// <summary>The label of a piece.</summary>
    /// <returns>The label, or what is wrong with the base address.</returns>
    public static Parsed<PieceLabel> Of(string baseAddress, Job job, Piece piece, PieceCode code)
    {
        ArgumentNullException.ThrowIfNull(job);
        var address = PieceAddress.Of(baseAddress, code);
        return address.Problem is null
            ? Parsed.Good(new PieceLabel(address.Value, code, job.Number, piece))
            : Parsed.Bad<PieceLabel>(address.Reason!);
    }
}
