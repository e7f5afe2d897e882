using CutShop.Paper.Sheets;
using CutShop.Paper.Words;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Tickets;

/// <summary>The ticket for cutting one piece.</summary>
public static class CutTicket
{
    /// <summary>The ticket.</summary>
    /// <param name="job">What the job is called by.</param>
    /// <param name="piece">The piece.</param>
    /// <param name="settings">Units and words.</param>
    /// <param name="code">The piece's code, or null before it has one.</param>
    /// <param name="place">Where a cut plan puts it; without one the ticket has boxes to write in.</param>
    public static Sheet Of(JobHead job, Piece piece, PaperSettings settings, PieceCode? code = null, CutPlace? place = null)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(settings);
        var (text, figures) = (settings.Text, settings.Figures);
        var cut = figures.LongLead(piece.Cut);
        return new(
            text["CutTicket"],
            piece.Run,
            text.Foot(job.Number, piece.Run),
            [
                new FieldsBlock(About(job, piece, settings, code)),
                .. piece.IsAsMeasured ? [new NoteBlock(text["MadeAsMeasured"])] : (Block[])[],
                new BigFigureBlock(text["CutLength"], cut, figures.LongOther(piece.Cut)),
                new FieldsBlock(OnTheCoil(settings, place)),
                .. place is null ? (Block[])[] : [new NoteBlock(text["TapeMarksAreForChecking"])],
                new TableBlock(text["Ends"], text.Parts("EndColumns"), [End(piece, 0, settings), End(piece, piece.AtPosts.Count - 1, settings)]),
                .. Splices(piece, settings),
                new StepsBlock(
                    text["Steps"],
                    [
                        .. text.WettingOfCoil(piece, figures.Both) is { } coil ? [coil] : (string[])[],
                        .. text.CuttingSteps(piece.Rope.IsNatural, cut, code is not null),
                        .. text.WettingOfPiece(piece, figures.Both),
                    ]),
                new CautionsBlock(text["Cautions"], piece.Rope.IsNatural ? text.CuttingNaturalCautions : text.CuttingSyntheticCautions),
            ]);
    }

    /// <summary>How the eyes are spliced that are spliced in the shop; two beside each other.</summary>
    private static Block[] Splices(Piece piece, PaperSettings settings)
    {
        var steps = settings.Text.Splices(piece, settings.Figures).Select(splice => new StepsBlock(splice.Caption, splice.Steps)).ToList();
        return steps is [var start, var finish] ? [new SideBySideBlock(start, finish)] : [.. steps];
    }

    private static List<Field> About(JobHead job, Piece piece, PaperSettings settings, PieceCode? code)
    {
        var text = settings.Text;
        return
        [
            new(text["Job"], job.Number),
            new(text["PieceCode"], code?.ToString()),
            new(text["Run"], piece.Run),
            new(text["FromTo"], text.FromPostToPost(piece.From.Mark, piece.To.Mark)),
            new(text["RopeLabel"], RopeWords.InBothUnits(piece, settings)),
            new(text["NetLength"], settings.Figures.LongBoth(piece.Net)),
            new(text["Weight"], text.WeightToLift(piece.WeightLb)),
            new(text["Due"], DueOf(job.Due, text)),
        ];
    }

    private static List<Field> OnTheCoil(PaperSettings settings, CutPlace? place)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        return
        [
            new(text["Coil"], place?.Coil),
            new(text["PlaceOnCoil"], place is null ? null : Figures.Count(place.Place)),
            new(text["TapeFrom"], place is null ? null : figures.LongBoth(place.TapeFrom)),
            new(text["TapeTo"], place is null ? null : figures.LongBoth(place.TapeTo)),
            new(text["Measured"], null),
            new(text["CutBy"], null),
        ];
    }

    private static IReadOnlyList<string> End(Piece piece, int index, PaperSettings settings)
    {
        var (text, at) = (settings.Text, piece.AtPosts[index]);
        return [index == 0 ? text["Start"] : text["Finish"], at.Post.Mark, text.AtPost(at), text.EndPreparation(piece, at)];
    }

    internal static string DueOf(DateOnly? day, PaperText text) => day is { } due ? IsoDate.Text(due) : text["NoDay"];
}
