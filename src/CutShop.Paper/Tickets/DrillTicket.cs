using CutShop.Paper.Drawings;
using CutShop.Paper.Sheets;
using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Tickets;

/// <summary>The ticket for drilling one post: one sheet, its drawing as large as the sheet has room for.</summary>
public static class DrillTicket
{
    /// <summary>Tickets for every post of a job that the shop drills, then the list of those that are only wrapped, and of those that the installer bores.</summary>
    public static IEnumerable<Sheet> All(JobTakeoff takeoff, PaperSettings settings)
    {
        var (job, posts) = (JobHead.Of(takeoff.Job), PostWork.Of(takeoff).ToList());
        foreach (var work in posts.Where(work => work.DrillingsInShop > 0))
            yield return Of(job, work, settings);
        if (posts.Where(work => work.Bores.Count == 0).ToList() is [_, ..] wrapped)
            yield return WrappedPosts.Of(job, wrapped, settings);
        if (posts.Where(work => work.IsForSite).ToList() is [_, ..] standing)
            yield return StandingPosts.Of(job, standing, settings);
    }

    /// <summary>The ticket.</summary>
    /// <param name="job">What the job is called by.</param>
    /// <param name="work">What is done to the post; it has bores.</param>
    /// <param name="settings">Units and words.</param>
    public static Sheet Of(JobHead job, PostWork work, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(work);
        ArgumentNullException.ThrowIfNull(settings);
        var text = settings.Text;
        return new(
            text["DrillTicket"],
            text.PostName(work.Post.Mark),
            text.Foot(job.Number, text.PostName(work.Post.Mark)),
            [
                About(job, work, settings),
                .. Settings(work, settings),
                DrillingTable(work, settings),
                .. work.Bores.Any(bore => bore.IsExisting) ? [TableOfThose(work, settings)] : (Block[])[],
                .. work.Fixings.Count == 0 ? (Block[])[] : [ScrewTable(work, settings)],
                .. settings.IsForSalt && work.Fixings.Count > 0 ? [new NoteBlock(text["ScrewsForSalt"])] : (Block[])[],
                new SideBySideBlock(
                    new StepsBlock(text["Steps"], text.DrillingSteps(work)),
                    new CautionsBlock(text["Cautions"], text.DrillingCautions)),
                .. Drawings(work, settings),
            ])
        {
            SignBoxes = [text["DrilledBy"], text["CheckedBy"]],
        };
    }

    private static FieldsBlock About(JobHead job, PostWork work, PaperSettings settings)
    {
        var (text, post) = (settings.Text, work.Post);
        var fields = new List<Field>
        {
            new(text["Job"], job.Number),
            new(text["Line"], work.Line),
            new(text["PostSize"], text.SizeOfPost(text.PostShape(post.Shape), settings.Figures.Both(post.Across))),
            new(text["HeightAboveGround"], settings.Figures.Both(post.Height)),
            new(text["Due"], CutTicket.DueOf(job.Due, text)),
        };
        if (post.Buried is { } buried)
            fields.Add(new(text["BelowGround"], settings.Figures.Both(buried)));
        if (post.Turn is { } turn)
            fields.Add(new(text["TurnLabel"], text.TurnOf(turn.Degrees, turn.Side == TurnSide.Left)));
        return new(fields) { IsOneRow = true };
    }

    /// <summary>What the drill is set to: a frame for each bit, with the stop collars that are set on it.</summary>
    private static IEnumerable<BigFiguresBlock> Settings(PostWork work, PaperSettings settings)
    {
        const int MostCollars = 2;
        return DrilledAlike.Of(work)
            .GroupBy(alike => (alike.First.Bore.Bit, alike.First.Bore.BitChoice, alike.First.Bore.Wall, alike.First.Bore.Rope, alike.First.Bore.RakeDegrees, Way: RakeText.WayOf(alike.First.Bore, work), Skew: PostWays.SkewOf(work, alike.First.Operation.Face, alike.First.Bore)))
            .SelectMany(bit => bit.Chunk(MostCollars))
            .Select(bit => Setting(bit, work, settings));
    }

    private static BigFiguresBlock Setting(DrilledAlike[] alike, PostWork work, PaperSettings settings)
    {
        var (text, figures, bore) = (settings.Text, settings.Figures, alike[0].First.Bore);
        return new(
            string.Join("  ·  ", alike.Select(one => text["DrillingsOf", one.Numbers, text.BoreKind(one.First.Bore.Kind)])),
            [
                new(text["Bit"], figures.Lead(bore.Bit), figures.Other(bore.Bit)),
                .. alike.Select(one => new BigFigureBlock(
                    alike.Length == 1 ? text["StopCollar"] : text["StopCollarOf", one.Numbers],
                    figures.Lead(one.First.Collar),
                    $"{figures.Other(one.First.Collar)}, {text["DepthOf", figures.Both(one.First.Operation.Depth)]}")),
            ],
            [
                text["RakeOf", RakeText.Of(bore, work, settings)],
                .. RakeText.SkewOf(work, alike[0].First.Operation.Face, bore, settings) is { } skew ? [skew] : (string[])[],
                .. RakeText.KinkOf(bore, settings) is { } kink ? [kink] : (string[])[],
                RopeWords.Of(bore.Rope, settings),
                text["WallOf", figures.Both(bore.Wall)],
                $"{text.BitKindName(bore.BitChoice.Kind)}: {text[bore.BitChoice.ReasonFor(bore.Bit)]}",
            ]);
    }

