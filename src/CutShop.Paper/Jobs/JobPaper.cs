using CutShop.Paper.Drawings;
using CutShop.Paper.Labels;
using CutShop.Paper.Sheets;
using CutShop.Paper.Tickets;
using CutShop.Paper.Words;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Jobs;

/// <summary>All the paper of one job: its summary, tickets and labels.</summary>
/// <param name="takeoff">The job's takeoff.</param>
/// <param name="codes">The code of each piece, in the takeoff's order.</param>
/// <param name="places">Where each piece is cut, by run; runs that no plan has placed are left out.</param>
/// <param name="settings">Units, page and words.</param>
public sealed class JobPaper(
    JobTakeoff takeoff, IReadOnlyList<PieceCode> codes, IReadOnlyDictionary<string, CutPlace> places, PaperSettings settings)
{
    /// <summary>True where the job was cancelled: each sheet and label says so.</summary>
    public bool IsCancelled { get; init; }

    /// <summary>True where the benches may work on the job: each ticket of another says that it is not to be made.</summary>
    public bool IsReleased { get; init; } = true;

    /// <summary>The sheets of one kind, in order.</summary>
    public IEnumerable<Sheet> Sheets(PaperKind kind) => StampOf(kind) is { } stamp ? Made(kind).Select(sheet => sheet with { Stamp = settings.Text[stamp] }) : Made(kind);

    /// <summary>The sheets of one kind as a PDF.</summary>
    /// <exception cref="FontMissingException">The font is not on this machine.</exception>
    public byte[] Pdf(PaperKind kind, IProgress<int>? progress = null) => PdfSheets.Write(TitleOf(kind), Sheets(kind), settings, progress);

    /// <summary>The sheets of one kind as an HTML document of its own.</summary>
    public string Html(PaperKind kind) => HtmlSheets.Document(TitleOf(kind), Sheets(kind), settings.Text);

    /// <summary>The labels as a PDF, one to a page of the label's own size.</summary>
    /// <param name="address">The site's address, which the QR code holds.</param>
    /// <param name="stock">The labels in the printer.</param>
    /// <param name="progress">Told how many are done.</param>
    /// <param name="only">The one piece whose label is wanted, or null for all.</param>
    /// <returns>The bytes, or why the labels cannot be printed so.</returns>
    /// <exception cref="FontMissingException">The font is not on this machine.</exception>
    public Parsed<byte[]> Labels(Uri address, LabelStock stock, IProgress<int>? progress = null, PieceCode? only = null)
    {
        ArgumentNullException.ThrowIfNull(address);
        var labels = new List<PieceLabel>(takeoff.Pieces.Count);
        foreach (var (piece, code) in takeoff.Pieces.Zip(codes).Where(pair => only is null || pair.Second == only))
        {
            var label = PieceLabel.Of(address.ToString(), takeoff.Job, piece, code);
            if (!label.IsGood)
                return Parsed.Bad<byte[]>(label.Reason!);
            labels.Add(label.Value with { IsCancelled = IsCancelled });
        }
        return LabelPdf.Write($"{takeoff.Job.Number} {settings.Text["Labels"]}", labels, stock, settings, progress);
    }

    /// <summary>The labels of posts that the shop drills, as a PDF, one to a page of the label's own size.</summary>
    /// <param name="address">The site's address, which the QR code holds.</param>
    /// <param name="stock">The labels in the printer.</param>
    /// <param name="only">The mark of the one post whose label is wanted, or null for all.</param>
    /// <returns>The bytes, or why the labels cannot be printed so; null where there is no such post.</returns>
    /// <exception cref="FontMissingException">The font is not on this machine.</exception>
    public Parsed<byte[]>? PostLabels(Uri address, LabelStock stock, string? only = null)
    {
        ArgumentNullException.ThrowIfNull(address);
        var byRun = CodesByRun();
        var labels = new List<PostLabel>();
        foreach (var work in PostWork.Of(takeoff).Where(work => work.DrillingsInShop > 0 && (only is null || work.Post.Mark == only)))
        {
            var label = PostLabel.Of(address.ToString(), takeoff.Job.Number, work, byRun[work.Bores[0].Run]);
            if (!label.IsGood)
                return Parsed.Bad<byte[]>(label.Reason!);
            labels.Add(label.Value with { IsCancelled = IsCancelled });
        }
        return labels.Count == 0 ? null : LabelPdf.Write($"{takeoff.Job.Number} {settings.Text["PostLabels"]}", labels, stock, settings);
    }

    private Dictionary<string, PieceCode> CodesByRun() => takeoff.Pieces.Zip(codes).ToDictionary(pair => pair.First.Run, pair => pair.Second);

    private string? StampOf(PaperKind kind) => (IsCancelled, IsReleased, kind) switch
    {
        (true, _, _) => "JobCancelled",
        (_, false, PaperKind.CutTickets) => "NotReleasedToCut",
        (_, false, PaperKind.DrillTickets) => "NotReleasedToDrill",
        _ => null,
    };

    private IEnumerable<Sheet> Made(PaperKind kind) => kind switch
    {
        PaperKind.Summary => [JobSummary.Of(takeoff, settings, CodesByRun())],
        PaperKind.CutTickets => takeoff.Pieces.Zip(codes, (piece, code) => CutTicket.Of(JobHead.Of(takeoff.Job), piece, settings, code, places.GetValueOrDefault(piece.Run))),
        PaperKind.DrillTickets => DrillTicket.All(takeoff, settings),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, message: null),
    };

    private string TitleOf(PaperKind kind) => $"{takeoff.Job.Number} {settings.Text.NameOf(kind)}";
}
