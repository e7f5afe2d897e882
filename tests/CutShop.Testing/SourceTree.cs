namespace CutShop.Testing;

/// <summary>The source that these tests were built from.</summary>
internal static class SourceTree
{
    /// <summary>The folder with the solution.</summary>
    public static string Root { get; } = Find();

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "CutShop.sln")))
            folder = folder.Parent ?? throw new DirectoryNotFoundException("These tests are built outside of the source.");
        return folder.FullName;
    }
}
