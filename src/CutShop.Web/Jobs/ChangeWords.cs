using System.Globalization;
using CutShop.Paper.Drawings;
using CutShop.Paper.Words;
using CutShop.Shop.Jobs;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

using static CutShop.Web.Jobs.JobWords;

namespace CutShop.Web.Jobs;

/// <summary>A change of a job in words: what differs, and what can be saved.</summary>
/// <param name="settings">The reader's units and words.</param>
internal sealed class ChangeWords(PaperSettings settings)
{
    private PaperText Text => settings.Text;

    private Figures Figures => settings.Figures;

    /// <summary>A piece or a post in one line.</summary>
    public string Of(ChangedThing thing, bool then) => thing switch
    {
        ChangedPiece piece => (then ? piece.Becomes : piece.Was) is { } work ? Of(work.Piece) : "–",
        ChangedPost post => (then ? post.Becomes : post.Was) is { } work ? Of(work) : "–",
        _ => throw new ArgumentOutOfRangeException(nameof(thing), thing, message: null),
    };

    /// <summary>One thing that differs.</summary>
    public string Of(WorkDifference difference)
    {
        var (name, was, becomes) = (Name(difference.Field), Of(difference.Was), Of(difference.Becomes));
        return difference.Place.Length == 0 ? T["Difference", name, was, becomes]
            : T[difference.Field == WorkField.End ? "DifferenceAtPost" : "DifferenceInRow", name, difference.Place, was, becomes];
    }

    /// <summary>What becomes of a ticket.</summary>
    public static string TicketThen(ChangedThing thing) => T[(thing.Kind, thing.BecomesSurplus) switch
    {
        (ChangeKind.Added, _) => "TicketNew",
        (ChangeKind.Changed, true) => "TicketSurplusAndNew",
        (ChangeKind.Changed, false) => "TicketCancelledAndNew",
        (_, true) => "TicketSurplus",
        _ => "TicketCancelled",
    }];

    /// <summary>Something that can be done to save what was made.</summary>
    public string Of(Saving saving) => saving switch
    {
        Saving.DrillDeeper deeper => T["DrillDeeper", deeper.Row, Text.FaceName(deeper.Face), Figures.Both(deeper.By), Figures.Both(deeper.To)],
        Saving.DrillAlso also => T["DrillAlso", also.Row, Text.FaceName(also.Face), Figures.Both(also.Depth), Figures.Both(also.Mark)],
        Saving.BoreBeside beside => T["BoreBeside", beside.Row, Figures.Both(beside.Height), Figures.Both(beside.Wood)],
        Saving.LeaveHole hole => T["LeaveHole", hole.Row],
        Saving.DrillScrewHoles holes => T["DrillScrewHoles", holes.Row],
        Saving.CutShorter shorter => T["CutShorter", Figures.LongBoth(shorter.By)],
        Saving.PrepareEnd end => T["PrepareEnd", end.Post],
        Saving.UseFor use => use.CutOff == Length.Zero ? T["UseFor", use.Run] : T["UseForCut", use.Run, Figures.LongBoth(use.CutOff)],
        Saving.HangUp hang => T["HangUp", Figures.LongBoth(hang.Length)],
        _ => throw new ArgumentOutOfRangeException(nameof(saving), saving, message: null),
    };

    private static string Name(WorkField field) => T[field switch
    {
        WorkField.CutLength => "CutLength",
        WorkField.Rope => "Rope",
        WorkField.End => "End",
        WorkField.PostSize => "Post",
        WorkField.PostHeight => "PostHeight",
        WorkField.Turn => "Turn",
        WorkField.Bore => "Bore",
        WorkField.BoredBy => "WhoBores",
        WorkField.Bit => "Bit",
        WorkField.BoreHeight => "BoreHeight",
        WorkField.Rake => "Rake",
        WorkField.Depth => "Drilling",
        WorkField.Screws => "Screws",
        _ => throw new ArgumentOutOfRangeException(nameof(field), field, message: null),
    }];

    private string Of(WorkValue? value) => value switch
    {
        null => T["None"],
        WorkValue.Measure measure => Figures.LongBoth(measure.Length),
        WorkValue.Angle angle => $"{Figures.Degrees(angle.Degrees)}",
        WorkValue.Section section => $"{Text.PostShape(section.Shape)} {Figures.Both(section.Across)}",
        WorkValue.Corner corner => Text.TurnOf(corner.Turn.Degrees, corner.Turn.Side == TurnSide.Left),
        WorkValue.OfRope rope => RopeWords.Shrunk(rope.IsPreshrunk, RopeWords.Of(rope.Rope, settings), settings),
        WorkValue.RopeEnd end => end.Turns > 0
            ? T["RopeEndWrapped", end.Post, Text.BoreKind(end.Kind), end.Turns.ToString("0.#", CultureInfo.InvariantCulture)]
            : T["RopeEnd", end.Post, Text.BoreKind(end.Kind)],
        WorkValue.BoreKind bore => Text.BoreKind(bore.Kind),
        WorkValue.Borer borer => T[borer.Who == BoredBy.Site ? "TheInstaller" : "TheShop"],
        WorkValue.Drilled drilled => T["Drilled", Text.FaceName(drilled.Face), Figures.Both(drilled.Depth), Figures.Both(drilled.Mark)],
        WorkValue.Driven driven => T[
            "Driven",
            Figures.Count(driven.Screws.Count),
            Text.Holder(driven.Screws, Figures.Both(driven.Screws.Length)),
            Text.FaceName(driven.Face),
            Figures.Both(driven.Mark),
            Figures.Both(driven.Screws.Pilot)],
        _ => throw new ArgumentOutOfRangeException(nameof(value), value, message: null),
    };

    private string Of(Piece piece) => T["PieceWork", RopeWords.Of(piece, settings), Figures.LongBoth(piece.Cut), Text.FromPostToPost(piece.From.Mark, piece.To.Mark)];

    private string Of(PostWork work) => T[
        "PostWork",
        Text.SizeOfPost(Text.PostShape(work.Post.Shape), Figures.Lead(work.Post.Across)),
        string.Join("; ", work.Bores.Select(bore => Of(bore, work)).DefaultIfEmpty(T["NoBores"]))];

    private string Of(Bore bore, PostWork work)
    {
        var drillings = string.Join(T["And"], bore.Operations.Select(drilling => T["FaceDeep", Text.FaceName(drilling.Face), Figures.Lead(drilling.Depth)]));
        return bore.IsRaked
            ? T["PostBoreRaked", bore.Row, Text.BoreKind(bore.Kind), Figures.Lead(bore.Bit), Figures.Lead(bore.Height), drillings, RakeText.Of(bore, work, settings)]
            : T["PostBore", bore.Row, Text.BoreKind(bore.Kind), Figures.Lead(bore.Bit), Figures.Lead(bore.Height), drillings];
    }
}
