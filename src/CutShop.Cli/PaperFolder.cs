using CutShop.Paper.Jobs;
using CutShop.Paper.Labels;
using CutShop.Paper.Words;
using CutShop.Shop.Jobs;

namespace CutShop.Cli;

/// <summary>Writes a job's paper to a folder: summary, tickets and labels as PDF, tickets and summary as HTML too.</summary>
internal static class PaperFolder
{
    /// <summary>Writes all of it; each file is whole or not there.</summary>
    /// <returns>An exit code.</returns>
    public static async Task<int> WriteAsync(StoredJob job, Uri address, PaperSettings settings, string folder, CancellationToken cancel)
    {
        Directory.CreateDirectory(folder);
        var paper = JobPapers.Of(job, settings);
        foreach (var kind in Enum.GetValues<PaperKind>())
        {
            var name = settings.Text.NameOf(kind);
            using var progress = new ProgressLine($"{job.Number}: {name}");
            await WriteWholeAsync(Path.Combine(folder, FileName(name) + ".pdf"), paper.Pdf(kind, progress), cancel);
            await WriteWholeAsync(Path.Combine(folder, FileName(name) + ".html"), System.Text.Encoding.UTF8.GetBytes(paper.Html(kind)), cancel);
        }

        using var labelProgress = new ProgressLine(CliWords.Say("Labels", job.Number));
        var labels = paper.Labels(address, LabelStock.Default, labelProgress);
        if (!labels.IsGood)
        {
            await Console.Error.WriteLineAsync(CliWords.Say("LabelsProblem", labels.Problem));
            return Exit.BadInput;
        }
        await WriteWholeAsync(Path.Combine(folder, FileName(settings.Text["Labels"]) + ".pdf"), labels.Value, cancel);
        return Exit.Done;
    }

    private static string FileName(string name) => name.Replace(' ', '-');

    private static async Task WriteWholeAsync(string path, byte[] bytes, CancellationToken cancel)
    {
        var half = path + ".part";
        await File.WriteAllBytesAsync(half, bytes, cancel);
        File.Move(half, path, overwrite: true);
    }
}
