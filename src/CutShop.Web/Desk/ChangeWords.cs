using CutShop.Paper;
using CutShop.Shop;
using CutShop.Takeoff;

namespace CutShop.Web;

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
        var place = difference.Place.Length == 0 ? "" : difference.Field == WorkField.End ? $" at {difference.Place}" : $", row {difference.Place}";
        return $"{Name(difference.Field)}{place}: {Of(difference.Was)} → {Of(difference.Becomes)}";
    }

    /// <summary>Something that can be done to save what was made.</summary>
    public string Of(Saving saving) => saving switch
    {
        Saving.DrillDeeper deeper => $"Row {deeper.Row}, {Text.FaceName(deeper.Face)}: drill {Figures.Both(deeper.By)} deeper, to {Figures.Both(deeper.To)}.",
        Saving.DrillAlso also => $"Row {also.Row}: drill on from the face {Text.FaceName(also.Face)}, {Figures.Both(also.Depth)} deep, mark at {Figures.Both(also.Mark)}.",
        Saving.BoreBeside beside => $"Row {beside.Row}: bore at {Figures.Both(beside.Height)}, beside the old hole; {Figures.Both(beside.Wood)} of wood is left between them.",
        Saving.LeaveHole hole => $"Row {hole.Row}: the old hole stays and takes no rope.",
        Saving.DrillScrewHoles holes => $"Row {holes.Row}: drill the screw holes as on the new ticket.",
        Saving.CutShorter shorter => $"Cut it {Figures.LongBoth(shorter.By)} shorter.",
        Saving.PrepareEnd end => $"Prepare the end at {end.Post} as on the new ticket.",
        Saving.UseFor use => use.CutOff == Length.Zero ? $"Use it for {use.Run}." : $"Use it for {use.Run}: cut {Figures.LongBoth(use.CutOff)} off.",
        Saving.HangUp hang => $"Hang it up as an offcut of {Figures.LongBoth(hang.Length)}.",
        _ => throw new ArgumentOutOfRangeException(nameof(saving), saving, message: null),
    };

    private static string Name(WorkField field) => field switch
    {
        WorkField.CutLength => "Cut length",
        WorkField.Rope => "Rope",
        WorkField.End => "End",
        WorkField.PostSize => "Post",
        WorkField.PostHeight => "Height of the post",
        WorkField.Turn => "Turn",
        WorkField.Bore => "Bore",
        WorkField.Bit => "Bit",
        WorkField.BoreHeight => "Height of the bore",
        WorkField.Rake => "Rake",
        WorkField.Depth => "Drilling",
        WorkField.Screws => "Screws",
        _ => throw new ArgumentOutOfRangeException(nameof(field), field, message: null),
    };

    private string Of(WorkValue? value) => value switch
    {
        null => "none",
        WorkValue.Measure measure => Figures.LongBoth(measure.Length),
        WorkValue.Angle angle => $"{Figures.Degrees(angle.Degrees)}",
        WorkValue.Section section => $"{Text.PostShape(section.Shape)} {Figures.Both(section.Across)}",
        WorkValue.Corner corner => Text.TurnOf(corner.Turn.Degrees, corner.Turn.Side == TurnSide.Left),
        WorkValue.OfRope rope => RopeWords.Of(rope.Rope, settings),
        WorkValue.RopeEnd end => $"{end.Post}, {Text.BoreKind(end.Kind)}{(end.Turns > 0 ? FormattableString.Invariant($" {end.Turns:0.#}") : "")}",
        WorkValue.BoreKind bore => Text.BoreKind(bore.Kind),
        WorkValue.Drilled drilled => $"{Text.FaceName(drilled.Face)}, {Figures.Both(drilled.Depth)} deep, mark at {Figures.Both(drilled.Mark)}",
        WorkValue.Driven driven => $"{Figures.Count(driven.Screws.Count)} × {Text.ScrewName(driven.Screws.Screw, Figures.Both(driven.Screws.Length))}, {Text.FaceName(driven.Face)}, mark at {Figures.Both(driven.Mark)}, pilot {Figures.Both(driven.Screws.Pilot)}",
        _ => throw new ArgumentOutOfRangeException(nameof(value), value, message: null),
    };

    private string Of(Piece piece) => $"{RopeWords.Of(piece.Rope, settings)}, {Figures.LongBoth(piece.Cut)}, {Text.FromPostToPost(piece.From.Mark, piece.To.Mark)}";

    private string Of(PostWork work)
    {
        var bores = work.Bores.Select(bore => $"{bore.Row}: {Text.BoreKind(bore.Kind)}, {Figures.Lead(bore.Bit)} at {Figures.Lead(bore.Height)}, {string.Join(" and ", bore.Operations.Select(drilling => $"{Text.FaceName(drilling.Face)} {Figures.Lead(drilling.Depth)} deep"))}{(bore.IsRaked ? $", {RakeText.Of(bore, work, settings)}" : "")}");
        return $"{Text.SizeOfPost(Text.PostShape(work.Post.Shape), Figures.Lead(work.Post.Across))}; {string.Join("; ", bores.DefaultIfEmpty("no bores"))}";
    }
}
