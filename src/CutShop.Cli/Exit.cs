namespace CutShop.Cli;

/// <summary>Exit codes.</summary>
internal static class Exit
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>Something on this machine failed: no disk, no font, no such file.</summary>
    public const int Failed = 1;

    /// <summary>The input is not right; what is wrong was said on standard error.</summary>
    public const int BadInput = 2;
}
