using CutShop.Takeoff;

namespace CutShop.Paper;

/// <summary>The ticket for drilling one post.</summary>
public static class DrillTicket
{
    /// <summary>Tickets for every post of a job at which something is drilled or screwed.</summary>
    public static IEnumerable<Sheet> All(JobTakeoff takeoff, PaperSettings settings) =>
        PostWork.Of(takeoff).Select(work => Of(takeoff.Job, work, settings));

    /// <summary>The ticket.</summary>
    /// <param name="job">The job.</param>
    /// <param name="work">What is done to the post.</param>
    /// <param name="settings">Units and words.</param>
    public static Sheet Of(Job job, PostWork work, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(work);
        ArgumentNullException.ThrowIfNull(settings);
        var text = settings.Text;
        var blocks = new List<Block> { new FieldsBlock(About(job, work, settings)) };
        if (work.Bores.Count == 0)
            blocks.Add(new NoteBlock(text.NothingToDrill));
        else
            blocks.AddRange([DrillingTable(work, settings), BoreTable(work, settings)]);
        if (work.Fixings.Count > 0)
            blocks.Add(ScrewTable(work, settings));
        if (work.Bores.Count > 0)
        {
            var raked = work.Bores.Any(bore => Math.Abs(bore.RakeDegrees) > 0.05);
            blocks.Add(new StepsBlock(text.Steps, text.DrillingSteps(work.Bores.Any(b => b.Operations.Count > 1), raked, work.Fixings.Count > 0)));
        }
        blocks.Add(new CautionsBlock(text.Cautions, work.Bores.Count > 0 ? text.DrillingCautions : text.TimberCautions));
        blocks.AddRange(PostDrawing.Of(work, settings).Select(drawing => new DrawingBlock(drawing)));
        return new(text.DrillTicket, text.PostName(work.Post.Mark), text.Foot(job.Number, text.PostName(work.Post.Mark)), blocks);
    }

    private static List<Field> About(Job job, PostWork work, PaperSettings settings)
    {
        var (text, post) = (settings.Text, work.Post);
        var fields = new List<Field>
        {
            new(text.Job, job.Number),
            new(text.Line, work.Line.Mark),
            new(text.PostSize, text.SizeOfPost(text.PostShape(post.Shape), settings.Figures.Both(post.Across))),
            new(text.HeightAboveGround, settings.Figures.Both(post.Height)),
        };
        if (post.Turn is { } turn)
            fields.Add(new(text.TurnLabel, text.TurnOf(turn.Degrees, turn.Side == TurnSide.Left)));
        fields.AddRange([new(text.Due, CutTicket.DueOf(job, text)), new(text.DrilledBy, null), new(text.CheckedBy, null)]);
        return fields;
    }

    private static TableBlock DrillingTable(PostWork work, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        return new(
            text.Drilling,
            text.DrillingColumns,
            [
                .. work.Drillings().Select(d => (IReadOnlyList<string>)
                [
                    Figures.Count(d.Number),
                    figures.Stacked(d.Bore.Bit),
                    d.Bore.Row.Mark,
                    text.FaceName(d.Operation.Face),
                    figures.Stacked(d.Mark),
                    figures.Stacked(d.MarkFromTop),
                    RakeText.Of(d.Bore, work, settings),
                    figures.Stacked(d.Operation.Depth),
                    figures.Stacked(d.Collar),
                ]),
            ]);
    }

    private static TableBlock BoreTable(PostWork work, PaperSettings settings)
    {
        var text = settings.Text;
        return new(
            text.Bores,
            text.BoreColumns,
            [
                .. work.Bores.OrderByDescending(bore => bore.Height)
                    .GroupBy(bore => (bore.Kind, bore.Rope, bore.Bit, bore.Wall, bore.BitChoice))
                    .Select(alike => BoreRow([.. alike], settings)),
            ]);
    }

    /// <summary>Bores that are alike, in one line of the table.</summary>
    private static IReadOnlyList<string> BoreRow(IReadOnlyList<Bore> alike, PaperSettings settings)
    {
        var (text, figures, bore) = (settings.Text, settings.Figures, alike[0]);
        return
        [
            string.Join(", ", alike.Select(b => b.Row.Mark).Distinct()),
            string.Join(", ", alike.Select(b => b.Run)),
            text.BoreKind(bore.Kind),
            RopeWords.Of(bore.Rope, settings),
            figures.Stacked(bore.Bit),
            figures.Stacked(bore.Wall),
            $"{text.BitKindName(bore.BitChoice.Kind)}: {bore.BitChoice.Reason}",
        ];
    }

    private static TableBlock ScrewTable(PostWork work, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        string With(Length hole, Length more, Func<string, string> words) =>
            (hole == Length.Zero ? text.None : figures.Stacked(hole)) + (more == Length.Zero ? "" : "\n" + words(figures.Both(more)));
        return new(
            text.ScrewHoles,
            text.ScrewColumns,
            [
                .. work.Fixings.OrderByDescending(fixing => fixing.Row.Height).Select(fixing => (IReadOnlyList<string>)
                [
                    fixing.Row.Mark,
                    text.Purpose(fixing.Purpose),
                    $"{Figures.Count(fixing.Count)} × {text.ScrewName(fixing.Screw, figures.Both(fixing.Length))}",
                    text.FaceName(fixing.Face),
                    figures.Stacked(work.MarkHeight(fixing)),
                    With(fixing.Counterbore, fixing.CounterboreDepth, text.CounterboreDeep),
                    With(fixing.Pilot, fixing.ShankHole, text.ShankHole),
                ]),
            ]);
    }
}
