using CutShop.Paper.Allowed;
using CutShop.Paper.Drawings;
using CutShop.Paper.Sheets;
using CutShop.Paper.Words;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Tickets;

/// <summary>The summary of a job: what to have in stock, what to cut, and how it stands.</summary>
public static class JobSummary
{
    /// <summary>The most rows of a list on paper; what is left out is counted.</summary>
    public const int MostRows = 2_000;

    /// <summary>The summary.</summary>
    /// <param name="takeoff">The job's takeoff.</param>
    /// <param name="settings">Units and words.</param>
    /// <param name="codes">Codes of the pieces by run, or null before they have any.</param>
    public static Sheet Of(JobTakeoff takeoff, PaperSettings settings, IReadOnlyDictionary<string, PieceCode>? codes = null)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        ArgumentNullException.ThrowIfNull(settings);
        var (text, job) = (settings.Text, takeoff.Job);
        var blocks = new List<Block>
        {
            new FieldsBlock([new(text["Job"], job.Number), new(text["Customer"], job.Customer), new(text["Due"], CutTicket.DueOf(job.Due, text)), new(text["CheckedBy"], null)]),
        };
        if (takeoff.Warnings.Count > 0)
            blocks.Add(Table(text["Warnings"], text.Parts("WarningColumns"), Warning.Alike(takeoff.Warnings).Select(alike => (IReadOnlyList<string>)[text[alike.Where], text[alike.Says]]), text));
        blocks.AddRange([RopeTable(takeoff, settings), PieceTable(takeoff, settings, codes), new NoteBlock(text["PullCaution"])]);
        if (takeoff.Fixings.Any(fixing => !fixing.IsHardware))
            blocks.Add(ScrewTable(takeoff, settings));
        if (Hardware.Of(takeoff.Pieces) is { Count: > 0 } hardware)
            blocks.Add(HardwareTable(hardware, settings));
        if (settings.IsForSalt && takeoff.Fixings.Count > 0)
            blocks.Add(new NoteBlock(text["ScrewsForSalt"]));
        if (takeoff.Bores.Count > 0)
            blocks.Add(BitTable(takeoff, settings));
        blocks.Add(new CautionsBlock(text["Cautions"], [.. AllowedHere.Guards(takeoff.Job.Lines, settings), .. text.RailingCautions]));
        blocks.AddRange(AllowedHere.Of(takeoff, takeoff.Job.Lines, settings));
        AddDrawings(blocks, takeoff, settings);
        return new(text["JobSummary"], text["JobName", job.Number], text.Foot(job.Number, job.Customer), blocks);
    }

    private static TableBlock RopeTable(JobTakeoff takeoff, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        var rows = takeoff.Pieces.GroupBy(piece => piece.Rope).Select(group => (IReadOnlyList<string>)
        [
            RopeWords.Of(group.Key, settings),
            Figures.Count(group.Count()),
            figures.LongBoth(group.Aggregate(Length.Zero, (sum, piece) => sum + piece.Cut)),
            figures.LongBoth(group.Max(piece => piece.Cut)),
            text.Pounds(group.All(piece => piece.WeightLb is not null) ? group.Sum(piece => piece.WeightLb) : null),
        ]);
        return Table(text["RopeTotals"], text.Parts("RopeTotalColumns"), rows, text);
    }

    private static TableBlock PieceTable(JobTakeoff takeoff, PaperSettings settings, IReadOnlyDictionary<string, PieceCode>? codes)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        var rows = takeoff.Pieces.Select(piece => (IReadOnlyList<string>)
        [
            piece.Run,
            codes is not null && codes.TryGetValue(piece.Run, out var code) ? code.ToString() : "",
            text.FromPostToPost(piece.From.Mark, piece.To.Mark),
            RopeWords.Of(piece.Rope, settings),
            figures.LongStacked(piece.Cut),
            text.WeightToLift(piece.WeightLb),
            piece.Sections.Max(section => section.PullLb) is { } pull ? text.Pounds(pull) : "",
        ]);
        return Table(text["Pieces"], text.Parts("PieceColumns"), rows, text);
    }

    private static TableBlock ScrewTable(JobTakeoff takeoff, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        var rows = takeoff.Fixings.Where(fixing => !fixing.IsHardware).GroupBy(fixing => text.Holder(fixing.Driven, figures.Both(fixing.Length)))
            .OrderBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => (IReadOnlyList<string>)[group.Key, Figures.Count(group.Sum(fixing => fixing.Count))]);
        return Table(text["Screws"], text.Parts("ScrewTotalColumns"), rows, text);
    }

    private static TableBlock HardwareTable(IEnumerable<(Hardware What, int Count)> hardware, PaperSettings settings)
    {
        var text = settings.Text;
        var rows = hardware.Select(kind => (IReadOnlyList<string>)[text.HardwareName(kind.What, settings.Figures.Both), Figures.Count(kind.Count)]);
        return Table(text["Hardware"], text.Parts("HardwareColumns"), rows, text);
    }

    private static TableBlock BitTable(JobTakeoff takeoff, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        var rows = takeoff.Bores.Where(bore => !bore.IsExisting).GroupBy(bore => (bore.Bit, bore.BitChoice.Kind, bore.BitChoice.OnRack))
            .OrderByDescending(group => group.Key.Bit)
            .Select(group => (IReadOnlyList<string>)
            [
                figures.Both(group.Key.Bit),
                text.BitKindName(group.Key.Kind),
                Figures.Count(group.Sum(bore => bore.Operations.Count)),
                group.Key.OnRack ? text["Yes"] : text["No"],
            ]);
        return Table(text["Bits"], text.Parts("BitColumns"), rows, text);
    }

    private static void AddDrawings(List<Block> blocks, JobTakeoff takeoff, PaperSettings settings)
    {
        const int MostLines = 50;
        blocks.AddRange(Plan.Of(takeoff, settings).Take(MostLines).Select(drawing => new DrawingBlock(drawing)));
        foreach (var line in takeoff.Job.Lines.Take(MostLines))
        {
            blocks.AddRange(Elevation.Of(takeoff, line, settings).Select(drawing => new DrawingBlock(drawing)));
            if (Elevation.PostsNotDrawn(line) is > 0 and var missing)
                blocks.Add(new NoteBlock(settings.Text["NotDrawn", missing]));
        }
    }

    private static TableBlock Table(string caption, IReadOnlyList<string> columns, IEnumerable<IReadOnlyList<string>> rows, PaperText text)
    {
        var all = rows.ToList();
        if (all.Count <= MostRows)
            return new(caption, columns, all);
        IReadOnlyList<string> more = [text["AndMore", all.Count - MostRows], .. Enumerable.Repeat("", columns.Count - 1)];
        return new(caption, columns, [.. all.Take(MostRows), more]);
    }
}
