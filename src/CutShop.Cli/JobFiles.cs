using CutShop.Takeoff.Intake;
using CutShop.Takeoff.JobFile;

namespace CutShop.Cli;

/// <summary>Reads job files for the commands.</summary>
internal static class JobFiles
{
    /// <summary>Reads a job file; where it is not right every problem goes to standard error, one a line.</summary>
    /// <param name="file">The file, or <c>-</c> for standard input.</param>
    /// <param name="cancel">Stops the reading.</param>
    /// <returns>The job, or null and an exit code.</returns>
    public static async Task<(Job? Job, int ExitCode)> ReadAsync(string file, CancellationToken cancel)
    {
        byte[] bytes;
        try
        {
            bytes = await ReadBytesAsync(file, cancel);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync($"{file}: {e.Message}");
            return (null, Exit.Failed);
        }
        var reading = JobFileReader.Read(bytes);
        foreach (var problem in reading.Problems)
            await Console.Error.WriteLineAsync(problem.ToString());
        return (reading.Job, reading.Job is null ? Exit.BadInput : Exit.Done);
    }

    /// <summary>Reads at most one byte more than is accepted, so that an endless file ends.</summary>
    private static async Task<byte[]> ReadBytesAsync(string file, CancellationToken cancel)
    {
        await using var stream = file == "-" ? Console.OpenStandardInput() : File.OpenRead(file);
        using var bytes = new MemoryStream();
        var chunk = new byte[81_920];
        while (bytes.Length <= JobFileReader.LargestFile)
        {
            var read = await stream.ReadAsync(chunk, cancel);
            if (read == 0)
                break;
            bytes.Write(chunk, 0, read);
        }
        return bytes.ToArray();
    }
}
