using System.Text;
using System.Text.Json;
using System.Text.Unicode;
using CutShop.Takeoff.JobFile;

namespace CutShop.Takeoff.Intake;

/// <summary>
/// Reads a job file: JSON in UTF-8 as docs/job-file.md describes it. Never throws on bad input: every problem is
/// reported with its JSON path, the value and what is accepted.
/// </summary>
public static class JobFileReader
{
    /// <summary>The largest job file that is read, in bytes.</summary>
    public const int LargestFile = 64 * 1024 * 1024;

    private const int DeepestNesting = 16;

    /// <summary>Reads a job file.</summary>
    /// <param name="utf8">The file's bytes, with or without a byte order mark.</param>
    /// <returns>The job, or every problem with the file.</returns>
    public static JobFileReading Read(ReadOnlyMemory<byte> utf8) => Read(utf8, isStored: false);

    /// <summary>The job of a text that was stored; null where it is no job file.</summary>
    public static Job? Find(string text) => Read(Encoding.UTF8.GetBytes(text), isStored: true).Job;

    private static JobFileReading Read(ReadOnlyMemory<byte> utf8, bool isStored)
    {
        if (utf8.Length > LargestFile)
            return Unreadable("TooLarge", LargestFile / (1024 * 1024));
        if (utf8.Span.StartsWith("\uFEFF"u8))
            utf8 = utf8[3..];
        if (!Utf8.IsValid(utf8.Span))
            return Unreadable("NotUtf8");
        try
        {
            using var values = JsonValues.Read(utf8, DeepestNesting);
            return JobReader.Read(values.Root, isStored: isStored);
        }
        catch (JsonException e)
        {
            return Unreadable("NotJson", e.LineNumber + 1, e.BytePositionInLine + 1, DeepestNesting);
        }
    }

    /// <summary>
    /// Whether a text that this or an older program wrote is of this very job: by what it means, so that a field which is newer than the
    /// text, with its default, makes no other job of it.
    /// </summary>
    public static bool IsOf(string text, Job job)
    {
        ArgumentNullException.ThrowIfNull(text);
        var written = JobFileWriter.Write(job);
        return text == written || (Find(text) is { } stored && JobFileWriter.Write(stored) == written);
    }

    private static JobFileReading Unreadable(string key, params IReadOnlyList<object?> values) =>
        new(Job: null, [new(JobPlace.Job, "", JobFileWords.Of(key, values))]);
}
