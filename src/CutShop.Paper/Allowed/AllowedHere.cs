using System.Globalization;
using CutShop.Paper.Sheets;
using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;

namespace CutShop.Paper.Allowed;

/// <summary>
/// What is asked about a railing before it is built: how high its ropes hang, how wide the openings are, how hard it pulls when somebody leans
/// on it, and what a bore leaves of a post. All of it is information and no rating; the local code and licensed practice decide.
/// </summary>
public static class AllowedHere
{
    // What codes commonly ask of a guard: International Building Code as cited in USDA Forest Service 0723-2329-MTDC.
    private static readonly Length GuardHeight = Length.FromInches(42);
    private static readonly Length Ball = Length.FromInches(4);
    private static readonly Length BallBelow = Length.FromInches(34);

    /// <summary>For each line that has a deep drop beside it, that a guard is needed there and that the railing is none.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="settings">Units and words.</param>
    public static IReadOnlyList<string> Guards(IReadOnlyList<Line> lines, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentNullException.ThrowIfNull(settings);
        var figures = settings.Figures;
        return
        [
            .. lines.Select(line => (line.Mark, Drop: GuardedDrop.Of(line))).Where(line => line.Drop is not null)
                .Select(line => settings.Text["GuardNeeded", line.Mark, figures.Both(line.Drop!.Value), figures.Both(GuardedDrop.Over)]),
        ];
    }

    /// <summary>The parts of a sheet or a page that say the figures.</summary>
    /// <param name="takeoff">The job, or as much of it as has all pieces of the lines.</param>
    /// <param name="lines">The lines that are asked about.</param>
    /// <param name="settings">Units and words.</param>
    public static IReadOnlyList<Block> Of(JobTakeoff takeoff, IReadOnlyList<Line> lines, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentNullException.ThrowIfNull(settings);
        var (text, figures) = (settings.Text, settings.Figures);
        var pieces = takeoff.Pieces.ToLookup(piece => piece.Line);
        var posts = lines.SelectMany(line => line.Posts).Select(post => post.Mark).ToHashSet();
        var wood = takeoff.Bores.Where(bore => posts.Contains(bore.Post.Mark))
            .Select(bore => (bore.Post.Shape, bore.Post.Across, bore.Bit)).Distinct()
            .OrderBy(bored => bored.Shape).ThenBy(bored => bored.Across).ThenBy(bored => bored.Bit)
            .ToList();
        return
        [
            new TableBlock(
                text["AllowedCaption"],
                text.Parts("AllowedColumns"),
                [.. lines.SelectMany(line => RowOpening.Of([.. pieces[line.Mark]])).Select(row => Row(row, settings))]),
            .. wood.Count == 0
                ? (Block[])[]
                : [new TableBlock(text["WoodCaption"], text.Parts("WoodColumns"), [.. wood.Select(bored => Wood(bored.Shape, bored.Across, bored.Bit, settings))])],
            new NoteBlock(text["AllowedNote", Leaning.PersonLb]),
            new NoteBlock(text["AllowedWho", figures.Both(GuardedDrop.Over), figures.Both(GuardHeight), figures.Both(Ball), figures.Both(BallBelow)]),
        ];
    }

    private static string[] Row(RowOpening row, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        return
        [
            $"{row.Line}, {row.Row}",
            row.LowestMid == row.HighestMid ? figures.Both(row.LowestMid) : text["MidHeights", figures.Both(row.LowestMid), figures.Both(row.HighestMid)],
            row.Below is { } below ? text["OpeningToRow", figures.Both(row.Opening), below] : text["OpeningToGround", figures.Both(row.Opening)],
            row.LeaningLb is { } pull ? $"{pull.ToString("#,##0", CultureInfo.InvariantCulture)} lb" : text["PullOfStraight"],
        ];
    }

    private static string[] Wood(PostShape shape, Length across, Length hole, PaperSettings settings)
    {
        var (text, figures, left) = (settings.Text, settings.Figures, WoodLeft.Of(shape, across, hole));
        return [text.SizeOfPost(text.PostShape(shape), figures.Both(across)), figures.Both(hole), Percent(left.Along), Percent(left.Across)];

        static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{Math.Floor(share * 100):0}\u00A0%");
    }
}
