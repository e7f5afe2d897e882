using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Labels;

/// <summary>What the label of a post says. It is put on the face that points to the next post; at the end of a line, to the one before.</summary>
/// <param name="Address">The address in the code.</param>
/// <param name="JobNumber">The job.</param>
/// <param name="Work">What is done to the post.</param>
public sealed record PostLabel(string Address, string JobNumber, PostWork Work)
{
    /// <summary>Turns of less than this keep the faces opposite; of more than 180 degrees less it they go back on the same side.</summary>
    private const int LeastTurn = 45;

    /// <summary>True where its job was cancelled, which the label says.</summary>
    public bool IsCancelled { get; init; }

    /// <summary>The post that the label's own face looks to.</summary>
    public string? ThisFace => Work.After ?? Work.Before;

    /// <summary>
    /// The other neighbour and the face that looks to it, seen by who reads the label: at a turn to the left it is at the right. Null where there is
    /// no other, or where it lies on no face of its own.
    /// </summary>
    public (string Key, string Neighbour)? OtherFace => (Work.After, Work.Before, Work.Post.Turn) switch
    {
        (null, _, _) or (_, null, _) => null,
        (_, { } before, null or { Degrees: < LeastTurn }) => ("LabelOpposite", before),
        (_, _, { Degrees: > 180 - LeastTurn }) => null,
        (_, { } before, { Side: TurnSide.Left }) => ("LabelRight", before),
        (_, { } before, _) => ("LabelLeft", before),
    };

    /// <summary>The label of a post.</summary>
    /// <param name="baseAddress">The shop's base address.</param>
    /// <param name="job">The job's number.</param>
    /// <param name="work">What is done to the post.</param>
    /// <param name="piece">The code of a piece that passes it.</param>
    /// <returns>The label, or what is wrong with the base address.</returns>
    public static Parsed<PostLabel> Of(string baseAddress, string job, PostWork work, PieceCode piece)
    {
        ArgumentNullException.ThrowIfNull(work);
        var address = PieceAddress.OfPost(baseAddress, piece, work.Post.Mark);
        return address.Problem is null ? Parsed.Good(new PostLabel(address.Value, job, work)) : Parsed.Bad<PostLabel>(address.Reason!);
    }
}
