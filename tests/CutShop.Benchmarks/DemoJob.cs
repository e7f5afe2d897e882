using CutShop.Testing.Fuzz;

namespace CutShop.Benchmarks;

/// <summary>A job of the demo, for what only needs some job.</summary>
internal static class DemoJob
{
    /// <summary>The north walk's takeoff.</summary>
    public static JobTakeoff Takeoff() => JobTakeoff.Of(Read(), ShopTables.Standard);

    private static Job Read() =>
        JobFileReader.Read(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "demo", "lq-1042-north-walk.json"))).Job
            ?? throw new InvalidDataException("The demo's job file is not readable.");
}
