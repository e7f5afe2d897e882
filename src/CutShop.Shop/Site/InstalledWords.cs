namespace CutShop.Shop.Site;

/// <summary>The words of <see cref="InstalledState"/> as forms send and tables keep them.</summary>
public static class InstalledWords
{
    /// <summary>The SQL of a piece's word in a query with the piece's row of installations, or none.</summary>
    internal const string Column = $"coalesce(installations.state, '{NotInstalled}')";

    private const string Installed = "installed";
    private const string NotInstalled = "not-installed";

    /// <summary>The word of a state.</summary>
    public static string Of(InstalledState state) => state == InstalledState.Installed ? Installed : NotInstalled;

    /// <summary>The state that a word stands for, or null.</summary>
    public static InstalledState? Read(string? word) => word switch
    {
        Installed => InstalledState.Installed,
        NotInstalled => InstalledState.NotInstalled,
        _ => null,
    };
}
