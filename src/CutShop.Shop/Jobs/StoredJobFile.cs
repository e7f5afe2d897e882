using System.Text;
using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>Reads job files that the shop has stored.</summary>
internal static class StoredJobFile
{
    /// <summary>The job.</summary>
    /// <param name="text">The stored text.</param>
    /// <param name="whose">What it is stored for, such as "job LQ-1042".</param>
    /// <exception cref="InvalidDataException">The text is no longer a job file.</exception>
    public static Job Read(string text, string whose)
    {
        var reading = JobFileReader.Read(Encoding.UTF8.GetBytes(text));
        return reading.Job ?? throw new InvalidDataException($"The stored job file of {whose} is not readable: {reading.Problems[0]}");
    }
}
