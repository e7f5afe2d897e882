using Google.OrTools.LinearSolver;

namespace CutShop.CutPlan;

/// <summary>Whether the solver package's native library can be used on this machine.</summary>
internal static class NativeSolver
{
    private static readonly Lazy<bool> Present = new(Probe);

    /// <summary>True where it can; asked of the machine once.</summary>
    public static bool IsPresent => Present.Value;

    private static bool Probe()
    {
        try
        {
            using var linear = Solver.CreateSolver("GLOP");
            using var whole = Solver.CreateSolver("SCIP");
            return linear is not null && whole is not null;
        }
        catch (Exception absent) when (absent is DllNotFoundException or TypeInitializationException or BadImageFormatException or EntryPointNotFoundException)
        {
            return false;
        }
    }
}
