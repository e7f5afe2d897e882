using CutShop.CutPlan;
using CutShop.Paper.Sheets;
using CutShop.Paper.Words;
using CutShop.Takeoff.Lengths;

namespace CutShop.Paper.Tickets;

/// <summary>A piece as a plan's sheet names it.</summary>
/// <param name="Code">Its code as printed.</param>
/// <param name="Job">Its job's number.</param>
/// <param name="Run">Its run.</param>
/// <param name="IsCancelled">True where the piece is no longer to be cut.</param>
/// <param name="IsTakenOut">True where it is no longer to be cut by this plan.</param>
public sealed record PlanPieceName(string Code, string Job, string Run, bool IsCancelled = false, bool IsTakenOut = false)
{
    /// <summary>The key of why it is struck out; null where it is to be cut.</summary>
    internal string? WhyStruck => IsCancelled ? "PlanPieceCancelled" : IsTakenOut ? "PlanPieceTakenOut" : null;
}

/// <summary>What a plan's sheet says of the plan as a whole.</summary>
/// <param name="Number">The plan's number.</param>
/// <param name="Rope">The rope in words.</param>
/// <param name="State">draft, accepted or replaced.</param>
/// <param name="Proof">What is proved of it, in words.</param>
public sealed record PlanHead(long Number, string Rope, string State, string Proof);

/// <summary>A cut plan as a sheet: each coil a bar, and under it its pieces in cutting order with their tape marks.</summary>
public static class CutPlanSheet
{
    /// <summary>The sheet.</summary>
    /// <param name="head">The plan as a whole.</param>
    /// <param name="coils">What is cut from each coil.</param>
    /// <param name="names">What each piece is called, by the code that the coils give it.</param>
    /// <param name="settings">Units and words.</param>
    public static Sheet Of(PlanHead head, IReadOnlyList<CoilCuts> coils, IReadOnlyDictionary<string, PlanPieceName> names, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(coils);
        ArgumentNullException.ThrowIfNull(names);
        ArgumentNullException.ThrowIfNull(settings);
        var (text, figures) = (settings.Text, new Figures(settings.Units));
        var blocks = new List<Block>
        {
            new FieldsBlock(
            [
                new(text["PlanState"], StateOf(head.State, text)),
                new(text["PlanProof"], head.Proof),
                new(text["PlanPieces"], Figures.Count(coils.Sum(coil => coil.Pieces.Count))),
                new(text["PlanScrap"], figures.LongBoth(coils.Aggregate(Length.Zero, (sum, coil) => sum + coil.Scrap))),
            ]),
        };
        foreach (var coil in coils)
        {
            blocks.Add(new HeadingBlock(NameOf(coil, settings)));
            blocks.Add(new DrawingBlock(CoilBar.Of(coil, settings)));
            blocks.Add(new TableBlock(text["PlanPiecesInOrder"], text.Parts("PlanColumns"), [.. coil.Pieces.Select((piece, i) => Row(i, piece, names[piece.Code], settings))])
            {
                StruckRows = coil.Pieces.Index().Where(piece => names[piece.Item.Code].WhyStruck is not null).Select(piece => piece.Index).ToHashSet(),
            });
            blocks.Add(new NoteBlock(
                coil.IsKept ? text["PlanKeeps", figures.LongBoth(coil.Left)]
                : coil.Left.IsPositive ? text["PlanScraps", figures.LongBoth(coil.Left)]
                : text["PlanUsesUp"]));
        }
        return new(text["CutPlanTitle"], head.Rope, text["PlanFoot", head.Number, head.Rope], blocks);
    }

    /// <summary>A coil's name, its lot and its length.</summary>
    internal static string NameOf(CoilCuts coil, PaperSettings settings)
    {
        var length = settings.Figures.LongBoth(coil.Start);
        return coil.Lot.Length == 0 ? $"{coil.Coil}: {length}" : settings.Text["CoilOfLot", coil.Coil, coil.Lot, length];
    }

    private static string StateOf(string state, PaperText text) => state switch
    {
        "draft" => text["PlanDraft"],
        "accepted" => text["PlanAccepted"],
        "replaced" => text["PlanReplaced"],
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, message: null),
    };

    private static string[] Row(int index, CutPiece piece, PlanPieceName name, PaperSettings settings)
    {
        var figures = settings.Figures;
        return
        [
            Figures.Count(index + 1),
            name.Code,
            name.WhyStruck is { } why ? $"{name.Job} {name.Run}\n{settings.Text[why]}" : $"{name.Job} {name.Run}",
            figures.LongLead(piece.Cut),
            figures.LongLead(piece.From),
            figures.LongLead(piece.To),
        ];
    }
}
