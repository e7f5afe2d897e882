using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;
using CutShop.Takeoff.Tables;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Orders;

/// <summary>What one manner of letting natural rope shrink comes to in a job.</summary>
/// <param name="Manner">When the rope is let shrink.</param>
/// <param name="Net">All natural rope on the finished railing.</param>
/// <param name="Cut">What is cut for it.</param>
/// <param name="Trim">What is cut off once it has shrunk; about so much.</param>
/// <param name="DrySag">The most that a section sags while it hangs dry and new; null where it is hung once it has shrunk.</param>
public sealed record WettingChoice(WettingManner Manner, Length Net, Length Cut, Length Trim, Length? DrySag)
{
    /// <summary>The figures in words.</summary>
    public Sentence Says => Manner switch
    {
        WettingManner.Preshrunk => OrderReplies.Of("Preshrunk", Said(Net), Said(Cut)),
        WettingManner.Trimmed => OrderReplies.Of("Trimmed", Said(Net), Said(Cut), Said(Trim)),
        _ => OrderReplies.Of("HungLong", Said(Net), Said(Cut), Said(Trim), DrySag is { } sag ? Said(sag) : "–"),
    };

    private static string Said(Length length) => LengthText.FeetInches(length, denominator: 16);
}

/// <summary>Works out every manner of letting natural rope shrink, so that the desk can choose by the figures.</summary>
public static class WettingChoices
{
    /// <summary>
    /// The manners of a draft in the order in which they are offered, once it says what share the rope loses; a manner need not be chosen
    /// yet. None where it has no natural rope, or another error.
    /// </summary>
    internal static IReadOnlyList<WettingChoice> Of(DraftReading reading, DraftForm form, ShopTables tables)
    {
        var typed = form.Allowances.Wetting;
        if (typed.Loses.Trim().Length == 0)
            return [];
        var asked = typed.Manner.Length > 0 ? reading
            : DraftReading.Of(form with { Allowances = form.Allowances with { Wetting = typed with { Manner = JobWord.Of(WettingManner.Preshrunk) } } }, tables);
        return asked.Takeoff is { } takeoff ? Of(takeoff, tables) : [];
    }

    /// <summary>The manners of a job that has one.</summary>
    /// <param name="takeoff">The job as it is.</param>
    /// <param name="tables">Rope weights, screws and bits.</param>
    public static IReadOnlyList<WettingChoice> Of(JobTakeoff takeoff, ShopTables tables)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        var job = takeoff.Job;
        return job.Allowances.Wetting is not { } wetting || !takeoff.Pieces.Any(piece => piece.Rope.IsNatural)
            ? []
            : [.. Enum.GetValues<WettingManner>().Select(manner => Of(manner, wetting.Manner == manner ? takeoff : With(wetting with { Manner = manner })))];

        JobTakeoff With(Wetting other) => JobTakeoff.Of(job with { Allowances = job.Allowances with { Wetting = other } }, tables);
    }

    private static WettingChoice Of(WettingManner manner, JobTakeoff takeoff)
    {
        var pieces = takeoff.Pieces.Where(piece => piece.Rope.IsNatural).ToList();
        return new(
            manner,
            Sum(pieces, piece => piece.Net),
            Sum(pieces, piece => piece.Cut),
            Sum(pieces, piece => piece.Trim),
            pieces.SelectMany(piece => piece.Sections).Max(section => section.DrySag));
    }

    private static Length Sum(List<Piece> pieces, Func<Piece, Length> length) => pieces.Aggregate(Length.Zero, (sum, piece) => sum + length(piece));
}