    private static TableBlock DrillingTable(PostWork work, PaperSettings settings)
    {
        const int MostInLargeLetters = 6;
        var (text, figures, drillings) = (settings.Text, settings.Figures, work.Drillings());
        return new(
            text["Drilling"],
            Columns("DrillingColumns", work, text),
            [
                .. drillings.Select(d => (IReadOnlyList<string>)
                [
                    Figures.Count(d.Number),
                    d.Bore.Row,
                    text.FaceName(d.Operation.Face),
                    .. Datums(work).Select(datum => figures.Both(work.Post.HeightFrom(datum, d.Mark))),
                    figures.Lead(d.Bore.Bit),
                    figures.Lead(d.Collar),
                    d.Bore.Run,
                ]),
            ])
        {
            IsLarge = drillings.Count <= MostInLargeLetters,
        };
    }

    /// <summary>The holes that are in the post already, which are no work.</summary>
    private static TableBlock TableOfThose(PostWork work, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        return new(
            text["AlreadyThere"],
            Columns("AlreadyThereColumns", work, text),
            [
                .. work.Bores.Where(bore => bore.IsExisting).Select(bore => (IReadOnlyList<string>)
                [
                    bore.Row,
                    .. Datums(work).Select(datum => figures.Both(work.Post.HeightFrom(datum, bore.Height))),
                    figures.Both(bore.Bit),
                    RakeText.Of(bore, work, settings),
                    bore.Run,
                ]),
            ]);
    }

    /// <summary>The screw holes, and what is driven on site without one.</summary>
    private static TableBlock ScrewTable(PostWork work, PaperSettings settings) => new(
        settings.Text["ScrewHoles"],
        Columns("ScrewColumns", work, settings.Text),
        [
            .. PostWork.FromTheTop(work.Fixings)
                .GroupBy(fixing => (fixing.Driven, fixing.Face, fixing.RakeDegrees, Places: RakeText.PlacesOf(fixing, work, settings)))
                .Select(alike => ScrewRow(work, [.. alike], settings)),
        ]);

    /// <summary>Where heights are measured from, each in a column of its own: the datum, and always the top.</summary>
    private static IEnumerable<Datum> Datums(PostWork work) => ((Datum[])[work.Datum, Datum.Top]).Distinct();

    /// <summary>A table's columns, with one for each of <see cref="Datums"/> in the place of <c>{marks}</c>.</summary>
    private static IReadOnlyList<string> Columns(string key, PostWork work, PaperText text) =>
        [.. text.Parts(key).SelectMany(column => column == "{marks}" ? Datums(work).Select(datum => datum == work.Datum ? text["Marked", text.NameOf(datum)] : text.NameOf(datum)) : [column])];

    private static IReadOnlyList<string> ScrewRow(PostWork work, IReadOnlyList<Fixing> alike, PaperSettings settings)
    {
        var (screws, face, head, pilot) = ScrewCells.Of(alike[0], work, settings);
        var where = work.ScrewHoles.Contains(alike[0]) ? face : $"{face}\n{settings.Text["DrivenOnSite"]}";
        return
        [
            .. Datums(work).Select(datum => string.Join('\n', alike.Select(fixing => $"{fixing.Row}: {Figure(datum, fixing)}"))),
            $"{screws}: {where}",
            head,
            pilot,
        ];

        // Beside another datum the top is told in one unit: the table has no more room.
        string Figure(Datum datum, Fixing fixing) => work.Post.HeightFrom(datum, fixing.Mark) is var told && datum == work.Datum
            ? settings.Figures.Both(told)
            : settings.Figures.Lead(told);
    }

    private static IEnumerable<DrawingBlock> Drawings(PostWork work, PaperSettings settings)
    {
        const int WhereTwoShareAPage = 2;
        var first = PostDrawing.Of(work, settings, PostDrawing.Heights[0]).Count > 1 ? WhereTwoShareAPage : 0;
        var largest = PostDrawing.Of(work, settings, PostDrawing.Heights[first]);
        return largest.Select((drawing, i) => new DrawingBlock(drawing)
        {
            Smaller = PostDrawing.Heights.Skip(first + 1).Select(tallest => PostDrawing.Of(work, settings, tallest)).Where(drawings => drawings.Count == largest.Count).Select(drawings => drawings[i]),
        });
    }
}
