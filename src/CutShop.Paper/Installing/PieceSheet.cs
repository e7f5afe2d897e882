using CutShop.Paper.Drawings;
using CutShop.Paper.Sheets;
using CutShop.Paper.Words;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Installing;

/// <summary>How one piece is hung, on a sheet: for who has no signal.</summary>
internal static class PieceSheet
{
    public static Sheet Of(JobTakeoff takeoff, Piece piece, PieceCode code, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        return new(
            text["Piece"],
            $"{piece.Run}: {text.FromPostToPost(piece.From.Mark, piece.To.Mark)}",
            text.Foot(takeoff.Job.Number, piece.Run),
            [
                new FieldsBlock(
                [
                    new(text["PieceCode"], code.ToString()),
                    new(text["Line"], piece.Line),
                    new(text["Row"], piece.Row),
                    new(text["RowHeight"], figures.Both(piece.Height)),
                    new(text["RopeLabel"], RopeWords.Of(piece, settings)),
                    new(text["CutLength"], figures.LongBoth(piece.Cut)),
                ])
                { IsOneRow = true },
                new SideBySideBlock(
                    new TableBlock(text["SagToSet"], text.Parts("SagColumns"), [.. piece.Sections.Select(span => Row(span, settings))]),
                    new CautionsBlock(text["Cautions"], [.. piece.Rope.IsNatural ? text.CuttingNaturalCautions : text.CuttingSyntheticCautions, .. text.RailingCautions])),
                new NoteBlock(text["SagIsMeasuredSo"]),
                new StepsBlock(text["OrderOfWork"], [.. InstallLines.Of(takeoff, piece, settings).Select(line => line.Screws is { } screws ? $"{line.Text} {screws}" : line.Text)]),
                .. InstallLines.Gate(piece, text) is { } gate ? [new NoteBlock(gate)] : (Block[])[],
                new NoteBlock(text["RopeBedsIn"]),
                .. Elevation.OfRun(takeoff, piece, settings).Select(drawing => new DrawingBlock(drawing)),
            ])
        {
            Anchor = code.Plain,
        };
    }

    private static IReadOnlyList<string> Row(PieceSection span, PaperSettings settings) =>
    [
        $"{span.From.Mark} – {span.To.Mark}",
        settings.Text.SagOf(span, settings.Figures.Both),
        settings.Figures.Both(span.Chord),
    ];
}
